using System.Globalization;
using System.Text;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Turns;

namespace ShedBot.Coaching.Simulating.Rides;

/// <summary>All of a simulated talk that a turn can depend on, as text. Simulated cases share their ids and stand at one moment, so neither is in it.</summary>
internal static class TalkKey
{
    public static string Of(Case @case, BikeProfile bike)
    {
        var key = new StringBuilder(512);
        key.Append(CultureInfo.InvariantCulture, $"{@case.Phase}|{@case.Open}|{@case.Turn}|{@case.OpeningWords}|");
        foreach (var e in @case.Entries) key.Append(CultureInfo.InvariantCulture, $"{e.Turn},{e.Kind},{e.Subject},{e.Value},{e.Score:R},{e.Struck};");
        key.Append('|');
        foreach (var (fact, value) in bike.Facts) key.Append(CultureInfo.InvariantCulture, $"{fact}={value.Value},{value.How};");
        foreach (var work in bike.Work) key.Append(CultureInfo.InvariantCulture, $"{work.Repair};");
        return key.ToString();
    }

    public static string Of(Incoming said) => said switch
    {
        MemberSaid words => "\"" + words.Words,
        MemberChose chose => chose.OptionId,
        _ => throw new ArgumentOutOfRangeException(nameof(said), said, "A simulated rider says or picks."),
    };
}
