using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>Whole rules as text, for those that can only be changed by writing them anew.</summary>
internal static class RuleItems
{
    public static RuleItem By(this RuleItem item, Credit credit) => item
        .Add("source", credit.Source).Add("author", credit.Author).Add("date", credit.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)).Add("said by", credit.SaidBy);

    public static RuleItem Of(CheckRule rule, Credit credit) => new RuleItem()
        .Add("id", rule.Id).Add("tells", rule.Tells).Add("ask", rule.Ask).Add("why", rule.Why).Add("how", rule.How)
        .Add("answers", Map(rule.Answers)).Add("show me", rule.ShowMe).Add("other words", rule.OtherWords)
        .Add("minutes", rule.Minutes).Add("effort", rule.Effort).Add("tools", rule.Tools).Add("cover", rule.Cover).Add("hazard", rule.Hazard)
        .Add("hands on", rule.HandsOn ? "yes" : "no").Add("reliability", rule.Reliability).Add("cautions", rule.Cautions.Select(Of)).By(credit);

    public static RuleItem Of(RepairRule rule, Credit credit) => new RuleItem()
        .Add("id", rule.Id).Add("does", rule.Does).Add("mends", Map(rule.Mends))
        .Add("minutes", rule.Minutes).Add("money", rule.Money).Add("effort", rule.Effort).Add("cover", rule.Cover).Add("hazard", rule.Hazard).Add("tools", rule.Tools)
        .Add("parts", rule.Parts.Select(p => new RuleItem().Add("name", p.Name).Add("size", p.Size))).Add("cautions", rule.Cautions.Select(Of))
        .Add("steps", rule.Steps.Select(Of)).Add("prove", rule.Prove).Add("watch", rule.Watch).Add("prevent", rule.Prevent).Add("for helper", rule.ForHelper).By(credit);

    public static RuleItem Of(FaultRule rule, Credit credit) => new RuleItem()
        .Add("id", rule.Id).Add("is", rule.Is).Add("because", rule.Because).Add("how common", rule.HowCommon)
        .Add("shows as", rule.ShowsAs.OrderBy(s => s.Key, StringComparer.Ordinal).Aggregate(new RuleItem(), (item, sign) => item.Add(sign.Key, Map(sign.Value))))
        .Add("moved by", rule.MovedBy.Select(m => new RuleItem().Add("fact", m.Fact).Add("is", m.Value).Add("times", m.Times))).By(credit);

    public static RuleItem Of(CoverRule rule, Credit credit) => new RuleItem()
        .Add("id", rule.Id).Add("called", rule.Called).Add("minutes", rule.Minutes).Add("effort", rule.Effort).Add("tools", rule.Tools).Add("how", rule.How).By(credit);

    public static RuleItem Of(ServiceRule rule, Credit credit) => rule.Sooner.Aggregate(
        new RuleItem()
            .Add("id", rule.Id).Add("called", rule.Called).Add("does", rule.Does).Add("why", rule.Why).Add("minutes", rule.Minutes).Add("hazard", rule.Hazard).Add("tools", rule.Tools)
            .Add("cautions", rule.Cautions.Select(Of)).Add("steps", rule.Steps.Select(Of)).Add("every", rule.Every.Select(IntervalWords.Text))
            .Add("after", rule.After.Select(a => new RuleItem().Add("events", a.Events).Add("at", a.At.Select(IntervalWords.Text))))
            .Add("only if", rule.OnlyIf.Select(o => new RuleItem().Add("fact", o.Fact).Add("is", o.Values)))
            .Add("done by", rule.DoneBy).Add("reveals", rule.Reveals).Add("before each ride", rule.BeforeEachRide ? "yes" : null),
        (item, sooner) => item.Add($"{sooner.Weather} counts", sooner.Factor)).By(credit);

    public static RuleItem Of(HowToRule rule, Credit credit) => new RuleItem()
        .Add("id", rule.Id).Add("called", rule.Called).Add("riders ask", rule.RidersAsk).Add("cautions", rule.Cautions.Select(Of)).Add("answer", rule.Answer).By(credit);

    private static RuleItem Of(CautionRule caution) =>
        new RuleItem().Add("word", caution.Word).Add("hazard", caution.Hazard).Add("consequence", caution.Consequence).Add("avoid", caution.Avoid);

    private static RuleItem Of(RepairStep step) => new RuleItem().Add("do", step.Do).Add("note", step.Note);

    private static RuleItem Map(ImmutableDictionary<string, string> map) =>
        map.OrderBy(p => p.Key, StringComparer.Ordinal).Aggregate(new RuleItem(), (item, pair) => item.Add(pair.Key, pair.Value));
}
