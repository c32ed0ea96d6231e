using System.Text;

namespace ShedBot.Knowledge.Loading;

/// <summary>A rule file as it lies on disk or comes out of a proposal.</summary>
/// <param name="Name">How it is called in reports; best relative to the folder, with '/' between.</param>
/// <param name="Bytes">UTF-8, with or without a byte order mark; anything else is refused with a problem.</param>
public sealed record RuleText(string Name, ReadOnlyMemory<byte> Bytes)
{
    public static RuleText FromText(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));
}
