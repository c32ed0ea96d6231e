namespace ShedBot.Storage;

/// <summary>The disk failed under the store, so it takes no more saves until the program is started again. Everything acknowledged before is kept.</summary>
public sealed class StoreStoppedException(Exception cause)
    : IOException($"The store takes no more saves, because the disk failed: {cause.Message} Look at the disk (is it full?), then start again.", cause);
