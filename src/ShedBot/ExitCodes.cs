namespace ShedBot;

/// <summary>What the program ends with. Scripts rely on these: never renumber.</summary>
internal static class ExitCodes
{
    public const int Fine = 0;

    /// <summary>What was given to the program has errors: a rule file that is linted, a line of models, the command line itself.</summary>
    public const int InputHasErrors = 1;

    /// <summary>The rules cannot be used, so nothing was started.</summary>
    public const int RulesRefused = 2;

    /// <summary>The data file cannot be used; nothing was changed in it.</summary>
    public const int DataRefused = 3;

    /// <summary>A setting is out of its range, so nothing was started.</summary>
    public const int SettingRefused = 4;
}
