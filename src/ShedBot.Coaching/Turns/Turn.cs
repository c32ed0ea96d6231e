using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning;

namespace ShedBot.Coaching.Turns;

/// <summary>What one turn comes to.</summary>
/// <param name="Case">The case after; the very case that came in when the event was answered before.</param>
/// <param name="Bike">The bike after.</param>
/// <param name="Outcome">Set when this turn closed the case.</param>
/// <param name="Say">What to say, in order; empty only when the event was answered before.</param>
/// <param name="OpensNew">True when what came in is for a new case: the case before is closed, or of another bike, and stays as it is.</param>
/// <param name="Unheard">Words that nothing could be made of, or null.</param>
public sealed record Turn(Case Case, BikeProfile Bike, Outcome? Outcome, ImmutableArray<Card> Say, bool OpensNew = false, UnheardWords? Unheard = null);
