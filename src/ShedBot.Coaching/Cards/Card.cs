using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ShedBot.Coaching.Cards;

/// <summary>What the coach says, free of any platform: each place draws it in its own way.</summary>
/// <param name="Title">One line; never empty.</param>
/// <param name="Options">The answers that can be picked; empty when nothing is asked.</param>
/// <param name="Progress">How far the case is, or null.</param>
/// <param name="Repeated">True when the question was put before and its card is put once more: a place where the first one is still to be read may leave out the blocks.</param>
public sealed record Card(
    string Title, ImmutableArray<CardBlock> Blocks, ImmutableArray<CardOption> Options, CardProgress? Progress = null, bool Repeated = false);

/// <summary>One part of a card.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(TextBlock), "text")]
[JsonDerivedType(typeof(CautionBlock), "caution")]
[JsonDerivedType(typeof(StepsBlock), "steps")]
[JsonDerivedType(typeof(ListBlock), "list")]
[JsonDerivedType(typeof(DrawingBlock), "drawing")]
[JsonDerivedType(typeof(BeliefBlock), "belief")]
public abstract record CardBlock;

/// <summary>A paragraph.</summary>
public sealed record TextBlock(string Text) : CardBlock;

/// <summary>A caution in the order of ANSI Z535.6: signal word, hazard, consequence, avoidance.</summary>
public sealed record CautionBlock(string Word, string Hazard, string Consequence, string Avoid) : CardBlock;

/// <summary>Numbered steps; <paramref name="First"/> is the number of the first.</summary>
public sealed record StepsBlock(string Heading, int First, ImmutableArray<CardStep> Steps) : CardBlock;

public sealed record CardStep(string Do, string? Note);

/// <summary>Points without an order.</summary>
public sealed record ListBlock(string Heading, ImmutableArray<string> Items) : CardBlock;

/// <summary>A drawing in characters, to be shown in a fixed-width face.</summary>
public sealed record DrawingBlock(string Text) : CardBlock;

/// <summary>What is believed, most likely first.</summary>
public sealed record BeliefBlock(ImmutableArray<BeliefLine> Lines) : CardBlock;

/// <param name="Chance">P(cause), in [0, 1]; several causes may be present, so lines need not add up to 1.</param>
/// <param name="Word">The chance as a word (ICD 203).</param>
public sealed record BeliefLine(string Cause, double Chance, string Word);

/// <summary>What an option is for; places may draw the helping ones smaller.</summary>
public enum OptionRole
{
    Answer,
    Help,
}

/// <param name="Id">Unique on its card; says which question it answers, so that a late press is noticed.</param>
public sealed record CardOption(string Id, string Label, OptionRole Role = OptionRole.Answer);

/// <param name="Asked">Questions and checks so far.</param>
/// <param name="Leading">The cause that leads, or null while nothing does.</param>
/// <param name="Word">How likely it is, as a word, or null.</param>
public sealed record CardProgress(int Asked, string? Leading, string? Word);
