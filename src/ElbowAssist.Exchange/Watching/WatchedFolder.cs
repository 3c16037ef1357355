using System.Runtime.CompilerServices;

namespace ElbowAssist.Exchange.Watching;

/// <summary>
/// A folder into which a receiver writes files. A file is handed on once, when it has stopped changing: size and time of
/// change alike at two looks in a row, and nobody holding it open for writing where the system can tell. Looking again
/// and again is slower than file events but misses nothing and works on network shares.
/// </summary>
public sealed class WatchedFolder
{
    private readonly string folder;
    private readonly TimeSpan pause;
    private readonly TimeProvider time;
    private readonly Func<string, bool> isWanted;
    private readonly Dictionary<string, Seen> looks = new(StringComparer.Ordinal);

    /// <summary>Watches one folder, without the folders in it.</summary>
    /// <param name="folder">The folder; it must exist.</param>
    /// <param name="isWanted">Whether a file, given by its full path, is one to hand on; asked by name before it is opened.</param>
    /// <param name="pause">Time between looks; null for two seconds.</param>
    /// <param name="time">Clock; null for the system's.</param>
    public WatchedFolder(string folder, Func<string, bool> isWanted, TimeSpan? pause = null, TimeProvider? time = null)
    {
        this.folder = folder;
        this.isWanted = isWanted;
        this.pause = pause ?? TimeSpan.FromSeconds(2);
        this.time = time ?? TimeProvider.System;
    }

    /// <summary>Complete files in the order in which they became complete, until cancelled.</summary>
    /// <exception cref="DirectoryNotFoundException">The folder is not there.</exception>
    public async IAsyncEnumerable<string> CompleteFilesAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        while (!cancellation.IsCancellationRequested)
        {
            foreach (var file in Look())
            {
                yield return file;
            }

            try
            {
                await Task.Delay(pause, time, cancellation).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                yield break;
            }
        }
    }

    /// <summary>One look at the folder: files complete since the last one. A file that changes later is handed on again.</summary>
    /// <exception cref="DirectoryNotFoundException">The folder is not there.</exception>
    public IReadOnlyList<string> Look()
    {
        var present = new DirectoryInfo(folder).EnumerateFiles()
            .Where(f => !f.Name.StartsWith('.') && isWanted(f.FullName))
            .OrderBy(f => f.Name, StringComparer.Ordinal)
            .ToList();
        foreach (var gone in looks.Keys.Except(present.Select(f => f.FullName)).ToList())
        {
            looks.Remove(gone);
        }

        var complete = new List<string>();
        foreach (var file in present)
        {
            if (StateOf(file) is not { } now)
            {
                continue;
            }

            var known = looks.TryGetValue(file.FullName, out var before);
            if (!known || before!.Length != now.Length || before.Changed != now.Changed)
            {
                looks[file.FullName] = now;
            }
            else if (!before.HandedOn && IsReleased(file.FullName))
            {
                looks[file.FullName] = before with { HandedOn = true };
                complete.Add(file.FullName);
            }
        }

        return complete;
    }

    private sealed record Seen(long Length, DateTime Changed, bool HandedOn);

    private static Seen? StateOf(FileInfo file)
    {
        try
        {
            file.Refresh();
            return file is { Exists: true, Length: > 0 } ? new(file.Length, file.LastWriteTimeUtc, false) : null;
        }
        catch (IOException)
        {
            return null; // gone between listing and looking
        }
    }

    private static bool IsReleased(string path)
    {
        try
        {
            using var opened = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
