using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Testing.DrawnElbows;

/// <summary>
/// A schematic film of a drawn elbow: bones as even shadows with a denser edge, in soft tissue. Enough to see where the
/// lines lie; it shows no fracture line.
/// </summary>
public static class DrawnFilm
{
    private const int Columns = DrawnElbow.Columns;
    private const int Rows = DrawnElbow.Rows;

    /// <summary>Grey values by rows, 0 to 255, bone bright.</summary>
    public static byte[] Pixels(DrawnElbow elbow, View view)
    {
        ArgumentNullException.ThrowIfNull(elbow);
        var p = view == View.Lateral ? elbow.Lateral() : elbow.Ap();
        var bones = view == View.Lateral ? LateralBones(elbow, p) : ApBones(elbow, p);
        var soft = view == View.Lateral ? 1.1 * elbow.W : 1.3 * elbow.W;
        var pixels = new byte[Columns * Rows];
        for (var y = 0; y < Rows; y++)
        {
            for (var x = 0; x < Columns; x++)
            {
                pixels[(y * Columns) + x] = Grey(new(x + 0.5, y + 0.5), bones, soft);
            }
        }

        return pixels;
    }

    private static byte Grey(Point at, IReadOnlyList<Point[]> bones, double soft)
    {
        var grey = 0.0;
        var nearest = double.MaxValue;
        foreach (var bone in bones)
        {
            var (inside, distance) = Against(bone, at);
            nearest = Math.Min(nearest, inside ? 0 : distance);
            if (inside)
            {
                grey += 62 * Math.Min(1, distance / 3) + (46 * Math.Exp(-Math.Pow((distance - 6) / 6, 2)));
            }
        }

        grey += nearest < soft ? 16 + (38 * Math.Sqrt(1 - (nearest / soft))) : 16;
        return (byte)Math.Clamp(grey, 0, 235);
    }

    private static (bool Inside, double Distance) Against(Point[] outline, Point at)
    {
        var inside = false;
        var best = double.MaxValue;
        for (int i = 0, j = outline.Length - 1; i < outline.Length; j = i++)
        {
            var (a, b) = (outline[i], outline[j]);
            if (a.Y > at.Y != b.Y > at.Y && at.X < ((b.X - a.X) * (at.Y - a.Y) / (b.Y - a.Y)) + a.X)
            {
                inside = !inside;
            }

            var edge = b - a;
            var s = Math.Clamp((at - a).Dot(edge) / Math.Max(1e-9, edge.Dot(edge)), 0, 1);
            best = Math.Min(best, at.DistanceTo(a + (edge * s)));
        }

        return (inside, best);
    }

    private static List<Point[]> LateralBones(DrawnElbow e, IReadOnlyDictionary<string, Point> p)
    {
        var back = e.Mirrored ? -1 : 1;
        var roof = p[HumerusFossaRoof];
        List<Point[]> bones =
        [
            [Up(p[HumerusAnterior(1)], e), p[HumerusAnterior(5)], new(roof.X - (back * 0.48 * e.W), roof.Y + (0.55 * e.W)), new(roof.X, roof.Y + (0.75 * e.W)),
                new(roof.X + (back * 0.42 * e.W), roof.Y + (0.5 * e.W)), p[HumerusPosterior(5)], Up(p[HumerusPosterior(1)], e)],
            Round(p, e),
            Radius(p[RadiusHeadAnterior], p[RadiusHeadPosterior], Enumerable.Range(1, 4).Select(i => p[RadiusAnterior(i)]), Enumerable.Range(1, 4).Select(i => p[RadiusPosterior(i)])),
            [p[UlnaCoronoid], p[UlnaNotch(1)], p[UlnaNotch(2)], p[UlnaNotch(3)], p[UlnaNotch(4)], p[UlnaOlecranon], Beside(p[UlnaOlecranon], p[UlnaNotch(3)], 0.6 * e.W),
                p[UlnaPosterior(1)], p[UlnaPosterior(3)], Inward(p[UlnaPosterior(3)], p, e), Inward(p[UlnaPosterior(1)], p, e)],
        ];
        return bones;
    }

