namespace ShedBot.Trade.Bolts;

/// <summary>The strength class on a bolt head, and the stress it takes without lasting stretch.</summary>
/// <remarks>Source: ISO 898-1, proof stress [from memory]; 8.8 is the value for threads up to M16.</remarks>
public sealed record PropertyClass
{
    private PropertyClass(string marking, double megapascals) =>
        (Marking, ProofStress) = (marking, Pressure.FromMegapascals(megapascals));

    public static PropertyClass Class46 { get; } = new("4.6", 225);

    public static PropertyClass Class48 { get; } = new("4.8", 310);

    public static PropertyClass Class58 { get; } = new("5.8", 380);

    public static PropertyClass Class88 { get; } = new("8.8", 580);

    public static PropertyClass Class109 { get; } = new("10.9", 830);

    /// <summary>All five, weakest first.</summary>
    public static IReadOnlyList<PropertyClass> All { get; } = [Class46, Class48, Class58, Class88, Class109];

    public string Marking { get; }

    /// <summary>Proof stress S_p.</summary>
    public Pressure ProofStress { get; }

    /// <summary>The class for a marking read off the head.</summary>
    /// <param name="marking">What is stamped, such as 8.8; nothing at all for an unmarked stud.</param>
    /// <returns>
    /// The class; for an unmarked stud 4.6, the weaker of the two it could be [common practice]; null for a marking not in the list.
    /// </returns>
    public static PropertyClass? FromMarking(string? marking) =>
        string.IsNullOrWhiteSpace(marking) ? Class46 : All.FirstOrDefault(known => known.Marking == marking.Trim());
}
