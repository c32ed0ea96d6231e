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

    /// <summary>The chat will not have us until the operator has changed something: starting again by itself is of no use.</summary>
    public const int ChatRefused = 5;

    /// <summary>The disk failed under the data file. Nothing acknowledged is lost; it is to be started again.</summary>
    public const int StoreStopped = 6;

    /// <summary>Something broke that is not the operator's to mend; it is to be started again.</summary>
    public const int Broke = 7;

    /// <summary>Said by the command 'health' alone: the running service is not well.</summary>
    public const int NotWell = 1;
}
