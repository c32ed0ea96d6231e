namespace ShedBot.Discord.Gateway;

/// <summary>The platform will not have us back until the operator has changed something; the message says what.</summary>
/// <param name="code">The code with which the platform closed, or 0 when it was refused before that.</param>
internal sealed class GatewayFatalException(int code, string advice, Exception? inner = null) : Exception(advice, inner)
{
    public int Code => code;
}
