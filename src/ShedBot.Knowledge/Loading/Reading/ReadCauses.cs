using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Loading.Reading;

/// <summary>Complaints, findings, facts and faults out of their fields.</summary>
internal static class ReadCauses
{
    public static ComplaintRule Complaint(Fields f) => new(f.Id, f.Text("called"), f.Text("in short"), f.Texts("riders say"), f.Origin());

    public static FindingRule Finding(Fields f) => new(
        f.Id,
        f.Text("means"),
        f.Items("states", s => new StateRule(s.Id, s.Text("says"), s.Texts("riders say"), s.TextOrNull("stop riding"))),
        f.Pairs("seen anyway"),
        f.Origin());

    public static FactRule Fact(Fields f) => new(
        f.Id,
        f.Text("called"),
        f.Text("ask"),
        f.Items("values", v => new FactValue(v.Id, v.Text("says"), v.Text("how often"), v.Texts("riders say"))),
        (int)f.Number("keeps for days"),
        f.Origin());

    public static FaultRule Fault(Fields f) => new(
        f.Id,
        f.Text("is"),
        f.Text("because"),
        f.Text("how common"),
        f.NestedPairs("shows as"),
        f.Items("moved by", m => new ProfileCondition(m.Text("fact"), m.Text("is"), m.Number("times"))),
        f.Origin());
}
