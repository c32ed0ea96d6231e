using System.Text.RegularExpressions;
using ShedBot.Coaching.Cases;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <summary>What a control says when it is used. Anybody can make one up, so whoever reads it still has to ask whether the member may.</summary>
/// <param name="Case">Without a colon.</param>
/// <param name="Rest">What the verb needs beside; may be empty.</param>
internal readonly partial record struct CustomId(string Verb, CaseId Case, string Rest)
{
    /// <summary>A picked answer; the rest is the id of the option.</summary>
    public const string Answer = "a";

    /// <summary>A list to pick from; the rest is the serial of the question, the picked value the id of the option.</summary>
    public const string Pick = "pick";

    /// <summary>Opens the form for one's own words; the rest is the serial of the question, or empty.</summary>
    public const string Words = "words";

    /// <summary>The form that was filled in; see <see cref="Forms"/>.</summary>
    public const string Form = "form";

    /// <summary>Shows what is believed so far, to whoever asks; the rest is empty.</summary>
    public const string Think = "think";

    private const string Version = "sb1";

    public bool Fits => ToString().Length <= Limits.CustomId;

    public override string ToString() => $"{Version}:{Verb}:{Case}:{Rest}";

    /// <returns>The parts, or null when the text was never one of ours.</returns>
    public static CustomId? Read(string? text)
    {
        if (text is null || text.Length > Limits.CustomId || Parts().Match(text) is not { Success: true } match) return null;
        return new CustomId(match.Groups["verb"].Value, new CaseId(match.Groups["case"].Value), match.Groups["rest"].Value);
    }

    [GeneratedRegex(@"\Asb1:(?<verb>[a-z]+):(?<case>[^:\s]+):(?<rest>.*)\z", RegexOptions.CultureInvariant | RegexOptions.Singleline | RegexOptions.NonBacktracking)]
    private static partial Regex Parts();
}
