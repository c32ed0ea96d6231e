using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>An act on a club's rules made ready to be written: all that can be wrong with it shows here, before the writer is bothered.</summary>
/// <param name="Versioned">What is saved over a version of its own, with its collection and what to call it.</param>
/// <param name="Edition">Head and texts of the edition, or null.</param>
internal sealed record TeachingDocuments(
    ClubId Club,
    ImmutableArray<(string Collection, BsonDocument Document, string Called)> Versioned,
    (BsonDocument Head, BsonDocument Texts, int Number)? Edition,
    ImmutableArray<AuditEntry> Audit,
    ImmutableArray<(OutboxMessage Message, string Card)> Say)
{
    /// <exception cref="ArgumentException">The act does not hang together, or is not all of one club.</exception>
    public static TeachingDocuments Of(TeachingSaved saved)
    {
        var (club, proposal, tip, settings, edition, audit, say, book) = saved;
        // That cases were looked over and nothing was done is no act.
        ThrowUnless(!audit.IsDefaultOrEmpty || (!audit.IsDefault && book is not null && proposal is null && tip is null && settings is null && edition is null), "An act without a line of audit.");
        ThrowUnless(
            audit.All(a => a.Club == club) && (proposal is null || proposal.Club == club) && (tip is null || tip.Club == club)
            && (settings is null || settings.Club == club) && (edition is null || edition.Club == club) && (book is null || book.Club == club),
            "Not all is of the one club.");
        ThrowUnless(audit.All(a => a.Number == 0), "A line of audit has a number already.");
        ThrowUnless((proposal?.Version ?? 1) >= 1 && (tip?.Version ?? 1) >= 1 && (settings?.Version ?? 1) >= 1 && (book?.Version ?? 1) >= 1, "Something has no version.");
        ThrowUnless((edition?.Number ?? 1) >= 1, "The edition has no number.");

        var versioned = ImmutableArray.CreateBuilder<(string, BsonDocument, string)>();
        if (proposal is not null)
        {
            versioned.Add((ProposalDocument.Collection, ProposalDocument.ToBson(proposal), $"Proposal '{proposal.Id}'"));
        }

        if (tip is not null)
        {
            versioned.Add((TipDocument.Collection, TipDocument.ToBson(tip), $"Tip '{tip.Id}'"));
        }

        if (settings is not null)
        {
            versioned.Add((TeachingSettingsDocument.Collection, TeachingSettingsDocument.ToBson(settings), "The way the club goes about its rules"));
        }

        if (book is not null)
        {
            versioned.Add((LearningBookDocument.Collection, LearningBookDocument.ToBson(book), "What is noted of the club's learning"));
        }

        (BsonDocument Head, BsonDocument Texts, int)? numbered = edition is null ? null : (EditionDocument.ToBson(edition), LayerDocument.ToBson(edition), edition.Number);
        var ready = OutboxWriter.Ready(say);
        ImmutableArray<BsonDocument> marked = [.. versioned.Select(v => v.Item2), .. numbered is { } n ? new[] { n.Head } : []];
        SaveMark.Put(marked, [.. numbered is { } t ? new[] { t.Texts } : [], .. ready.Select(r => OutboxDocument.ToBson(r.Message, r.Card, 0))], audit);
        return new TeachingDocuments(club, versioned.ToImmutable(), numbered, audit, ready);
    }

    private static void ThrowUnless(bool holds, string problem)
    {
        if (!holds)
        {
            throw new ArgumentException(problem);
        }
    }
}
