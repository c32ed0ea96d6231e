using System.Collections.Immutable;
using System.Net;

namespace ShedBot.Discord.Rest;

/// <summary>What came of fetching a file.</summary>
internal enum FetchTrouble
{
    None,

    /// <summary>Its address is none of the platform's: nothing was asked of it.</summary>
    NotOurs,

    TooBig,

    /// <summary>It could not be had.</summary>
    Lost,
}

/// <summary>
/// Fetches the files that members send. The address comes in from outside, so only the platform's own house for files is ever asked, by name, and never
/// another one that it points to; nothing of ours is told there. Sizes that we are told are not believed: reading stops at the limit.
/// </summary>
/// <param name="http">Follows no redirects, unpacks nothing and carries no token.</param>
/// <param name="home">Where the platform keeps files: scheme, host and port must be the same.</param>
internal sealed class FileFetch(HttpClient http, Uri home, TimeProvider time)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private static readonly string[] Folders = ["attachments/", "ephemeral-attachments/"];

    /// <summary>A connection that fetches files; is disposed of by the caller.</summary>
    public static HttpClient Client() => new(
        new SocketsHttpHandler
        {
            PooledConnectionLifetime = TimeSpan.FromMinutes(5),
            ConnectTimeout = TimeSpan.FromSeconds(5),
            AutomaticDecompression = DecompressionMethods.None,
            AllowAutoRedirect = false,
            UseCookies = false,
            // The address holds a signature.
            ActivityHeadersPropagator = null,
        },
        disposeHandler: true)
    {
        Timeout = Timeout.InfiniteTimeSpan,
    };

    /// <param name="most">Bytes; more is <see cref="FetchTrouble.TooBig"/>.</param>
    /// <param name="told">The size that we are told; null: none.</param>
    public async Task<(ImmutableArray<byte> Bytes, FetchTrouble Trouble)> GetAsync(string? address, long? told, int most, CancellationToken ct)
    {
        if (!Uri.TryCreate(address, UriKind.Absolute, out var uri) || !IsOurs(uri)) return ([], FetchTrouble.NotOurs);
        if (told > most) return ([], FetchTrouble.TooBig);
        using var late = new CancellationTokenSource(Patience, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(ct, late.Token);
        try
        {
            using var response = await http.GetAsync(uri, HttpCompletionOption.ResponseHeadersRead, either.Token);
            if (response.StatusCode != HttpStatusCode.OK) return ([], FetchTrouble.Lost);
            if (response.Content.Headers.ContentLength > most) return ([], FetchTrouble.TooBig);
            await using var stream = await response.Content.ReadAsStreamAsync(either.Token);
            var room = new byte[most + 1];
            var read = await stream.ReadAtLeastAsync(room, room.Length, throwOnEndOfStream: false, either.Token);
            return read > most ? ([], FetchTrouble.TooBig) : ([.. room.AsSpan(0, read)], FetchTrouble.None);
        }
        catch (Exception e) when (!ct.IsCancellationRequested && e is HttpRequestException or IOException or OperationCanceledException)
        {
            return ([], FetchTrouble.Lost);
        }
    }

    private bool IsOurs(Uri uri) =>
        uri.Scheme == home.Scheme && string.Equals(uri.IdnHost, home.IdnHost, StringComparison.OrdinalIgnoreCase) && uri.Port == home.Port && uri.UserInfo.Length == 0
        && Folders.Any(f => uri.AbsolutePath.StartsWith(home.AbsolutePath + f, StringComparison.Ordinal));
}
