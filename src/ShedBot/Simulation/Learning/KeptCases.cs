using System.Globalization;
using System.Text;
using System.Text.Json;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Simulation.Learning;

/// <summary>The cases of one simulated club in a file of its own, a line each: they take long to ride, and are the same each time.</summary>
internal sealed class KeptCases(StudyPlan plan, string version, int seed)
{
    private readonly string? path = plan.Keep is null ? null : Path.Combine(plan.Keep, string.Create(
        CultureInfo.InvariantCulture,
        $"{version}-{seed}-{Math.Exp(plan.Spread.Spread):0.##}-{plan.Spread.LinksMoved}-{plan.Habits.WrongOutcomes}-{plan.Habits.Hostile}-{plan.Habits.Members}.jsonl"));

    /// <summary>In order; null for one that never came to an end.</summary>
    /// <exception cref="InvalidDataException">The file holds something else; the message says where.</exception>
    public List<ClosedCase?> Read() => path is null || !File.Exists(path) ? [] : [.. File.ReadLines(path).Select(Read)];

    public void Add(IEnumerable<ClosedCase?> cases)
    {
        if (path is null) return;
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.AppendAllLines(path, cases.Select(Line));
    }

    private static string Line(ClosedCase? closed)
    {
        var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartArray();
            if (closed is not null) Write(json, closed);
            json.WriteEndArray();
        }

        return Encoding.UTF8.GetString(buffer.GetBuffer(), 0, (int)buffer.Length);
    }

    private static void Write(Utf8JsonWriter json, ClosedCase closed)
    {
        Values(json, closed.Case.Id.Value, closed.Case.Member.Value, $"{closed.Outcome.Phase}", closed.Outcome.Repair, $"{closed.Outcome.At:O}");
        json.WriteStartArray();
        foreach (var e in closed.Case.Entries)
        {
            json.WriteStartArray();
            Values(json, $"{e.Kind}", e.Subject, e.Value, e.Score.ToString("R", CultureInfo.InvariantCulture), e.Struck ? "struck" : null);
            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteStartArray();
        foreach (var (fact, known) in closed.Bike?.Facts ?? BikeProfile.New(default, default).Facts)
        {
            json.WriteStartArray();
            Values(json, fact, known.Value, known.How);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void Values(Utf8JsonWriter json, params ReadOnlySpan<string?> values)
    {
        foreach (var value in values) json.WriteStringValue(value);
    }

    private ClosedCase? Read(string line, int at)
    {
        try
        {
            return Parse(line);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or FormatException or ArgumentException or IndexOutOfRangeException)
        {
            throw new InvalidDataException($"{path}, line {at + 1}: this is no kept case, or half of one. Move the file away and run again; its cases are then ridden anew.", e);
        }
    }

    private ClosedCase? Parse(string line)
    {
        using var json = JsonDocument.Parse(line);
        if (json.RootElement.GetArrayLength() == 0) return null;
        var values = json.RootElement.EnumerateArray().ToArray();
        var (id, who) = (new CaseId(values[0].GetString()!), new MemberId(values[1].GetString()!));
        var (phase, at) = (Enum.Parse<CasePhase>(values[2].GetString()!), DateTimeOffset.Parse(values[4].GetString()!, CultureInfo.InvariantCulture));
        var bike = BikeProfile.New(BikeId.Of(who), who);
        bike = bike with { Facts = bike.Facts.AddRange(values[6].EnumerateArray().Select(f => KeyValuePair.Create(f[0].GetString()!, new BikeFact(f[1].GetString()!, at, f[2].GetString()!)))) };
        var entries = values[5].EnumerateArray().Select((e, line) => new CaseEntry(
            line + 1, Enum.Parse<EntryKind>(e[0].GetString()!), e[1].GetString()!, e[2].GetString(), double.Parse(e[3].GetString()!, CultureInfo.InvariantCulture), at, e[4].GetString() is not null));
        var closed = ShedBot.Coaching.Cases.Case.New(id, who, bike.Id, "simulated", at) with { Phase = phase, Entries = [.. entries], ClosedAt = at };
        return new ClosedCase(closed, bike, new Outcome(id, phase, values[3].GetString(), [], 0, version, at));
    }
}
