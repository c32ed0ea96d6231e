using System.Collections.Immutable;

namespace ShedBot.Tests.Conversations;

/// <summary>A page with conversations in it: each stands in a fence of its own that opens with <c>```text</c>.</summary>
/// <param name="Parts">What stands between, before and after the conversations; one more than these.</param>
internal sealed record ConversationPage(ImmutableArray<string> Parts, ImmutableArray<string> Conversations)
{
    private const string Opens = "```text\n", Closes = "```\n";

    public static ConversationPage Read(string text)
    {
        var (parts, conversations) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<string>());
        var at = 0;
        while (text.IndexOf(Opens, at, StringComparison.Ordinal) is >= 0 and var open)
        {
            var from = open + Opens.Length;
            var to = text.IndexOf(Closes, from, StringComparison.Ordinal);
            if (to < 0) break;
            parts.Add(text[at..from]);
            conversations.Add(text[from..to]);
            at = to;
        }

        parts.Add(text[at..]);
        return new(parts.ToImmutable(), conversations.ToImmutable());
    }

    /// <summary>The same page with other conversations in the same places.</summary>
    public string With(ImmutableArray<string> conversations) =>
        string.Concat(Parts.Zip(conversations.Append(""), (part, conversation) => part + conversation));

    /// <summary>What the rider types: the lines marked '&gt; '; a mark alone is an empty line.</summary>
    public static IEnumerable<string> RiderLines(string conversation) => conversation.Split('\n')
        .Where(l => l == ">" || l.StartsWith("> ", StringComparison.Ordinal))
        .Select(l => l.Length < 2 ? "" : l[2..]);
}
