using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Rendering;

/// <summary>
/// The limb without its bones on every few pixels of a film. Between them it changes slowly, except at the skin and
/// along the edge of a cast, where every ray is walked.
/// </summary>
internal sealed class LimbGrid
{
    /// <summary>Widest spacing of walked rays, millimetres.</summary>
    private const float WidestMm = 1.3f;

    /// <summary>
    /// Largest differences of the limb, of its share of fat and of the cast between neighbours that are filled in,
    /// millimetres. Fat for muscle hardly changes what an X-ray sees.
    /// </summary>
    private const float LimbMm = 3f, FatMm = 3f, CastMm = 0.6f;

    private readonly LimbPath[] nodes;
    private readonly int columns;
    private readonly int step;

    private LimbGrid(LimbPath[] nodes, int columns, int step) => (this.nodes, this.columns, this.step) = (nodes, columns, step);

    /// <summary>Walks the rays of the grid.</summary>
    public static LimbGrid Of(ElbowGeometry[] shared, int width, int height)
    {
        var pixelMm = shared[0].Camera.StepX.Length;
        var apart = 4 * pixelMm <= WidestMm ? 4 : 2 * pixelMm <= WidestMm ? 2 : 1;
        int across = ((width - 1) / apart) + 2, down = ((height - 1) / apart) + 2;
        var walked = new LimbPath[across * down];
        Parallel.For(0, down, j =>
        {
            for (var i = 0; i < across; i++)
            {
                walked[(j * across) + i] = RayIntegrator.Limb(in shared[0], (i * apart) + 0.5f, (j * apart) + 0.5f);
            }
        });
        return new LimbGrid(walked, across, apart);
    }

    /// <summary>Rows from one row of the grid to the next.</summary>
    public int BandHeight => step;

    /// <summary>The limb at every pixel of the rows that begin at a row of the grid.</summary>
    /// <param name="g">What the rays walk through.</param>
    /// <param name="band">Row of the grid.</param>
    /// <param name="pixels">Rows of pixels to fill, each as wide as the film rounded up to whole cells.</param>
    public void Fill(in ElbowGeometry g, int band, LimbPath[] pixels)
    {
        var cells = columns - 1;
        var first = band * columns;
        for (var i = 0; i < cells; i++)
        {
            var cell = new Cell(i * step, 0, step, nodes[first + i], nodes[first + i + 1], nodes[first + columns + i], nodes[first + columns + i + 1]);
            Fill(in g, in cell, band * step, Stride, pixels);
        }
    }

    /// <summary>Pixels that a row of <see cref="Fill(in ElbowGeometry, int, LimbPath[])"/> holds.</summary>
    public int Stride => (columns - 1) * step;

    private static void Fill(in ElbowGeometry g, in Cell cell, int top, int stride, LimbPath[] pixels)
    {
        if (cell.Size == 1)
        {
            pixels[(cell.Y * stride) + cell.X] = cell.A;
        }
        else if (Smooth(cell.A, cell.B, cell.C, cell.D))
        {
            var share = 1f / cell.Size;
            for (var y = 0; y < cell.Size; y++)
            {
                var left = Between(cell.A, cell.C, y * share);
                var right = Between(cell.B, cell.D, y * share);
                for (var x = 0; x < cell.Size; x++)
                {
                    pixels[((cell.Y + y) * stride) + cell.X + x] = Between(in left, in right, x * share);
                }
            }
        }
        else
        {
            Split(in g, in cell, top, stride, pixels);
        }
    }

    private static void Split(in ElbowGeometry g, in Cell cell, int top, int stride, LimbPath[] pixels)
    {
        var half = cell.Size / 2;
        float x = cell.X + 0.5f, y = top + cell.Y + 0.5f;
        var above = RayIntegrator.Limb(in g, x + half, y);
        var left = RayIntegrator.Limb(in g, x, y + half);
        var middle = RayIntegrator.Limb(in g, x + half, y + half);
        if (half == 1)
        {
            var at = (cell.Y * stride) + cell.X;
            (pixels[at], pixels[at + 1], pixels[at + stride], pixels[at + stride + 1]) = (cell.A, above, left, middle);
            return;
        }

        var right = RayIntegrator.Limb(in g, x + cell.Size, y + half);
        var below = RayIntegrator.Limb(in g, x + half, y + cell.Size);
        Fill(in g, new Cell(cell.X, cell.Y, half, cell.A, above, left, middle), top, stride, pixels);
        Fill(in g, new Cell(cell.X + half, cell.Y, half, above, cell.B, middle, right), top, stride, pixels);
        Fill(in g, new Cell(cell.X, cell.Y + half, half, left, middle, cell.C, below), top, stride, pixels);
        Fill(in g, new Cell(cell.X + half, cell.Y + half, half, middle, right, below, cell.D), top, stride, pixels);
    }

    /// <summary>A square of pixels in a band with the limb at its corners: A and B above, C and D one size below.</summary>
    private readonly record struct Cell(int X, int Y, int Size, LimbPath A, LimbPath B, LimbPath C, LimbPath D);

    private static bool Smooth(in LimbPath a, in LimbPath b, in LimbPath c, in LimbPath d)
    {
        var hits = (a.To > a.From ? 1 : 0) + (b.To > b.From ? 1 : 0) + (c.To > c.From ? 1 : 0) + (d.To > d.From ? 1 : 0);
        return hits is 0 or 4
            && Spread(a.Soft + a.Fat, b.Soft + b.Fat, c.Soft + c.Fat, d.Soft + d.Fat) < LimbMm
            && Spread(a.Fat, b.Fat, c.Fat, d.Fat) < FatMm
            && Spread(a.Cast, b.Cast, c.Cast, d.Cast) < CastMm;
    }

    private static float Spread(float a, float b, float c, float d) =>
        MathF.Max(MathF.Max(a, b), MathF.Max(c, d)) - MathF.Min(MathF.Min(a, b), MathF.Min(c, d));

    private static LimbPath Between(in LimbPath a, in LimbPath b, float share) => new()
    {
        Soft = Distance.Mix(a.Soft, b.Soft, share),
        Fat = Distance.Mix(a.Fat, b.Fat, share),
        Cast = Distance.Mix(a.Cast, b.Cast, share),
        From = Distance.Mix(a.From, b.From, share),
        To = Distance.Mix(a.To, b.To, share),
    };
}
