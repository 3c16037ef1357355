namespace ElbowAssist.Phantom.Mesh.Surfaces;

/// <summary>Outer widths of a shaft that stands along Y.</summary>
internal static class ShaftWidth
{
    private const float Step = 0.5f;

    /// <summary>The smallest extent along X of the sections between two heights; null if there is no section.</summary>
    public static float? Smallest(TriangleMesh mesh, float from, float to)
    {
        var count = (int)((to - from) / Step) + 1;
        var (least, most) = (new float[count], new float[count]);
        Array.Fill(least, float.MaxValue);
        Array.Fill(most, float.MinValue);
        for (var t = 0; t < mesh.TriangleCount; t++)
        {
            var (a, b, c) = mesh.Triangle(t);
            foreach (var (p, q) in new[] { (a, b), (b, c), (c, a) })
            {
                var (low, high) = p.Y < q.Y ? (p, q) : (q, p);
                for (var i = Math.Max(0, (int)MathF.Ceiling((low.Y - from) / Step)); i < count && from + (i * Step) < high.Y; i++)
                {
                    var x = low.X + ((high.X - low.X) * (from + (i * Step) - low.Y) / (high.Y - low.Y));
                    least[i] = MathF.Min(least[i], x);
                    most[i] = MathF.Max(most[i], x);
                }
            }
        }

        return Enumerable.Range(0, count).Where(i => most[i] > least[i]).Min(i => (float?)(most[i] - least[i]));
    }
}
