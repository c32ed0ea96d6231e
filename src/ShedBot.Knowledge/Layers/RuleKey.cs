namespace ShedBot.Knowledge.Layers;

/// <summary>Names one rule for good.</summary>
/// <param name="Id">Its id; of a word, the concept that it stands under.</param>
public readonly record struct RuleKey(RuleKind Kind, string Id) : IComparable<RuleKey>
{
    /// <summary>By kind, then by id in ordinal order: the order of a file.</summary>
    public int CompareTo(RuleKey other) => Kind != other.Kind ? Kind.CompareTo(other.Kind) : string.CompareOrdinal(Id, other.Id);

    public static bool operator <(RuleKey left, RuleKey right) => left.CompareTo(right) < 0;

    public static bool operator >(RuleKey left, RuleKey right) => left.CompareTo(right) > 0;

    public static bool operator <=(RuleKey left, RuleKey right) => left.CompareTo(right) <= 0;

    public static bool operator >=(RuleKey left, RuleKey right) => left.CompareTo(right) >= 0;

    /// <summary>fault lost-ball</summary>
    public override string ToString() => $"{RuleKinds.Word(Kind)} {Id}";

    /// <summary>Reads what <see cref="ToString"/> writes.</summary>
    public static bool TryRead(string text, out RuleKey key)
    {
        foreach (var kind in RuleKinds.All)
        {
            var word = RuleKinds.Word(kind) + " ";
            if (!text.StartsWith(word, StringComparison.Ordinal) || text.Length == word.Length) continue;
            key = new RuleKey(kind, text[word.Length..]);
            return true;
        }

        key = default;
        return false;
    }
}
