using System.Net;

namespace ShedBot.Discord.Rest;

/// <summary>The connection to the platform's HTTP side.</summary>
internal static class RestClient
{
    // The longest that we ask for is a page of a hundred messages.
    private const int MaxAnswerBytes = 16 * 1024 * 1024;

    /// <summary>Connections that follow a change of address within five minutes and stay warm for the three seconds of an answer.</summary>
    public static SocketsHttpHandler Handler() => new()
    {
        PooledConnectionLifetime = TimeSpan.FromMinutes(5),
        PooledConnectionIdleTimeout = TimeSpan.FromMinutes(5),
        ConnectTimeout = TimeSpan.FromSeconds(5),
        AutomaticDecompression = DecompressionMethods.All,
        AllowAutoRedirect = false,
        UseCookies = false,

        // Traces hold whole paths, and a path may hold an interaction's token.
        ActivityHeadersPropagator = null,
    };

    /// <param name="handler">Is disposed of with the client.</param>
    public static HttpClient Create(RestOptions options, HttpMessageHandler handler)
    {
        if (!options.BaseAddress.AbsolutePath.EndsWith('/'))
            throw new ArgumentException("The base address must end with a slash.", nameof(options));
        var client = new HttpClient(handler)
        {
            BaseAddress = options.BaseAddress,
            Timeout = Timeout.InfiniteTimeSpan,
            MaxResponseContentBufferSize = MaxAnswerBytes,
        };
        client.DefaultRequestHeaders.UserAgent.ParseAdd($"DiscordBot ({options.AppUrl}, {options.AppVersion})");
        return client;
    }
}
