using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>The embedded store keeps the contract.</summary>
public sealed class LiteShedStoreContractTest : RiderContract, IDisposable
{
    private readonly ScratchDirectory scratch = new();

    public override async Task DisposeAsync() => await Store.DisposeAsync();

    public void Dispose() => scratch.Dispose();

    protected override async Task<IShedStore> OpenAsync() => await LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
}
