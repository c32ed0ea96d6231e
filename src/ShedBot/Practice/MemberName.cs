using ShedBot.Coaching.Cases;

namespace ShedBot.Practice;

/// <summary>A member of the practice terminal: the name as typed, and what it is kept under.</summary>
internal readonly record struct MemberName(string Shown)
{
    /// <summary>The same whether the name is typed with capitals or not.</summary>
    public MemberId Id => new(Shown.ToLowerInvariant());

    /// <summary>Each member talks in a place of their own, so that nobody is told what was meant for another.</summary>
    public string Place => "practice/" + Id.Value;

    public static bool IsGood(string name) =>
        name.Length is > 0 and <= PracticeSettings.MostName && name.All(c => char.IsLetterOrDigit(c) || c is '-' or '_');
}
