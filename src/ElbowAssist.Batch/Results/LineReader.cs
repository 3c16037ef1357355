using ElbowAssist.Geometry;

namespace ElbowAssist.Batch.Results;

/// <summary>The whole lines of a stream from its beginning; what stands after the last line feed is none.</summary>
internal sealed class LineReader(Stream stream) : IDisposable
{
    private readonly MemoryStream line = new();
    private readonly byte[] buffer = new byte[1 << 16];
    private int filled;
    private int read;

    /// <summary>Where the last line that was given ends.</summary>
    public long EndOfLastLine { get; private set; }

    /// <summary>The next line without its line feed, valid until the next call; null at the end.</summary>
    /// <exception cref="InvalidDataException">A line is longer than any result.</exception>
    public ReadOnlyMemory<byte>? Next()
    {
        line.SetLength(0);
        while (true)
        {
            if (read == filled)
            {
                (filled, read) = (stream.Read(buffer), 0);
                if (filled == 0)
                {
                    return null;
                }
            }

            if (line.Length > InputLimits.ResultBytes)
            {
                throw new InvalidDataException("A line has more than 16 MiB.");
            }

            var rest = buffer.AsSpan(read, filled - read);
            var feed = rest.IndexOf((byte)'\n');
            line.Write(feed < 0 ? rest : rest[..feed]);
            read += feed < 0 ? rest.Length : feed + 1;
            if (feed >= 0)
            {
                EndOfLastLine += line.Length + 1;
                return line.GetBuffer().AsMemory(0, (int)line.Length);
            }
        }
    }

    public void Dispose() => line.Dispose();
}
