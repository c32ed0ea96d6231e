using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Loading.Reading;

/// <summary>Checks, covers and repairs out of their fields.</summary>
internal static class ReadWork
{
    public static CheckRule Check(Fields f) => new(
        f.Id,
        f.Text("tells"),
        f.Text("ask"),
        f.Text("why"),
        f.Texts("how"),
        f.Pairs("answers"),
        f.TextOrNull("show me"),
        f.TextOrNull("other words"),
        f.Number("minutes"),
        f.Number("effort"),
        f.Texts("tools"),
        f.TextOrNull("cover"),
        f.Word("hazard", "none"),
        f.YesNo("hands on"),
        f.Text("reliability"),
        f.Items("cautions", Caution),
        f.Origin());

    public static CoverRule Cover(Fields f) => new(
        f.Id, f.Text("called"), f.Number("minutes"), f.Number("effort"), f.Texts("tools"), f.Texts("how"), f.Origin());

    public static RepairRule Repair(Fields f) => new(
        f.Id,
        f.Text("does"),
        f.Pairs("mends"),
        f.Number("minutes"),
        f.Number("money"),
        f.Number("effort"),
        f.TextOrNull("cover"),
        f.Word("hazard", "none"),
        f.Texts("tools"),
        f.Items("parts", p => new PartRule(p.Text("name"), p.Text("size"))),
        f.Items("cautions", Caution),
        f.Items("steps", s => new RepairStep(s.Text("do"), s.TextOrNull("note"))),
        f.Texts("prove"),
        f.Texts("watch"),
        f.Texts("prevent"),
        f.TextOrNull("for helper"),
        f.Origin());

    public static CautionRule Caution(Fields f) => new(f.Text("word"), f.Text("hazard"), f.Text("consequence"), f.Text("avoid"));
}
