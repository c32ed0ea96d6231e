namespace ShedBot.Reasoning.Planning;

/// <summary>The best order of repairs when nothing more is asked, with help at the moment where going on costs more.</summary>
/// <remarks>
/// <para>Repairs in falling order of p / C, p worked out anew after each failure; optimal for one fault and independent repairs (Smith 1956;
/// Kadane and Simon 1977; Heckerman, Breese and Rommelse 1995). A closed cover competes with its best leading run,
/// max over m of (p_1 + .. + p_m) / (K + C_1 + .. + C_m) (Ottosen and Jensen 2010).</para>
/// <para>Cost = sum U_(i-1) C_i + U_m C_help, cut at the best m, where U_i is the weight not solved by the first i repairs; with sets of several
/// faults it is followed exactly through the half-mended sets.</para>
/// <para>Keeps its working space between calls: not for use by two threads at once.</para>
/// </remarks>
internal sealed class RepairsPlan(PlanTable table)
{
    private readonly double[] weights = new double[table.Weights.Length];
    private readonly double[] credit = new double[table.Repairs.Length];
    private readonly int[] order = new int[table.Repairs.Length];
    private readonly int[] run = new int[table.Repairs.Length];
    private int length;

    /// <summary>The repairs of the last plan, by index; none when help comes at once.</summary>
    public ReadOnlySpan<int> Order => order.AsSpan(0, length);

    /// <returns>The expected cost of the plan, times the weight.</returns>
    public double Value(ReadOnlySpan<double> from, StepsLeft left)
    {
        from.CopyTo(weights);
        var unsolved = PlanTable.Sum(weights);
        var best = unsolved * table.HelpCost;
        length = 0;
        var spent = 0.0;
        var repairs = Useful(left.Repairs);
        var open = left.CoversOpen;
        for (var done = 0; repairs != 0;)
        {
            var repair = table.Repairs[Next(repairs, open)];
            spent += unsolved * table.Cost(repair, open);
            if (spent >= best) break;
            open |= repair.CoverBit;
            repairs &= ~repair.Bit;
            order[done++] = repair.Index;
            unsolved = Math.Max(0, unsolved - repair.Fail(weights));
            repairs = Refresh(repairs, repair.Rivals);
            var total = spent + (unsolved * table.HelpCost);
            if (total >= best) continue;
            best = total;
            length = done;
        }

        return best;
    }

    private ulong Useful(ulong repairs) => Refresh(repairs, repairs);

    private ulong Refresh(ulong repairs, ulong changed)
    {
        for (var bits = repairs & changed; bits != 0;)
        {
            var i = PlanTable.Take(ref bits);
            credit[i] = table.Repairs[i].Credit(weights);
            if (credit[i] <= 0) repairs &= ~(1UL << i);
        }

        return repairs;
    }

    private int Next(ulong repairs, ulong open)
    {
        var (best, rate) = (-1, -1.0);
        for (var bits = repairs; bits != 0;)
        {
            var i = PlanTable.Take(ref bits);
            var cover = table.Repairs[i].Cover;
            if (cover >= 0 && ((open >> cover) & 1) == 0) continue;
            if (credit[i] / table.Repairs[i].Cost is var own && own > rate) (best, rate) = (i, own);
        }

        for (var cover = 0; cover < table.CoverCosts.Length; cover++)
        {
            var members = table.CoverRepairs[cover] & repairs;
            if (members == 0 || ((open >> cover) & 1) != 0) continue;
            if (LeadingRun(members, table.CoverCosts[cover]) is var (first, joint) && joint > rate) (best, rate) = (first, joint);
        }

        return best;
    }

    private (int First, double Rate) LeadingRun(ulong members, double opening)
    {
        var count = 0;
        while (members != 0)
        {
            var i = PlanTable.Take(ref members);
            var own = credit[i] / table.Repairs[i].Cost;
            var at = count++;
            for (; at > 0 && credit[run[at - 1]] / table.Repairs[run[at - 1]].Cost < own; at--) run[at] = run[at - 1];
            run[at] = i;
        }

        var (gained, paid, rate) = (0.0, opening, 0.0);
        foreach (var i in run.AsSpan(0, count))
        {
            gained += credit[i];
            paid += table.Repairs[i].Cost;
            rate = Math.Max(rate, gained / paid);
        }

        return (run[0], rate);
    }
}
