using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Control;

/// <summary>Drives the stand-in from scripts of any language: JSON in, JSON out, under <c>/control/</c>. No token; it listens on loopback only.</summary>
internal sealed class ControlServer(StandIn standIn)
{
    private static readonly JsonSerializerOptions Json = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    public async Task ServeAsync(HttpContext context, string command)
    {
        try
        {
            var said = await SaidAsync(context).ConfigureAwait(false);
            var result = await new ControlCommands(standIn, said).RunAsync(context.Request.Method, command).ConfigureAwait(false);
            context.Response.StatusCode = result is null ? 404 : 200;
            await context.Response.WriteAsJsonAsync(result ?? new { error = $"no such control: {context.Request.Method} {command}" }, Json).ConfigureAwait(false);
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or JsonException or TimeoutException or FormatException or Refusal)
        {
            context.Response.StatusCode = 400;
            await context.Response.WriteAsJsonAsync(new { error = e.Message }, Json).ConfigureAwait(false);
        }
    }

    /// <summary>The body, with the query's values put in where the body has none.</summary>
    private static async Task<Said> SaidAsync(HttpContext context)
    {
        using var reader = new StreamReader(context.Request.Body);
        var text = await reader.ReadToEndAsync(context.RequestAborted).ConfigureAwait(false);
        var body = text.Length == 0 ? [] : (JsonObject)JsonNode.Parse(text)!;
        foreach (var (name, value) in context.Request.Query)
        {
            if (!body.ContainsKey(name))
                body[name] = value.ToString();
        }
        return new Said(body);
    }
}
