namespace ShedBot.Coaching.Learning.Counting;

/// <summary>What was answered about a finding where one fault that shows in it was there, each answer as what it tells of the true state.</summary>
internal sealed class Asked : Bearing
{
    private const int MostSteps = 200;

    private const double Settled = 1e-6;

    private readonly List<(int Member, double Weight, double[] Said)> answers = [];

    /// <param name="said">By true state: P(what was said | it), up to a factor.</param>
    public void Add(int member, double weight, double[] said) => answers.Add((member, weight, said));

    /// <summary>
    /// The true states as far as the answers tell. What an answer tells depends on how often the state is seen, and that on the answers: the two are worked
    /// out in turn until they agree (expectation and maximisation; Dempster, Laird and Rubin 1977, from memory). So errors of answers are taken out, and not
    /// by the old chances alone.
    /// </summary>
    /// <param name="prior">By state: the chance of its word.</param>
    public Tally Tally(double[] prior, double sampleSize)
    {
        var chances = prior;
        for (var step = 0; step < MostSteps; step++)
        {
            var next = Posterior.Mean(prior, sampleSize, Counted(chances).Sum);
            var moved = next.Zip(chances, (a, b) => Math.Abs(a - b)).Max();
            chances = next;
            if (moved < Settled) break;
        }

        return Counted(chances);
    }

    private Tally Counted(double[] chances)
    {
        var tally = new Tally(chances.Length);
        foreach (var (member, weight, said) in answers)
        {
            var total = 0.0;
            for (var state = 0; state < chances.Length; state++) total += chances[state] * said[state];
            if (total <= 0) continue;
            for (var state = 0; state < chances.Length; state++) tally.Add(member, state, weight * chances[state] * said[state] / total);
        }

        return tally;
    }
}
