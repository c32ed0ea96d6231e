using Microsoft.Extensions.Configuration;
using ShedBot.Starting;

namespace ShedBot.Serving;

/// <summary>
/// Where the bot's token comes from: the file named in <c>Discord:TokenFile</c>, else <c>Discord:Token</c>. It is asked for once, by name,
/// and handed straight on; nothing here repeats it, also not when it is wrong.
/// </summary>
internal static class TokenSource
{
    private const string Setting = $"{ChatSettings.Section}:Token", FileSetting = $"{ChatSettings.Section}:TokenFile";

    /// <summary>Far above any token, and far below any file that was named by mistake.</summary>
    private const int Longest = 1024;

    private const string Advice =
        "Put the token that the platform's page for developers shows under 'Bot' into a file that only this user can read, and name the file in SHEDBOT_DISCORD__TOKENFILE.";

    public static bool IsConfigured(IConfiguration settings) =>
        !string.IsNullOrWhiteSpace(settings[FileSetting]) || !string.IsNullOrWhiteSpace(settings[Setting]);

    /// <param name="warn">Told what the operator should see to, without the token.</param>
    /// <exception cref="SettingRefusedException">There is none, or none that can be one; the message says what to do.</exception>
    public static string Read(IConfiguration settings, Action<string> warn)
    {
        var file = settings[FileSetting];
        var plain = settings[Setting];
        if (string.IsNullOrWhiteSpace(file))
        {
            return string.IsNullOrWhiteSpace(plain)
                ? throw new SettingRefusedException("There is no bot's token, so there is no chat to go to. " + Advice)
                : Checked(plain, "Discord:Token");
        }

        if (!string.IsNullOrWhiteSpace(plain)) warn("Both Discord:TokenFile and Discord:Token are set; the file is used. Take the other one away.");
        var token = Checked(ReadFile(file), $"The token file {file}");
        if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(file) & UnixFileMode.OtherRead) != 0)
            warn($"Everybody on this machine can read the token file {file}. Take that right away: chmod o-rwx");
        return token;
    }

    private static string ReadFile(string file)
    {
        try
        {
            var about = new FileInfo(file);
            if (!about.Exists) throw new SettingRefusedException($"There is no token file {file} (Discord:TokenFile). {Advice}");
            if (about.Length > Longest) throw new SettingRefusedException($"The token file {file} is too long to be one: it holds the token and nothing else.");
            return File.ReadAllText(file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new SettingRefusedException($"The token file {file} cannot be read: {e.Message} Give the user that ShedBot runs as the right to.");
        }
    }

    private static string Checked(string text, string where)
    {
        var token = text.Trim();
        if (token.Length == 0) throw new SettingRefusedException($"{where} is empty. {Advice}");
        if (token.Length > Longest || token.AsSpan().ContainsAnyExceptInRange('!', '~'))
            throw new SettingRefusedException($"{where} does not hold a token: one has no blanks, no line ends inside and no prefix such as 'Bot'. {Advice}");
        return token;
    }
}
