using System.Globalization;
using ShedBot.Coaching.Thinking;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Coaching.Trials.Replaying;

/// <summary>What a belief follows from, as text: cases that agree in it are believed exactly alike, and are worked out once.</summary>
/// <param name="Bike">How the facts of the bike move the chances of faults.</param>
/// <param name="Heard">The entries that are evidence, in their order.</param>
internal readonly record struct BeliefQuestion(string Bike, string Heard)
{
    public static BeliefQuestion Of(CaseView view)
    {
        var profile = MachineProfile.Of(view.Knowledge, view.Facts);
        return new BeliefQuestion(
            string.Join(';', profile.Shifts.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Fault}*{s.LogOdds:R}")).Concat(profile.Removed)),
            string.Join(';', view.EvidenceFrom.Select(e => string.Create(CultureInfo.InvariantCulture, $"{e.Kind},{e.Subject},{e.Value},{e.Score:R}"))));
    }
}
