using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Practice;
using Spectre.Console;

namespace ShedBot.Cards;

/// <summary>Cards drawn in a terminal: the same words as plain text, with cautions in the signal colours and beliefs as bars.</summary>
/// <remarks>Colours only fill: words stand in the terminal's own colour, so that they are readable on dark and on light.</remarks>
internal sealed class RichScreen(IAnsiConsole console) : IScreen
{
    public void Show(Card card, AnswerKeys keys)
    {
        console.WriteLine();
        console.Write(new Rule { Border = BoxBorder.Heavy });
        // Not in the rule itself: that would cut a long question short.
        console.Write(new Text(CleanText.OneLine(card.Title, int.MaxValue), new Style(decoration: Decoration.Bold)));
        console.WriteLine();
        if (card.Progress is { } progress) console.Write(new Padder(new Markup($"[italic]{Safe(ProgressText.Of(progress))}[/]"), new Padding(2, 0, 2, 0)));
        // The first one can be read further up.
        foreach (var block in card.Repeated ? [] : card.Blocks)
            console.Write(new Padder(RichBlocks.Draw(block), new Padding(2, 1, 2, 0)));
        if (keys.IsEmpty) return;
        console.WriteLine();
        foreach (var (key, option) in keys.Answers) console.Write(OptionLine(key, option));
        console.WriteLine();
        foreach (var row in HelpRows.Of(keys, console.Profile.Width - 6))
            console.MarkupLine("   " + string.Join(HelpRows.Between, row.Select(h => $"[bold]{h.Key}[/]  {Safe(h.Label)}")));
    }

    public void Say(string line) => console.Write(new Padder(new Text(CleanText.Of(line), new Style(decoration: Decoration.Italic)), new Padding(0, 1, 0, 0)));

    public void Repeat(string typed)
    {
        // It stands on the screen already.
    }

    public void Invite(MemberName member)
    {
        console.WriteLine();
        console.Markup($"[bold]{Safe(member.Shown)}[/] > ");
    }

    public Task FlushAsync(CancellationToken ct) => Console.Out.FlushAsync(ct);

    private static Grid OptionLine(string key, CardOption option)
    {
        var grid = new Grid().AddColumn(new GridColumn().Width(4).RightAligned().PadLeft(0).PadRight(2)).AddColumn(new GridColumn().PadLeft(0));
        return grid.AddRow(new Markup(string.Create(CultureInfo.InvariantCulture, $"[bold]{key}[/]")), new Text(CleanText.OneLine(option.Label, int.MaxValue)));
    }

    private static string Safe(string text) => Markup.Escape(text);
}
