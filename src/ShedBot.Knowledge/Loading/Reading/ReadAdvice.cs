using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Loading.Reading;

/// <summary>How-to answers, emergencies, the question before hands-on work and words out of their fields.</summary>
internal static class ReadAdvice
{
    public static HowToRule HowTo(Fields f) => new(
        f.Id, f.Text("called"), f.Texts("riders ask"), f.Items("cautions", ReadWork.Caution), f.Texts("answer"), f.Origin());

    public static EmergencyRule Emergency(Fields f) => new(
        f.Id, f.Text("called"), f.Texts("riders say"), f.Item("caution", ReadWork.Caution), f.Texts("do now"), f.YesNo("ends coaching"), f.Origin());

    public static TriageRule Triage(Fields f) => new(
        f.Text("ask"),
        f.Texts("points"),
        f.Text("ready"),
        f.Text("not yet"),
        f.Items("dangers", d => new TriageDanger(d.Text("says"), d.Text("emergency"))),
        f.Origin());

    public static EitherRule Either(Fields f) => new(
        f.Id,
        f.Text("called"),
        f.Texts("riders say"),
        f.Texts("riders name"),
        f.Texts("and tell"),
        f.Texts("unless they say"),
        f.Text("ask"),
        f.Text("why"),
        f.Text("other words"),
        f.TextOrNull("show me"),
        f.Item("caution", ReadWork.Caution),
        f.Texts("until known"),
        f.Text("if unsure"),
        f.Items("answers", a => new EitherAnswer(a.Text("says"), a.Texts("riders say"), a.Texts("named by"), a.Text("means"))),
        f.Origin());

    public static WordRule Word(Fields f) => new(f.Text("concept"), f.Texts("riders say"), f.Origin());
}
