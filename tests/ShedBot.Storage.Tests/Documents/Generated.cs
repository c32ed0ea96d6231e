using System.Collections.Immutable;
using System.Text;
using CsCheck;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Tests.Documents;

/// <summary>Whatever can be stored, with the texts that stores get wrong: empty, spaces at the ends, right to left, beyond 16 bits, control characters.</summary>
internal static class Generated
{
    private static readonly string[] Odd =
        ["", " ", "  sp ", "\0", "a\0b", "\r\n\t", "שלום לכולם", "🚲🔧", "👩‍🔧", "e\u0301", "\ufeff", "\uffff", "İıßſ", "$id", "'\"\\", "<b>", "NULL", "{\"$oid\":1}"];

    private static readonly Gen<string> Any =
        Gen.OneOf(Gen.Int[1, 0xD7FF], Gen.Int[0xE000, 0x10FFFF]).Array[0, 12].Select(codes => string.Concat(codes.Select(c => new Rune(c).ToString())));

    public static readonly Gen<string> Text = Gen.OneOf(Pick(Odd), Any);

    private static readonly Gen<string?> TextOrNull = Gen.OneOf(Text.Select(t => (string?)t), Gen.Const((string?)null));

    public static readonly Gen<string> Key = Text.Select(t => "k" + string.Concat(t.Where(c => !char.IsControl(c))));

    private static readonly Gen<string> ClubKey = Key.Select(k => k.Replace(ClubId.Between, '-'));

    public static readonly Gen<DateTimeOffset> Time =
        Gen.Long[DateTimeOffset.MinValue.ToUnixTimeMilliseconds(), DateTimeOffset.MaxValue.ToUnixTimeMilliseconds()]
            .Select(DateTimeOffset.FromUnixTimeMilliseconds);

    private static readonly Gen<DateTimeOffset?> TimeOrNull =
        Gen.OneOf(Time.Select(t => (DateTimeOffset?)t), Gen.Const((DateTimeOffset?)null));

    public static readonly Gen<double> Real =
        Gen.OneOf(Gen.Double.Unit, Pick(0.0, -0.0, double.Epsilon, double.MaxValue, 1.0 / 3));

    private static readonly Gen<CaseEntry> Entry =
        from turn in Gen.Int
        from kind in Gen.Enum<EntryKind>()
        from subject in Text
        from value in TextOrNull
        from score in Real
        from at in Time
        from struck in Gen.Bool
        select new CaseEntry(turn, kind, subject, value, score, at, struck);

    public static readonly Gen<Case> Case =
        from ids in Gen.Select(Key, Key, Key, Key)
        from phase in Gen.Enum<CasePhase>()
        from words in Gen.Select(Text, Text)
        from entries in List(Entry)
        from open in Gen.Select(Gen.Enum<AskKind>(), Text, Gen.Int, Gen.Int, (k, s, p, n) => new Ask(k, s, p, n))
        from numbers in Gen.Select(Gen.Int, Gen.Int[1, int.MaxValue])
        from times in Gen.Select(Time, Time, TimeOrNull)
        from handled in List(Text)
        select new Case(
            new CaseId(ids.Item1), new MemberId(ids.Item2), new BikeId(ids.Item3), ids.Item4, phase, words.Item1, entries, open,
            numbers.Item1, numbers.Item2, words.Item2, times.Item1, times.Item2, times.Item3, handled);

    private static readonly Gen<BikeFact> Fact = Gen.Select(Text, Time, Text, (value, learnt, how) => new BikeFact(value, learnt, how));

    private static readonly Gen<WorkDone> Work =
        Gen.Select(Text, Text, Key, Time, (repair, what, c, at) => new WorkDone(repair, what, new CaseId(c), at));

