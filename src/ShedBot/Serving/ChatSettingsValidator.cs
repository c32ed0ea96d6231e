using System.Globalization;
using Microsoft.Extensions.Options;
using ShedBot.Discord.Running;

namespace ShedBot.Serving;

/// <summary>Says the limit and what was given.</summary>
internal sealed class ChatSettingsValidator : IValidateOptions<ChatSettings>
{
    public ValidateOptionsResult Validate(string? name, ChatSettings options)
    {
        var failures = new List<string>();
        Address("Discord:Api", options.Api, "https", "http", "https://discord.com/api/v10/");
        if (!options.Api.EndsWith('/')) failures.Add($"Discord:Api must end with '/'; {options.Api} was given.");
        if (options.Gateway.Length > 0) Address("Discord:Gateway", options.Gateway, "wss", "ws", "wss://gateway.example/");
        if (options.Operator.Length > 0 && !(Uri.TryCreate(options.Operator, UriKind.Absolute, out var at) && at.Scheme is "https" or "http" or "mailto"))
            failures.Add($"Discord:Operator must be a page or an address such as https://club.example/shedbot or mailto:someone@club.example; '{options.Operator}' was given.");
        if (options.Shards is < 1 or > ChatSettings.MostShards)
            failures.Add(string.Create(CultureInfo.InvariantCulture, $"Discord:Shards must be between 1 and {ChatSettings.MostShards}, or be left out; {options.Shards} was given."));
        if (options.RegisterIn.Length > 0 && !(options.RegisterIn.Length is >= 17 and <= 20 && options.RegisterIn.All(char.IsAsciiDigit)))
            failures.Add("Discord:RegisterIn must be the id of a club, a number of 17 to 20 digits, or be left out.");
        if (options.KeepDaysAfterLeaving is not (>= DiscordSettings.LeastKeepDays and <= DiscordSettings.MostKeepDays))
        {
            failures.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"Discord:KeepDaysAfterLeaving must be between {DiscordSettings.LeastKeepDays} and {DiscordSettings.MostKeepDays} days; {options.KeepDaysAfterLeaving} was given."));
        }

        return failures.Count > 0 ? ValidateOptionsResult.Fail(failures) : ValidateOptionsResult.Success;

        // The token goes there, so it must not go in the open: without a cipher only to this very machine, which is where tests are.
        void Address(string setting, string given, string ciphered, string open, string example)
        {
            if (!Uri.TryCreate(given, UriKind.Absolute, out var uri) || !(uri.Scheme == ciphered || (uri.Scheme == open && uri.IsLoopback)))
                failures.Add($"{setting} must be an address such as {example} ({open}: on this machine only); '{given}' was given.");
        }
    }
}
