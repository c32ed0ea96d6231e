using System.Globalization;
using Microsoft.Extensions.Options;
using ShedBot.Coaching;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Starting;

/// <summary>How the coach goes about it: the section <c>Coach</c> of appsettings.json, or <c>SHEDBOT_COACH__MOSTQUESTIONS</c> and the like.</summary>
internal sealed class CoachSettings
{
    public const string Section = "Coach";
    public const int LeastQuestions = 4, MostQuestionsAllowed = 40, MostFactsAllowed = 10, LongestHelper = 80;

    /// <summary>Hand over after so many questions and checks since the last repair; 4 to 40.</summary>
    public int MostQuestions { get; set; } = new CoachOptions().MostQuestions;

    /// <summary>The most facts of the bike that one case asks; 0 to 10.</summary>
    public int MostFacts { get; set; } = new CoachOptions().MostFacts;

    /// <summary>Steps above this hazard go to a human: None, Low or Medium. Nothing above that is ever coached.</summary>
    public Hazard HazardLimit { get; set; } = new CoachOptions().HazardLimit;

    /// <summary>To whom a case is handed, as the club says it; 1 to 80 characters.</summary>
    public string Helper { get; set; } = new CoachOptions().Helper;

    public CoachOptions ToOptions() =>
        new() { MostQuestions = MostQuestions, MostFacts = MostFacts, HazardLimit = HazardLimit, Helper = Helper };
}

/// <summary>Says the limit and what was given.</summary>
internal sealed class CoachSettingsValidator : IValidateOptions<CoachSettings>
{
    public ValidateOptionsResult Validate(string? name, CoachSettings options)
    {
        var failures = new List<string>();
        Range("Coach:MostQuestions", options.MostQuestions, CoachSettings.LeastQuestions, CoachSettings.MostQuestionsAllowed);
        Range("Coach:MostFacts", options.MostFacts, 0, CoachSettings.MostFactsAllowed);
        if (options.HazardLimit is < Hazard.None or > Hazard.Medium)
            failures.Add($"Coach:HazardLimit must be None, Low or Medium; {options.HazardLimit} was given.");
        if (options.Helper.Length is 0 or > CoachSettings.LongestHelper)
            failures.Add(string.Create(CultureInfo.InvariantCulture, $"Coach:Helper must be 1 to {CoachSettings.LongestHelper} characters; {options.Helper.Length} were given."));
        return failures.Count > 0 ? ValidateOptionsResult.Fail(failures) : ValidateOptionsResult.Success;

        void Range(string setting, int given, int least, int most)
        {
            if (given < least || given > most)
                failures.Add(string.Create(CultureInfo.InvariantCulture, $"{setting} must be between {least} and {most}; {given} was given."));
        }
    }
}
