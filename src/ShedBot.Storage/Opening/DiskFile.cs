using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace ShedBot.Storage.Opening;

/// <summary>Gets files onto the disk, past the memory of the system.</summary>
internal static class DiskFile
{
    public static void Flush(string path)
    {
        using var handle = File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        RandomAccess.FlushToDisk(handle);
    }

    /// <summary>Makes a new name in a directory last. On Linux a file can be safe while its name is not; on Windows the file system sees to it.</summary>
    public static void FlushDirectory(string directory)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var descriptor = Native.Open(directory, flags: 0);
        if (descriptor < 0)
        {
            throw new IOException($"{directory} cannot be opened to be flushed (error {Marshal.GetLastPInvokeError()}).");
        }

        using var handle = new SafeFileHandle(descriptor, ownsHandle: true);
        if (Native.Sync(descriptor) != 0)
        {
            throw new IOException($"{directory} cannot be flushed to the disk (error {Marshal.GetLastPInvokeError()}).");
        }
    }

    /// <summary>Copies a file that is not being written to, all the way to the disk, under a name that must be free.</summary>
    public static void Copy(string from, string to)
    {
        using (var source = new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.ReadWrite))
        using (var target = new FileStream(to, FileMode.CreateNew, FileAccess.Write, FileShare.None))
        {
            source.CopyTo(target);
            target.Flush(flushToDisk: true);
        }

        FlushDirectory(Path.GetDirectoryName(to)!);
    }

    private static class Native
    {
        // POSIX open(2) and fsync(2): .NET refuses to open a directory.
        [DllImport("libc", EntryPoint = "open", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

        [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Sync(int descriptor);
    }
}
