using System.Text.Json;

namespace ShedBot.Discord.Gateway;

/// <summary>One small file for each shard, replaced whole, readable by its owner only. A file that cannot be read counts as none.</summary>
/// <param name="folder">Made when it is not there.</param>
internal sealed class FileSessionShelf(string folder) : ISessionShelf
{
    public SavedSession? Read(int shard)
    {
        try
        {
            using var file = File.OpenRead(Name(shard));
            var saved = JsonSerializer.Deserialize(file, GatewayJson.Default.SavedSession);
            return saved is { SessionId.Length: > 0, ResumeUrl.IsAbsoluteUri: true, Guilds: not null, Me.IsNone: false } ? saved : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            return null;
        }
    }

    /// <exception cref="IOException">The disk is full, or the folder is not to be written in.</exception>
    public void Write(int shard, SavedSession? session)
    {
        var name = Name(shard);
        if (session is null)
        {
            File.Delete(name);
            return;
        }
        Directory.CreateDirectory(folder);
        var fresh = name + ".new";
        File.Delete(fresh);
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using (var file = new FileStream(fresh, options))
            JsonSerializer.Serialize(file, session, GatewayJson.Default.SavedSession);
        File.Move(fresh, name, overwrite: true);
    }

    private string Name(int shard) => Path.Combine(folder, $"session-{shard}.json");
}
