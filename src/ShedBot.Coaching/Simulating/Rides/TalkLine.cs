using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Simulating.Rides;

/// <summary>One turn of a simulated talk in one line, for those who mend the rules.</summary>
public static class TalkLine
{
    public static string Of(Incoming said, Turn taken)
    {
        var rider = said switch
        {
            MemberSaid words => $"\"{words.Words}\"",
            MemberChose chose => chose.OptionId[(chose.OptionId.IndexOf('/', StringComparison.Ordinal) + 1)..],
            _ => "",
        };
        var open = taken.Case.Open;
        return $"{rider}  ->  {taken.Case.Phase}, {open.Kind} {open.Subject}: {string.Join(" | ", taken.Say.Select(c => c.Title))}";
    }
}
