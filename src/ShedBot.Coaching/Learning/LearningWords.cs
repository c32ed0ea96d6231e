using System.Globalization;

namespace ShedBot.Coaching.Learning;

/// <summary>Numbers as moderators read them.</summary>
internal static class LearningWords
{
    /// <summary>Whole from 10 on, with one decimal below.</summary>
    public static string Count(double count) => count.ToString(count >= 10 ? "0" : "0.#", CultureInfo.InvariantCulture);

    public static string Percent(double chance) => chance is > 0 and < 0.01 ? "under 1 %" : string.Create(CultureInfo.InvariantCulture, $"{chance * 100:0} %");

    /// <summary>'1 case', '2 cases'.</summary>
    public static string Of(int count, string one, string many) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");
}