    private static Point[] Round(IReadOnlyDictionary<string, Point> p, DrawnElbow e)
    {
        var centre = e.Growing ? Point.Midpoint(p[CapitellumRim(1)], p[CapitellumRim(7)]) : new Point(p[CapitellumRim(1)].X, p[CapitellumRim(4)].Y);
        return [.. Enumerable.Range(0, 48).Select(i => new Point(
            centre.X + (e.Capitellum * Math.Cos(i * Math.PI / 24)), centre.Y + (e.Capitellum * Math.Sin(i * Math.PI / 24))))];
    }

    private static List<Point[]> ApBones(DrawnElbow e, IReadOnlyDictionary<string, Point> p)
    {
        var (lateral, medial) = (p[HumerusEpicondyleLateral], p[HumerusEpicondyleMedial]);
        var down = 0.55 * e.W;
        List<Point> humerus = [Up(p[HumerusLateral(1)], e), p[HumerusLateral(4)], lateral];
        if (e.Growing)
        {
            humerus.AddRange([p[CapitellumPhysisLateral], p[CapitellumPhysisMedial]]);
        }
        else
        {
            humerus.AddRange([p[CapitellumEdgeLateral], p[CapitellumDistal], p[CapitellumEdgeMedial], p[TrochleaEdgeMedial]]);
        }

        humerus.AddRange([new(medial.X, medial.Y + down - (0.2 * e.W)), medial, p[HumerusMedial(4)], Up(p[HumerusMedial(1)], e)]);
        List<Point[]> bones =
        [
            [.. humerus],
            Radius(p[RadiusHeadLateral], p[RadiusHeadMedial], Enumerable.Range(1, 4).Select(i => p[RadiusLateral(i)]), Enumerable.Range(1, 4).Select(i => p[RadiusMedial(i)])),
            [new(p[UlnaLateral(1)].X, p[RadiusHeadMedial].Y - (0.6 * e.W)), p[UlnaLateral(3)], p[UlnaMedial(3)], new(p[UlnaMedial(1)].X, p[RadiusHeadMedial].Y - (0.6 * e.W))],
        ];
        if (e.Growing)
        {
            var centre = Point.Midpoint(p[CapitellumEdgeLateral], p[CapitellumEdgeMedial]);
            bones.Add([.. Enumerable.Range(0, 48).Select(i => new Point(
                centre.X + (1.05 * e.Capitellum * Math.Cos(i * Math.PI / 24)), centre.Y + (e.Capitellum * Math.Sin(i * Math.PI / 24))))]);
        }

        return bones;
    }

    private static Point[] Radius(Point headA, Point headB, IEnumerable<Point> a, IEnumerable<Point> b)
    {
        Point[] front = [.. a];
        Point[] back = [.. b];
        var neck = front[0] - headA;
        return
        [
            headA, headA + (neck * 0.4), .. front, Beyond(front), Beyond(back), .. back.Reverse(), headB + ((back[0] - headB) * 0.4), headB,
        ];
    }

    private static Point Beyond(Point[] edge) => edge[^1] + ((edge[^1] - edge[^2]) * 5);

    private static Point Up(Point p, DrawnElbow e) => new(p.X, p.Y - (6 * e.W));

    private static Point Beside(Point p, Point away, double distance) => p + ((p - away).Unit * (0.4 * distance)) + new Vector(0, distance);

    private static Point Inward(Point p, IReadOnlyDictionary<string, Point> all, DrawnElbow e)
    {
        var along = (all[UlnaPosterior(3)] - all[UlnaPosterior(1)]).Unit;
        var across = along.Perpendicular;
        var toward = (all[UlnaCoronoid] - p).Dot(across) > 0 ? 1 : -1;
        return p + (across * (toward * 0.95 * e.W));
    }
}
