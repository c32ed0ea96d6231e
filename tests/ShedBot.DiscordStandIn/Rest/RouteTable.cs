namespace ShedBot.DiscordStandIn.Rest;

/// <summary>One route: method, template, and who answers. Routes of one bucket share their limit.</summary>
internal sealed record Route(string Method, string Template, string Bucket, Func<RestCall, Reply> Handle)
{
    public string[] Segments { get; } = Template.Split('/');

    public string Name => $"{Method} {Template}";

    /// <summary>Interaction routes need no token and are under no global limit.</summary>
    public bool OfInteraction => Template.StartsWith("/interactions/", StringComparison.Ordinal) || Template.StartsWith("/webhooks/", StringComparison.Ordinal);

    public bool Open => OfInteraction || Template == "/gateway";
}

/// <summary>All routes, and finding one.</summary>
internal sealed class RouteTable
{
    private readonly List<Route> routes = [];

    public void Add(string method, string template, Func<RestCall, Reply> handle, string? bucket = null) =>
        routes.Add(new Route(method, template, bucket ?? $"{method} {template}", handle));

    /// <summary>The route of a path without the version, and the values in the path. A written-out segment goes before a value.</summary>
    public (Route Route, Dictionary<string, string> Values)? Find(string method, string path)
    {
        var segments = path.TrimEnd('/').Split('/');
        Route? best = null;
        foreach (var route in routes)
        {
            if (route.Method == method && Fits(route.Segments, segments) && (best is null || Literals(route) > Literals(best)))
                best = route;
        }
        if (best is null)
            return null;
        var values = new Dictionary<string, string>();
        for (var i = 0; i < segments.Length; i++)
        {
            if (best.Segments[i].StartsWith('{'))
                values[best.Segments[i].Trim('{', '}')] = segments[i];
        }
        return (best, values);
    }

    private static bool Fits(string[] template, string[] path) =>
        template.Length == path.Length && template.Zip(path).All(p => p.First.StartsWith('{') ? p.Second.Length > 0 : p.First == p.Second);

    private static int Literals(Route route) => route.Segments.Count(s => !s.StartsWith('{'));
}
