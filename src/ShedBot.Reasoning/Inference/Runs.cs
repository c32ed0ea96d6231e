using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ShedBot.Reasoning.Inference;

/// <summary>Sums over numbers that lie side by side, several at a time where the processor can.</summary>
/// <remarks>
/// Each number is worked on as it would be alone, to the last digit; only where numbers are added up is the order another one. Four at a time
/// on every machine, whatever it can do, so that the same sums come out everywhere.
/// </remarks>
internal static class Runs
{
    /// <summary>into = by * factor.</summary>
    public static void Product(Span<double> into, ReadOnlySpan<double> by, double factor)
    {
        var vectors = Wide(into);
        var factors = Wide(by);
        for (var i = 0; i < vectors.Length; i++) vectors[i] = factors[i] * factor;
        for (var i = Tail(into.Length); i < into.Length; i++) into[i] = by[i] * factor;
    }

    /// <summary>into = with + term.</summary>
    public static void Sum(Span<double> into, ReadOnlySpan<double> with, double term)
    {
        var vectors = Wide(into);
        var terms = Wide(with);
        var all = Vector256.Create(term);
        for (var i = 0; i < vectors.Length; i++) vectors[i] = terms[i] + all;
        for (var i = Tail(into.Length); i < into.Length; i++) into[i] = with[i] + term;
    }

    /// <summary>weights *= rise + (normal * quiet).</summary>
    public static void Tell(Span<double> weights, ReadOnlySpan<double> quiet, double rise, double normal)
    {
        var vectors = Wide(weights);
        var quiets = Wide(quiet);
        var rises = Vector256.Create(rise);
        for (var i = 0; i < vectors.Length; i++) vectors[i] *= rises + (quiets[i] * normal);
        for (var i = Tail(weights.Length); i < weights.Length; i++) weights[i] *= rise + (normal * quiet[i]);
    }

    /// <summary>weights *= (normal * quiet) + ((1 - quiet) * tilted / hazard), the last part being 0 where there is no hazard.</summary>
    public static void Tell(Span<double> weights, ReadOnlySpan<double> quiet, ReadOnlySpan<double> hazard, ReadOnlySpan<double> tilted, double normal)
    {
        var vectors = Wide(weights);
        var quiets = Wide(quiet);
        var hazards = Wide(hazard);
        var tilts = Wide(tilted);
        for (var i = 0; i < vectors.Length; i++)
        {
            var abnormal = (Vector256<double>.One - quiets[i]) * (tilts[i] / hazards[i]);
            abnormal = Vector256.ConditionalSelect(Vector256.GreaterThan(hazards[i], Vector256<double>.Zero), abnormal, Vector256<double>.Zero);
            vectors[i] *= (quiets[i] * normal) + abnormal;
        }

        for (var i = Tail(weights.Length); i < weights.Length; i++)
            weights[i] *= (normal * quiet[i]) + (hazard[i] > 0 ? (1 - quiet[i]) * (tilted[i] / hazard[i]) : 0);
    }

    /// <summary>into += with * factor.</summary>
    public static void Add(Span<double> into, ReadOnlySpan<double> with, double factor)
    {
        var vectors = Wide(into);
        var terms = Wide(with);
        for (var i = 0; i < vectors.Length; i++) vectors[i] += terms[i] * factor;
        for (var i = Tail(into.Length); i < into.Length; i++) into[i] += with[i] * factor;
    }

    /// <summary>What all of them come to.</summary>
    public static double Total(ReadOnlySpan<double> values)
    {
        // Four sums side by side: one alone would wait for itself.
        var vectors = Wide(values);
        var (a, b, c, d, at) = (Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero, 0);
        for (; at + 4 <= vectors.Length; at += 4)
        {
            a += vectors[at];
            b += vectors[at + 1];
            c += vectors[at + 2];
            d += vectors[at + 3];
        }

        for (; at < vectors.Length; at++) a += vectors[at];
        var total = Vector256.Sum(a + b + (c + d));
        foreach (var value in values[Tail(values.Length)..]) total += value;
        return total;
    }

    /// <summary>values /= divisor.</summary>
    public static void Divide(Span<double> values, double divisor)
    {
        var vectors = Wide(values);
        var divisors = Vector256.Create(divisor);
        foreach (ref var vector in vectors) vector /= divisors;
        foreach (ref var value in values[Tail(values.Length)..]) value /= divisor;
    }

    /// <summary>What is at or below <paramref name="least"/> becomes 0.</summary>
    public static void Clear(Span<double> values, double least)
    {
        var vectors = Wide(values);
        var leasts = Vector256.Create(least);
        foreach (ref var vector in vectors) vector = Vector256.ConditionalSelect(Vector256.GreaterThan(vector, leasts), vector, Vector256<double>.Zero);
        foreach (ref var value in values[Tail(values.Length)..]) value = value > least ? value : 0;
    }

    /// <summary>Whether any of them is at least so much.</summary>
    public static bool AnyFrom(ReadOnlySpan<double> values, double least)
    {
        var leasts = Vector256.Create(least);
        foreach (var vector in Wide(values))
        {
            if (Vector256.GreaterThanOrEqualAny(vector, leasts)) return true;
        }

        foreach (var value in values[Tail(values.Length)..])
        {
            if (value >= least) return true;
        }

        return false;
    }

    private static Span<Vector256<double>> Wide(Span<double> values) => MemoryMarshal.Cast<double, Vector256<double>>(values);

    private static ReadOnlySpan<Vector256<double>> Wide(ReadOnlySpan<double> values) => MemoryMarshal.Cast<double, Vector256<double>>(values);

    private static int Tail(int length) => length - (length % Vector256<double>.Count);
}
