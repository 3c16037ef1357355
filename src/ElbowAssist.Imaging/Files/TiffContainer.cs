using System.Buffers.Binary;

namespace ElbowAssist.Imaging.Files;

/// <summary>
/// Checks that the first page of a TIFF file is described and that its strips or tiles lie inside the file. Layout and
/// tag numbers: TIFF revision 6.0.
/// </summary>
internal static class TiffContainer
{
    private const string Name = "TIFF";

    public static bool Is(ReadOnlySpan<byte> file) =>
        file.StartsWith<byte>([(byte)'I', (byte)'I', 42, 0]) || file.StartsWith<byte>([(byte)'M', (byte)'M', 0, 42]);

    public static ContainerFacts Inspect(ReadOnlySpan<byte> file)
    {
        var page = TiffDirectory.ReadFirst(file);
        var width = page.Single(256) ?? throw Damage("the width is missing");
        var height = page.Single(257) ?? throw Damage("the height is missing");
        var samples = page.Single(277) ?? 1;
        var depth = page.Single(258) ?? 1;
        if (width == 0 || height == 0)
        {
            throw Damage("a size is zero");
        }

        if (samples is < 1 or > 4 || depth is not (1 or 2 or 4 or 8 or 16) || (page.Single(339) ?? 1) != 1)
        {
            throw DamagedContainerException.Unsupported(Name, "samples other than 8 or 16 bit whole numbers");
        }

        CheckData(page, file.Length, width, height, samples, depth);
        var channels = samples == 1 && page.Single(262) != 3 ? 1 : samples == 3 ? 3 : 4;
        var orientation = page.Single(274) is { } o and >= 1 and <= 8 ? (int)o : 1;
        return new ContainerFacts(FilmFormat.Tiff, width, height, (int)depth, channels, orientation);
    }

    private static void CheckData(TiffDirectory page, long fileLength, long width, long height, long samples, long depth)
    {
        var tiled = page.Has(324);
        var offsets = page.All(tiled ? 324 : 273);
        var counts = page.All(tiled ? 325 : 279);
        var planes = page.Single(284) == 2 ? samples : 1;
        var rows = Math.Min(page.Single(278) ?? height, height);
        var expected = tiled
            ? Pieces(width, page.Single(322)) * Pieces(height, page.Single(323)) * planes
            : Pieces(height, rows) * planes;
        if (offsets.Length < expected || counts.Length < expected)
        {
            throw Damage("the list of image data is incomplete");
        }

        long total = 0;
        for (var i = 0; i < expected; i++)
        {
            if (counts[i] == 0 || offsets[i] + counts[i] > fileLength)
            {
                throw DamagedContainerException.CutOff(Name);
            }

            total += counts[i];
        }

        var uncompressed = (page.Single(259) ?? 1) == 1;
        if (uncompressed && !tiled && total < ((width * samples * depth) + 7) / 8 * height / planes)
        {
            throw Damage("it holds too little image data for its size");
        }
    }

    private static long Pieces(long length, long? piece) => piece is null or 0
        ? throw Damage("the size of a strip or tile is missing")
        : (length + piece.Value - 1) / piece.Value;

    private static DamagedContainerException Damage(string where) => DamagedContainerException.Damaged(Name, where);
}
