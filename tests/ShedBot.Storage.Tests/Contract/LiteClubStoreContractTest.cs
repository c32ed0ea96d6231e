using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>The embedded store keeps the contract of clubs, rooms and their rules.</summary>
public sealed class LiteClubStoreContractTest : LearningContract, IDisposable
{
    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    protected override async Task<IShedStore> OpenAsync() => await LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
}
