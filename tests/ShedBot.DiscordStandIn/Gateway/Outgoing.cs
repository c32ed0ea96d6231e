namespace ShedBot.DiscordStandIn.Gateway;

/// <summary>Something for a socket's writer to do, in turn.</summary>
internal abstract record Outgoing
{
    /// <summary>One message.</summary>
    public sealed record Text(byte[] Json) : Outgoing;

    /// <summary>Many frames, all encoded before the first is written. <paramref name="Starting"/> gets the timestamp just before the write.</summary>
    public sealed record Many(Action<Packing, Stream> Encode, TaskCompletionSource<(long At, long Bytes)> Starting) : Outgoing;

    /// <summary>Close with a code, then stop.</summary>
    public sealed record Close(int Code, string Why) : Outgoing;

    /// <summary>Cut the link without a word.</summary>
    public sealed record Drop : Outgoing;

    /// <summary>Write the head and the first half of a message, then cut the link.</summary>
    public sealed record HalfThenDrop(byte[] Json) : Outgoing;
}
