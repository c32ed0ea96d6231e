namespace ShedBot.Discord.Wire;

/// <summary>The secret with which we sign in. It shows itself to nobody who does not ask for it by name, so that it gets into no log and no message.</summary>
internal sealed class BotToken
{
    private readonly string secret;

    /// <param name="secret">As the platform gave it, without a prefix; blanks and a line end around it are taken off.</param>
    /// <exception cref="ArgumentException">It is empty, or holds a character that no token has: a blank or one outside printable ASCII.</exception>
    public BotToken(string secret)
    {
        ArgumentNullException.ThrowIfNull(secret);
        var trimmed = secret.Trim();
        if (trimmed.Length == 0 || trimmed.AsSpan().ContainsAnyExceptInRange('!', '~'))
            throw new ArgumentException("The bot's token is empty or has a character that does not belong in it.", nameof(secret));
        this.secret = trimmed;
    }

    public string Reveal() => secret;

    public override string ToString() => "***";
}
