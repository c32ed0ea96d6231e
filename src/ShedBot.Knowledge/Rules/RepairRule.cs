using System.Collections.Immutable;

namespace ShedBot.Knowledge.Rules;

/// <summary>A repair, told so that a beginner can do it in the right order.</summary>
/// <param name="Does">Completes 'the repair: ...': "set the arm back to neutral, then the cable, then the nut".</param>
/// <param name="Mends">Fault id to chance word: how often it mends it in the rider's own hands.</param>
/// <param name="Money">Parts, in the club's currency units; 0 or more.</param>
/// <param name="Prove">How to prove that it held, in order.</param>
/// <param name="Watch">What to watch after, and when.</param>
/// <param name="Prevent">What keeps it from coming back.</param>
/// <param name="ForHelper">Why a practised hand or licensed shop should do it; null when a beginner may.</param>
public sealed record RepairRule(
    string Id,
    string Does,
    ImmutableDictionary<string, string> Mends,
    double Minutes,
    double Money,
    double Effort,
    string? Cover,
    string Hazard,
    ImmutableArray<string> Tools,
    ImmutableArray<PartRule> Parts,
    ImmutableArray<CautionRule> Cautions,
    ImmutableArray<RepairStep> Steps,
    ImmutableArray<string> Prove,
    ImmutableArray<string> Watch,
    ImmutableArray<string> Prevent,
    string? ForHelper,
    Origin Origin);

/// <param name="Size">A published size, or how to measure the rider's own; never a bare soft figure.</param>
public sealed record PartRule(string Name, string Size);

/// <param name="Note">What it should look or feel like, or the usual mistake; null when nothing is to be added.</param>
public sealed record RepairStep(string Do, string? Note);
