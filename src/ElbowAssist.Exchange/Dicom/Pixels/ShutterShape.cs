using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>One shape of a display shutter. Rows and columns count from 1; the named edges are part of the film.</summary>
internal abstract class ShutterShape
{
    /// <summary>The shape of a defined term, or null if unknown or incomplete.</summary>
    public static ShutterShape? Of(string term, DicomDataset film)
    {
        switch (term)
        {
            case "RECTANGULAR" when film.Integer(Tag.ShutterLeftVerticalEdge) is { } left &&
                film.Integer(Tag.ShutterRightVerticalEdge) is { } right &&
                film.Integer(Tag.ShutterUpperHorizontalEdge) is { } upper &&
                film.Integer(Tag.ShutterLowerHorizontalEdge) is { } lower && left <= right && upper <= lower:
                return new Rectangle(left, right, upper, lower);
            case "CIRCULAR" when film.Numbers(Tag.CenterOfCircularShutter) is [var row, var column] &&
                film.Number(Tag.RadiusOfCircularShutter) is { } radius and > 0:
                return new Disc(row, column, radius);
            case "POLYGONAL" when film.Numbers(Tag.VerticesOfThePolygonalShutter) is { Count: >= 6 and <= 2000 } v && v.Count % 2 == 0:
                return new Polygon([.. v]);
            default:
                return null;
        }
    }

    /// <summary>Marks every pixel outside the shape.</summary>
    public void Cover(bool[] excluded, int width, int height)
    {
        var open = new bool[width];
        for (var row = 1; row <= height; row++)
        {
            Array.Clear(open);
            Open(row, open);
            for (var x = 0; x < width; x++)
            {
                excluded[((row - 1) * width) + x] |= !open[x];
            }
        }
    }

    /// <summary>Sets the columns of a row that lie inside.</summary>
    protected abstract void Open(int row, bool[] open);

    private static void Fill(bool[] open, double first, double last)
    {
        var from = (int)Math.Clamp(Math.Ceiling(first), 1, open.Length + 1);
        var to = (int)Math.Clamp(Math.Floor(last), 0, open.Length);
        for (var column = from; column <= to; column++)
        {
            open[column - 1] = true;
        }
    }

    private sealed class Rectangle(int left, int right, int upper, int lower) : ShutterShape
    {
        protected override void Open(int row, bool[] open)
        {
            if (row >= upper && row <= lower)
            {
                Fill(open, left, right);
            }
        }
    }

    private sealed class Disc(double centreRow, double centreColumn, double radius) : ShutterShape
    {
        protected override void Open(int row, bool[] open)
        {
            var half = (radius * radius) - ((row - centreRow) * (row - centreRow));
            if (half >= 0)
            {
                Fill(open, centreColumn - Math.Sqrt(half), centreColumn + Math.Sqrt(half));
            }
        }
    }

    /// <summary>Vertices as row, column, row, column …; inside by the even-odd rule.</summary>
    private sealed class Polygon(double[] vertices) : ShutterShape
    {
        protected override void Open(int row, bool[] open)
        {
            var crossings = new List<double>();
            for (var i = 0; i < vertices.Length; i += 2)
            {
                var j = (i + 2) % vertices.Length;
                var (r0, c0, r1, c1) = (vertices[i], vertices[i + 1], vertices[j], vertices[j + 1]);
                if (r0 <= row != r1 <= row)
                {
                    crossings.Add(c0 + ((row - r0) / (r1 - r0) * (c1 - c0)));
                }
            }

            crossings.Sort();
            for (var i = 0; i + 1 < crossings.Count; i += 2)
            {
                Fill(open, crossings[i], crossings[i + 1]);
            }
        }
    }
}
