using System.CommandLine;
using System.Globalization;
using ShedBot.Coaching.Clubs;
using ShedBot.Starting;

namespace ShedBot.Serving.Copies;

/// <summary><c>forget</c>: removes all that is kept of a person who can no longer ask for it in the chat.</summary>
internal static class ForgetCommand
{
    public const string Name = "forget";

    public static Command Create()
    {
        var data = StoppedStore.DataOption();
        var person = new Option<string>("--person") { Description = "The person's id in the chat, a long number.", HelpName = "ID", Required = true };
        var club = new Option<string?>("--club") { Description = "Only in the club with this id; without it, in all clubs.", HelpName = "ID" };
        var command = new Command(Name, "Remove all that is kept of a person from a data file. The service must be stopped; while it runs, a member does it in the chat. Backups keep what they had.");
        command.Options.Add(data);
        command.Options.Add(person);
        command.Options.Add(club);
        command.SetAction((parse, ct) => Refusals.ToldAsync(
            () => ForgetAsync(parse.GetRequiredValue(data), parse.GetRequiredValue(person), parse.GetValue(club), Console.Out, Console.Error, ct), Console.Error));
        return command;
    }

    public static async Task<int> ForgetAsync(string data, string person, string? club, TextWriter output, TextWriter errors, CancellationToken ct)
    {
        if (!IsId(person) || (club is not null && !IsId(club)))
        {
            await errors.WriteLineAsync("An id is a number of the chat, such as 80351110224678912. 'export' shows the ids that are kept: a member is written club/person.");
            return ExitCodes.InputHasErrors;
        }

        await using var store = await StoppedStore.OpenAsync(data, ct);
        var clubs = club is not null ? [new ClubId(club)] : (await store.ClubsAsync(ct)).Select(c => c.Id).ToArray();
        var (cases, bikes, rooms) = (0, 0, 0);
        foreach (var one in clubs)
        {
            var gone = await store.ForgetMemberAsync(one.Member(person), ct);
            (cases, bikes, rooms) = (cases + gone.Cases, bikes + gone.Bikes, rooms + gone.Rooms);
        }

        await output.WriteLineAsync(string.Create(
            CultureInfo.InvariantCulture,
            $"Looked in {clubs.Length} clubs. Removed {cases} cases, {bikes} bikes and what was known of {rooms} threads. Their words in the threads are the chat's; backups keep what they had."));
        return ExitCodes.Fine;
    }

    private static bool IsId(string text) => text.Length is > 0 and <= 20 && text.All(char.IsAsciiDigit);
}
