using System.Text.RegularExpressions;

namespace ShedBot.Commands;

/// <summary>Finds secrets on the command line before anything else reads it: what is not understood there is repeated on the screen, and may end in a log.</summary>
internal static partial class SecretArguments
{
    public const string Advice =
        "A bot's token does not belong on the command line, where everybody on the machine can read it. Put it into a file that only this user can read, and name the file "
        + "in SHEDBOT_DISCORD__TOKENFILE. If it was the real one: make a new one on the platform's page for developers.";

    /// <summary>An option that is called after a token, or something that looks like one: three parts of letters and digits with dots between.</summary>
    public static bool Any(IEnumerable<string> args) => args.Any(a => Named().IsMatch(a) || Shaped().IsMatch(a));

    [GeneratedRegex(@"\A--?[\w:.-]*token", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Named();

    [GeneratedRegex(@"[\w-]{18,}\.[\w-]{5,}\.[\w-]{20,}", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Shaped();
}
