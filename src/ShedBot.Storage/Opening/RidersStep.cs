namespace ShedBot.Storage.Opening;

/// <summary>Layout 3 to 4: members' wishes about reminders are kept, in a collection of their own. What was kept before stays as it is.</summary>
internal static class RidersStep
{
    public static SchemaStep ToFour { get; } = new("Who wants to be reminded, and what they were told", (_, document) => document);
}
