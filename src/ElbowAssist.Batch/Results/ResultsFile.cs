using System.Security.Cryptography;
using System.Text;

namespace ElbowAssist.Batch.Results;

/// <summary>
/// Results as JSON lines, in the order in which they came. Opened again it goes on where it ended: a line that was cut
/// off is dropped, and what is there is not read again. Thread-safe; one process at a time.
/// </summary>
public sealed class ResultsFile : IDisposable
{
    private readonly Lock gate = new();
    private readonly FileStream file;
    private readonly string path;
    private readonly Recipe recipe;
    private readonly HashSet<UInt128> held = [];
    private readonly int[] ends = new int[3];

    private ResultsFile(FileStream file, string path, Recipe recipe)
    {
        this.file = file;
        this.path = path;
        this.recipe = recipe;
    }

    /// <summary>Opens or creates a file.</summary>
    /// <exception cref="BatchException">It cannot be written, another process has it open, or it holds something else.</exception>
    public static ResultsFile Open(string path, Recipe recipe)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(recipe);
        FileStream? opened = null;
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
            opened = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 0);
            var results = new ResultsFile(opened, path, recipe);
            results.HearWhatIsThere();
            return results;
        }
        catch (BatchException)
        {
            opened?.Dispose();
            throw;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            opened?.Dispose();
            throw new BatchException($"The results cannot be written to {path}; check that the folder may be written, that there is room, and that no other run writes there.", e);
        }
    }

    /// <summary>Number of results.</summary>
    public int Count
    {
        get
        {
            lock (gate)
            {
                return held.Count;
            }
        }
    }

    /// <summary>Number of results that ended so.</summary>
    public int CountOf(FilmEnd end)
    {
        lock (gate)
        {
            return ends[(int)end];
        }
    }

    /// <summary>Whether the film's result is there.</summary>
    public bool Holds(string content, string film)
    {
        lock (gate)
        {
            return held.Contains(Mark(content, film));
        }
    }

    /// <summary>Adds a result, unless it is there.</summary>
    /// <returns>Whether it was added.</returns>
    /// <exception cref="BatchException">There is no room, or the file cannot be written any more; it ends with its last whole line.</exception>
    public bool Add(string content, string film, FilmResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var line = ResultLine.Write(content, recipe, film, result);
        lock (gate)
        {
            var mark = Mark(content, film);
            if (held.Contains(mark))
            {
                return false;
            }

            Append(line);
            held.Add(mark);
            ends[(int)result.End]++;
            return true;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (gate)
        {
            file.Dispose();
        }
    }

    private void Append(byte[] line)
    {
        var end = file.Position;
        try
        {
            file.Write(line);
            file.Flush();
        }
        catch (Exception e) when (IsNoRoom(e))
        {
            throw new BatchException($"The results in {path} cannot be written any further; make room and run the same command again to go on.", CutBack(end) ?? e);
        }
    }

    // A file system's largest file comes as an argument out of range.
    private static bool IsNoRoom(Exception e) => e is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException;

    private Exception? CutBack(long end)
    {
        try
        {
            file.SetLength(end);
            return null;
        }
        catch (Exception e) when (IsNoRoom(e))
        {
            // Half a line stays; the next run drops it.
            return e;
        }
    }

    private void HearWhatIsThere()
    {
        using var lines = new LineReader(file);
        while (NextOf(lines) is { } line)
        {
            var known = ResultLine.Parse(line)
                ?? throw NoResults(null);
            if (known.Recipe != recipe)
            {
                throw new BatchException($"{path} holds results of other models or another version; name another file with --out.");
            }

            if (held.Add(Mark(known.Content, known.Film)))
            {
                ends[(int)known.End]++;
            }
        }

        if (file.Length > lines.EndOfLastLine)
        {
            file.SetLength(lines.EndOfLastLine);
        }

        file.Position = lines.EndOfLastLine;
    }

    private ReadOnlyMemory<byte>? NextOf(LineReader lines)
    {
        try
        {
            return lines.Next();
        }
        catch (InvalidDataException e)
        {
            throw NoResults(e);
        }
    }

    private BatchException NoResults(Exception? e) => new($"{path} holds lines that are no results; name another file with --out.", e);

    private static UInt128 Mark(string content, string film)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(Encoding.UTF8.GetBytes($"{content} {film}"), hash);
        return System.Buffers.Binary.BinaryPrimitives.ReadUInt128BigEndian(hash);
    }
}