    public static readonly Gen<BikeProfile> Bike =
        from ids in Gen.Select(Key, Key, Text)
        from facts in Gen.Select(Text, Fact).Array[0, 4]
        from work in List(Work)
        from riding in GeneratedRiding.Log
        from done in List(GeneratedRiding.Done)
        from handled in List(Text)
        from version in Gen.Int[1, int.MaxValue]
        select new BikeProfile(
            new BikeId(ids.Item1), new MemberId(ids.Item2), ids.Item3,
            facts.DistinctBy(f => f.Item1).ToImmutableSortedDictionary(f => f.Item1, f => f.Item2, StringComparer.Ordinal), work,
            riding, done, handled, version);

    public static readonly Gen<Outcome> Outcome =
        from c in Key
        from phase in Gen.Enum<CasePhase>()
        from repair in TextOrNull
        from causes in List(Gen.Select(Text, Real, (fault, chance) => new OutcomeCause(fault, chance)))
        from asked in Gen.Int
        from version in Text
        from at in Time
        select new Outcome(new CaseId(c), phase, repair, causes, asked, version, at);

    private static readonly Gen<CardBlock> Block = Gen.OneOf<CardBlock>(
        Text.Select(t => (CardBlock)new TextBlock(t)),
        Gen.Select(Text, Text, Text, Text, (w, h, c, a) => (CardBlock)new CautionBlock(w, h, c, a)),
        Gen.Select(Text, Gen.Int, List(Gen.Select(Text, TextOrNull, (d, n) => new CardStep(d, n))), (h, f, s) => (CardBlock)new StepsBlock(h, f, s)),
        Gen.Select(Text, List(Text), (h, i) => (CardBlock)new ListBlock(h, i)),
        Text.Select(t => (CardBlock)new DrawingBlock(t)),
        List(Gen.Select(Text, Real, Text, (c, p, w) => new BeliefLine(c, p, w))).Select(l => (CardBlock)new BeliefBlock(l)));

    private static readonly Gen<CardOption> Option =
        Gen.Select(Text, Text, Gen.Enum<OptionRole>(), (id, label, role) => new CardOption(id, label, role));

    private static readonly Gen<CardProgress?> Progress = Gen.OneOf(
        Gen.Const((CardProgress?)null),
        Gen.Select(Gen.Int, TextOrNull, TextOrNull, (asked, leading, word) => (CardProgress?)new CardProgress(asked, leading, word)));

    public static readonly Gen<Card> Card =
        Gen.Select(Text, List(Block), List(Option), Progress, Gen.Bool, (title, blocks, options, progress, repeated) =>
            new Card(title, blocks, options, progress, repeated));

    public static readonly Gen<OutboxMessage> Message =
        Gen.Select(Key, Key, Key, Card, Time, Text, (id, c, place, card, at, answers) =>
            new OutboxMessage(id, new CaseId(c), place, card, at, answers));

    public static readonly Gen<Club> Club =
        from id in ClubKey
        from texts in Gen.Select(TextOrNull, TextOrNull, Text, TextOrNull)
        from units in Gen.Enum<Units>()
        from left in TimeOrNull
        from version in Gen.Int[1, int.MaxValue]
        select new Club(new ClubId(id), texts.Item1, texts.Item2, units, texts.Item3, texts.Item4, left, version);

    public static readonly Gen<Room> Room =
        from club in ClubKey.Select(k => new ClubId(k))
        from keys in Gen.Select(Key, Key, Gen.OneOf(Key.Select(k => (string?)k), Gen.Const((string?)null)))
        from texts in Gen.Select(Text, TextOrNull, Text, TextOrNull, TextOrNull)
        from flags in Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool)
        from helpers in List(Key.Select(club.Member))
        from state in Gen.Enum<RoomState>()
        from opened in Time
        from version in Gen.Int[1, int.MaxValue]
        select new Room(
            keys.Item1, club, club.Member(keys.Item2), texts.Item1, keys.Item3, flags.Item1, texts.Item2, flags.Item2, texts.Item3,
            texts.Item4, helpers, flags.Item3, texts.Item5, state, opened, version);

    private static Gen<T> Pick<T>(params T[] from) => Gen.Int[0, from.Length - 1].Select(i => from[i]);

    public static Gen<ImmutableArray<T>> List<T>(Gen<T> item) => item.Array[0, 4].Select(a => a.ToImmutableArray());
}
