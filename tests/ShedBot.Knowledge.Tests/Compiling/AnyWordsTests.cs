using CsCheck;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Tests.Samples;
using ShedBot.Knowledge.Wording;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Tests.Compiling;

/// <summary>Whatever words an author picks: the linter refuses them, or they compile to what they say.</summary>
public class AnyWordsTests
{
    private static readonly Gen<string> Word = Gen.OneOf<string>([.. ChanceWords.Scale.Select(s => s.Word)]);

    [Fact]
    public void Load_AnyStrengthsAndLeaks_AreRefusedOrComeOutAsWritten() =>
        Gen.Select(Word, Word, Word, Word).Sample((black, loose, leakOfBlack, leakOfLoose) =>
        {
            var result = LampRules.With(
                "bulb-look: {black: likely}", $"bulb-look: {{black: {black}, loose: {loose}}}",
                "seen anyway: {loose: almost no chance}", $"seen anyway: {{black: {leakOfBlack}, loose: {leakOfLoose}}}");
            if (result.Knowledge is not { Model: var model }) return result.Problems.Any(p => p.Severity == Severity.Error);
            var (g, scale) = ((Black: ChanceWords.Chance(black), Loose: ChanceWords.Chance(loose)), 1.0);
            if (g.Black + g.Loose > 0.99) scale = 0.99 / (g.Black + g.Loose);
            var given = Given(model);
            return Math.Abs(given[1] - (g.Black * scale)) < 1e-9 && Math.Abs(given[2] - (g.Loose * scale)) < 1e-9;
        }, iter: 500);

    [Fact]
    public void Load_OnlyOneStateListed_ComesOutAsWrittenBesideTheLeakOfTheOther() =>
        Gen.Select(Word, Word, Word).Sample((black, leakOfBlack, leakOfLoose) =>
        {
            var result = LampRules.With(
                "bulb-look: {black: likely}", $"bulb-look: {{black: {black}}}",
                "bulb-look: {loose: very likely}", "bulb-look: {loose: almost certain}",
                "seen anyway: {loose: almost no chance}", $"seen anyway: {{black: {leakOfBlack}, loose: {leakOfLoose}}}");
            if (result.Knowledge is not { Model: var model }) return result.Problems.Any(p => p.Severity == Severity.Error);
            return Math.Abs(Given(model)[1] - ChanceWords.Chance(black)) < 1e-9
                && model.Findings[model.FindingAt("bulb-look")].Links.Single(l => l.Fault == "bulb-burnt").Net[2] == 0;
        }, iter: 300);

    private static double[] Given(DiagnosticModel model) =>
        new StateChances(model, model.FindingAt("bulb-look")).Given([model.FaultAt("bulb-burnt")]);
}
