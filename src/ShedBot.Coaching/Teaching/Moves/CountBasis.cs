using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>What a count rests on: when one of these has changed, its numbers are not those of the club any more. Cases that were closed later change nothing.</summary>
/// <param name="Edition">The club's edition; 0 for none.</param>
/// <param name="Base">The version of the project's rules.</param>
/// <param name="Limits">A short name of the club's limits.</param>
/// <param name="Until">When it was counted.</param>
/// <param name="Cases">A short name of exactly the cases that were closed by then.</param>
internal sealed record CountBasis(int Edition, string Base, string Limits, DateTimeOffset Until, string Cases)
{
    public static async Task<CountBasis> OfAsync(ITeachingStore store, RulesNow rules, TeachingSettings settings, DateTimeOffset until, CancellationToken ct) =>
        new(rules.Edition, rules.BaseVersion, LimitsMark(settings), until, (await store.ClosedMarkAsync(settings.Club, until, ct)).Of);

    /// <summary>A short name of the limits that a club has chosen.</summary>
    public static string LimitsMark(TeachingSettings settings) => ChangesText.Mark(string.Create(
        CultureInfo.InvariantCulture, $"{settings.MostFactor:R} {settings.MemberShare:R} {string.Join(',', settings.Off)}"));

    /// <returns>Why a count of this basis is not to be used any more, in a sentence; null when it is still good.</returns>
    public async Task<string?> WhyStaleAsync(ITeachingStore store, RulesNow rules, TeachingSettings settings, CancellationToken ct) =>
        Edition != rules.Edition || Base != rules.BaseVersion ? "The rules have changed since it was counted. Count it anew."
        : Limits != LimitsMark(settings) ? "What learning may do was chosen anew since it was counted. Count it anew."
        : Cases != (await store.ClosedMarkAsync(settings.Club, Until, ct)).Of ? "A case that it was counted from came back, or was taken out with its member. Count it anew."
        : null;

    public ImmutableArray<string> Write() => [Edition.ToString(CultureInfo.InvariantCulture), Base, Limits, Until.ToString("O", CultureInfo.InvariantCulture), Cases];

    public static CountBasis? Read(ImmutableArray<string> lines) =>
        !lines.IsDefault && lines is [var edition, var under, var limits, var until, var cases]
        && int.TryParse(edition, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && DateTimeOffset.TryParse(until, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out var at)
            ? new CountBasis(number, under, limits, at, cases)
            : null;
}
