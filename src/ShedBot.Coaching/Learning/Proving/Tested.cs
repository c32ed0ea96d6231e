namespace ShedBot.Coaching.Learning.Proving;

/// <summary>What came of the test of one kind of numbers.</summary>
/// <param name="Numbers">The numbers that may be laid over the rules; the unlearnt ones where nothing was proved.</param>
/// <param name="ByFold">The same as learnt without each part of the cases.</param>
/// <param name="Proof">Of the numbers that moved, or of those that were held back; null where there was nothing to test, or no test is wanted.</param>
/// <param name="Moved">So many numbers move.</param>
/// <param name="HeldBack">So many more would move by the counts alone.</param>
internal sealed record Tested(double[] Numbers, double[][] ByFold, Proof? Proof, int Moved, int HeldBack);
