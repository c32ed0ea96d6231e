using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Practice;

namespace ShedBot.Cards;

/// <summary>Cards as plain text, for pipes, scripts, and anyone who likes it plain: no colours, nothing that moves.</summary>
/// <param name="width">Columns; titles and answers stay on one line whatever their length.</param>
internal sealed class PlainScreen(TextWriter output, int width, bool echo) : IScreen
{
    public void Show(Card card, AnswerKeys keys)
    {
        output.WriteLine(CleanText.OneLine(card.Title, int.MaxValue));
        if (card.Progress is { } progress) output.WriteLine(ProgressText.Of(progress));
        // The first one can be read further up.
        foreach (var block in card.Repeated ? [] : card.Blocks)
        {
            output.WriteLine();
            foreach (var line in PlainBlocks.Lines(block, width)) output.WriteLine(line);
        }

        if (!keys.IsEmpty) output.WriteLine();
        foreach (var (key, option) in keys.Answers)
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  [{key}] {CleanText.OneLine(option.Label, int.MaxValue)}"));
        foreach (var row in HelpRows.Of(keys, width - 2))
            output.WriteLine("  " + string.Join(HelpRows.Between, row.Select(h => $"[{h.Key}] {h.Label}")));
        output.WriteLine();
    }

    public void Say(string line)
    {
        foreach (var part in Wrapped.Lines(CleanText.Of(line), width)) output.WriteLine(part);
        output.WriteLine();
    }

    public void Repeat(string typed)
    {
        if (!echo) return;
        output.WriteLine($"> {CleanText.OneLine(typed, PracticeSession.MostRepeated)}".TrimEnd());
        output.WriteLine();
    }

    public void Invite(MemberName member)
    {
        // A prompt would stand in the way of whoever reads this through a pipe.
    }

    public Task FlushAsync(CancellationToken ct) => output.FlushAsync(ct);
}
