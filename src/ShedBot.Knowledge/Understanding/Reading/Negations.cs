namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>The ways to deny.</summary>
internal static class Negations
{
    /// <summary>not, never, no: what follows is denied, however often it is said.</summary>
    public const string Plain = "not";

    /// <summary>'stopped slipping': turns what follows, so that "won't stop slipping" slips.</summary>
    public const string Turning = "stop-doing";

    /// <summary>'instead of firing it stops': only the next word is denied.</summary>
    public const string Short = "instead-of";

    public static string Of(string words) => words is "instead of" or "rather than" ? Short : Plain;
}
