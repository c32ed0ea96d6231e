using System.Text.Json;

namespace ShedBot.Serving.Health;

/// <summary>The file in which the service tells how it is. It is replaced whole, so that nobody ever reads half of it.</summary>
internal sealed class HealthFile(string path)
{
    public string Path => path;

    /// <exception cref="IOException">The disk is full, or the folder is not there.</exception>
    public void Write(HealthReport report)
    {
        var fresh = path + ".new";
        File.WriteAllBytes(fresh, JsonSerializer.SerializeToUtf8Bytes(report, HealthJson.Default.HealthReport));
        File.Move(fresh, path, overwrite: true);
    }

    /// <summary>A service that has ended is not well.</summary>
    public void Remove() => File.Delete(path);

    /// <returns>Null when there is none, or none that can be read.</returns>
    public HealthReport? Read()
    {
        try
        {
            return JsonSerializer.Deserialize(File.ReadAllBytes(path), HealthJson.Default.HealthReport);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            return null;
        }
    }
}
