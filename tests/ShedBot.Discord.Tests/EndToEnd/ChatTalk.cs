using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>
/// Does in a club what members would do, and writes down what each of them sees: the words, the buttons, the lists and the forms. What changes from day to
/// day, ids and dates, is written as a word.
/// </summary>
internal sealed partial class ChatTalk(ClubHouse house)
{
    private const int MostChoices = 6, TextField = 4, List = 3;

    private readonly StringBuilder told = new();

    public string Text => told.ToString();

    /// <summary>The private card that is worked on.</summary>
    public SeenMessage Card { get; private set; } = null!;

    /// <summary>Another card of the same member, still on their screen.</summary>
    public void GoBackTo(SeenMessage card) => Card = card;

    public async Task CommandAsync(Person who, string command, params (string Name, object Value)[] options)
    {
        Does(who, $"/{command}{string.Concat(options.Select(o => $" {o.Name}: {o.Value}"))}");
        Sees(who, await DoneAsync(await house.Platform.CommandAsync(who, house.Lobby, command, options.ToDictionary(o => o.Name, o => o.Value))));
    }

    /// <summary>Has something counted, which is announced first: what comes of it is written down.</summary>
    /// <param name="until">A button of what comes of it.</param>
    public async Task CountAsync(Person who, string command, string until)
    {
        Does(who, $"/{command}");
        Card = await DoneAsync(await house.Platform.CommandAsync(who, house.Lobby, command));
        await CountedAsync(who, until);
    }

    /// <summary>The same by a button of the card.</summary>
    public async Task UseToCountAsync(Person who, string label, string until)
    {
        Does(who, $"[{label}]");
        Card = await DoneAsync(() => UsedAsync(who, label));
        await CountedAsync(who, until);
    }

    public async Task MenuAsync(Person who, string entry, SeenMessage on)
    {
        Does(who, $"in the menu of that message: {entry}");
        Sees(who, await DoneAsync(await house.Platform.MenuAsync(who, entry, on)));
    }

    public async Task<SeenMessage> SaysAsync(Person who, Channel where, string words)
    {
        Does(who, $"writes in #{where.Name}: {words}");
        told.AppendLine();
        return await house.Platform.SayAsync(who, where, words);
    }

    /// <summary>Presses a button of the card, or picks from its list.</summary>
    public async Task UseAsync(Person who, string label)
    {
        Does(who, $"[{label}]");
        Sees(who, await DoneAsync(() => UsedAsync(who, label)));
    }

    /// <summary>Presses a button that opens a form, fills its fields in their order, and sends it.</summary>
    /// <param name="answers">For a list, some words of the one to pick; empty to leave a field as it is.</param>
    public async Task FillAsync(Person who, string label, params string[] answers)
    {
        Does(who, $"[{label}]");
        var opened = await UsedAsync(who, label);
        var shown = (await opened.Answered).Shown ?? throw new InvalidOperationException($"[{label}] opened no form.");
        var values = new Dictionary<string, object>();
        told.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"    a form: {shown.GetProperty("title").GetString()}");
        var at = 0;
        foreach (var part in shown.GetProperty("components").EnumerateArray())
        {
            var field = part.GetProperty("component");
            var answer = at < answers.Length ? answers[at++] : "";
            told.AppendLine(CultureInfo.InvariantCulture, $"      {part.GetProperty("label").GetString()}{(part.TryGetProperty("description", out var hint) ? $"  ({hint.GetString()})" : "")}");
            told.AppendLine(CultureInfo.InvariantCulture, $"        > {(answer.Length > 0 ? Answer(field, answer, values).Replace("\n", "\n        > ", StringComparison.Ordinal) : Before(field))}");
        }

