using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching;

/// <summary>Changes of rules as JSON text, in which a proposal keeps them. Same changes, same text.</summary>
public static class ChangesText
{
    // Letters beyond ASCII stay readable: the text is kept in a file and is never put into a page.
    private static readonly ChangesContext Context = new(new JsonSerializerOptions(ChangesContext.Default.Options)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    public static string Write(ImmutableArray<RuleChange> changes) =>
        JsonSerializer.Serialize([.. changes.Select(Line)], Context.ImmutableArrayChangeLine);

    /// <exception cref="JsonException">The text holds no changes, or a kind of change that is not known here.</exception>
    public static ImmutableArray<RuleChange> Read(string json) =>
        json.Length == 0 ? [] : [.. JsonSerializer.Deserialize(json, Context.ImmutableArrayChangeLine).Select(Change)];

    /// <summary>A short name of exactly these changes.</summary>
    public static string Mark(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..16];

    private static ChangeLine Line(RuleChange change)
    {
        var rule = change.Key.ToString();
        return change switch
        {
            PutRule put => new ChangeLine("put", rule) { Yaml = put.Yaml, InsteadOf = put.InsteadOf },
            DropRule => new ChangeLine("drop", rule),
            MendValue mend => new ChangeLine("mend", rule) { Path = mend.Path.Text, Was = mend.Was, Now = mend.Now, Credit = mend.Credit },
            MendList mend => new ChangeLine("list", rule) { Path = mend.Path.Text, Add = mend.Add, Take = mend.Drop, Credit = mend.Credit },
            Unmend unmend => new ChangeLine("unmend", rule) { Path = unmend.Path.Text, Add = unmend.Add, Take = unmend.Drop },
            Retire retire => new ChangeLine("retire", rule) { Because = retire.Because, Credit = retire.Credit },
            Restore => new ChangeLine("restore", rule),
            _ => throw new ArgumentOutOfRangeException(nameof(change), change, "There is no such change."),
        };
    }

    private static RuleChange Change(ChangeLine line)
    {
        if (!RuleKey.TryRead(line.Rule, out var key)) throw new JsonException($"'{line.Rule}' names no rule.");
        var path = new RulePath(line.Path ?? "");
        return line.Kind switch
        {
            "put" => new PutRule(key, line.Yaml ?? "", line.InsteadOf),
            "drop" => new DropRule(key),
            "mend" => new MendValue(key, path, line.Was, line.Now ?? "", Credited(line)),
            "list" => new MendList(key, path, line.Add, line.Take, Credited(line)),
            "unmend" => new Unmend(key, path, line.Add, line.Take),
            "retire" => new Retire(key, line.Because ?? "", Credited(line)),
            "restore" => new Restore(key),
            _ => throw new JsonException($"'{line.Kind}' is no kind of change."),
        };
    }

    private static Credit Credited(ChangeLine line) => line.Credit ?? throw new JsonException("A change has nobody's word behind it.");
}

/// <summary>One change as it is written.</summary>
/// <param name="Kind">put, drop, mend, list, unmend, retire or restore: never renamed, because proposals are kept with them.</param>
internal sealed record ChangeLine(string Kind, string Rule)
{
    public string? Yaml { get; init; }

    public string? InsteadOf { get; init; }

    public string? Path { get; init; }

    public string? Was { get; init; }

    public string? Now { get; init; }

    public string? Add { get; init; }

    public string? Take { get; init; }

    public string? Because { get; init; }

    public Credit? Credit { get; init; }
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(ImmutableArray<ChangeLine>))]
internal sealed partial class ChangesContext : JsonSerializerContext;
