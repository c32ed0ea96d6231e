using System.Text.Json;
using System.Text.Json.Serialization;

namespace ShedBot.Storage.Tests;

/// <summary>
/// Compares records that hold lists, whose own equality looks at the list and not at what is in it: both are written out by
/// System.Text.Json, by reflection and not by the code under test.
/// </summary>
public static class Same
{
    private static readonly JsonSerializerOptions Plain = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    public static string Text<T>(T value) => JsonSerializer.Serialize(value, Plain);

    public static void Assert<T>(T expected, T actual) => Xunit.Assert.Equal(Text(expected), Text(actual));
}