        Sees(who, await DoneAsync(await house.Platform.SubmitAsync(opened, values)));
    }

    /// <summary>Waits until the card has such a button, as after a trial, and writes it down then.</summary>
    public async Task WaitForAsync(Person who, string label)
    {
        await ClubHouse.UntilAsync(() => house.Platform.Now(Card).Usable.Any(c => c.Label == label), $"[{label}]", ClubHouse.TrialPatience);
        told.AppendLine("a little later:");
        Sees(who, house.Platform.Now(Card));
    }

    /// <summary>What came to somebody alone by a direct message.</summary>
    public void Gets(Person who, SeenMessage message)
    {
        told.AppendLine(CultureInfo.InvariantCulture, $"{who.Name} gets a direct message:").AppendLine();
        Put(message);
    }

    /// <summary>The newest question in a thread, as everybody there sees it.</summary>
    public void Shows(Channel thread, SeenMessage panel)
    {
        told.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"in {(thread.Thread is null ? "#" + thread.Name : "the thread")}:").AppendLine();
        Put(panel);
    }

    public void Does(Person who, string what) => told.AppendLine(CultureInfo.InvariantCulture, $"> {who.Name}: {what}");

    private async Task<Deed> UsedAsync(Person who, string label) =>
        Card.Usable.FirstOrDefault(c => ClubHouse.Same(c.Label, label) && c.Choices.Count == 0) is { CustomId: { } id } ? await house.Platform.PressAsync(who, Card, id)
        : Card.Usable.SelectMany(c => c.Choices, (c, o) => (Control: c, Choice: o)).FirstOrDefault(x => ClubHouse.Same(x.Choice.Label, label)) is { Choice: { } picked } list
            ? await house.Platform.PickAsync(who, Card, list.Control.CustomId!, picked.Value)
            : throw new InvalidOperationException($"No [{label}] among: {string.Join(" | ", ClubHouse.Labels(Card))}\n{Card.Words}");

    /// <summary>A machine that stood still during a trial has lost its connection, and a press that came meanwhile: a member presses again then.</summary>
    private async Task<SeenMessage> DoneAsync(Func<Task<Deed>> press) =>
        (await (await press()).Settled).Message is { } message ? message
        : house.Log.Any(l => l.Contains("the connection ended", StringComparison.Ordinal)) ? await DoneAsync(await press())
        : throw new InvalidOperationException("It was not answered.");

    private static async Task<SeenMessage> DoneAsync(Deed deed) =>
        (await deed.Settled).Message ?? throw new InvalidOperationException("It was not answered.");

    private async Task CountedAsync(Person who, string until)
    {
        await ClubHouse.UntilAsync(() => house.Platform.Now(Card).Usable.Any(c => c.Label == until), $"[{until}]");
        Sees(who, house.Platform.Now(Card));
    }

    private void Sees(Person who, SeenMessage message)
    {
        Assert.True(message.Private, $"Everybody sees:\n{message.Words}");
        Card = message;
        told.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"{who.Name} alone sees:").AppendLine();
        Put(message);
    }

    private void Put(SeenMessage message)
    {
        foreach (var line in Steady(message.Words).Split('\n')) told.AppendLine(line.Length > 0 ? "    " + line : "");
        foreach (var file in message.Files) told.AppendLine(CultureInfo.InvariantCulture, $"    (a file: {file.FileName})");
        foreach (var control in message.Usable) told.AppendLine("    " + Shown(control));
        told.AppendLine();
    }

    private static string Shown(SeenControl control) => control.Choices.Count == 0
        ? $"[{control.Label}]"
        : $"[{control.Label}: {string.Join(" | ", control.Choices.Take(MostChoices).Select(c => c.Label))}{(control.Choices.Count > MostChoices ? $" | and {control.Choices.Count - MostChoices} more" : "")}]";

    private static string Answer(JsonElement field, string answer, Dictionary<string, object> values)
    {
        var id = field.GetProperty("custom_id").GetString()!;
        if (field.GetProperty("type").GetInt32() != List)
        {
            values[id] = answer;
            return answer;
        }

        var picked = field.GetProperty("options").EnumerateArray().FirstOrDefault(o => o.GetProperty("label").GetString()!.StartsWith(answer, StringComparison.OrdinalIgnoreCase));
        if (picked.ValueKind == JsonValueKind.Undefined) throw new InvalidOperationException($"'{answer}' is not offered by {field.GetRawText()}");
        values[id] = new[] { picked.GetProperty("value").GetString()! };
        return picked.GetProperty("label").GetString()!;
    }

    private static string Before(JsonElement field) =>
        field.GetProperty("type").GetInt32() == TextField && field.TryGetProperty("value", out var value) ? value.GetString()! : "";

    private string Steady(string text) => Person().Replace(Day().Replace(Mention().Replace(
        Link().Replace(text, "(link)"), m => house.Platform.ChannelOf(ulong.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)) is { } channel ? $"#{channel.Name}" : "#(channel)"), "(day)"), m => $"@{Members.Single(p => p.Id.ToString(CultureInfo.InvariantCulture) == m.Groups[1].Value).Name}");

    private IEnumerable<Person> Members => [house.Owner, house.Rider, house.Mate];

    [GeneratedRegex("<@([0-9]+)>")]
    private static partial Regex Person();

    [GeneratedRegex(@"<?https://discord\.com/channels/[0-9/]+>?")]
    private static partial Regex Link();

    [GeneratedRegex("<#([0-9]+)>")]
    private static partial Regex Mention();

    [GeneratedRegex("[0-9]{4}-[0-9]{2}-[0-9]{2}(?: [0-9]{2}:[0-9]{2})?")]
    private static partial Regex Day();
}
