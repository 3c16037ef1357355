using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Mesh.Surfaces;

/// <summary>Distance from a point to a triangle: the region of the triangle that is nearest is found by its barycentric coordinates.</summary>
internal static class TriangleDistance
{
    /// <summary>The point of the triangle nearest to <paramref name="p"/>.</summary>
    public static Vec3 Nearest(Vec3 p, Vec3 a, Vec3 b, Vec3 c)
    {
        Vec3 ab = b - a, ac = c - a, ap = p - a;
        float alongAb = ab.Dot(ap), alongAc = ac.Dot(ap);
        if (alongAb <= 0 && alongAc <= 0)
        {
            return a;
        }

        var bp = p - b;
        float abFromB = ab.Dot(bp), acFromB = ac.Dot(bp);
        if (abFromB >= 0 && acFromB <= abFromB)
        {
            return b;
        }

        var overAb = (alongAb * acFromB) - (abFromB * alongAc);
        if (overAb <= 0 && alongAb >= 0 && abFromB <= 0)
        {
            return a + (ab * (alongAb / (alongAb - abFromB)));
        }

        var cp = p - c;
        float abFromC = ab.Dot(cp), acFromC = ac.Dot(cp);
        if (acFromC >= 0 && abFromC <= acFromC)
        {
            return c;
        }

        var overAc = (abFromC * alongAc) - (alongAb * acFromC);
        if (overAc <= 0 && alongAc >= 0 && acFromC <= 0)
        {
            return a + (ac * (alongAc / (alongAc - acFromC)));
        }

        var overBc = (abFromB * acFromC) - (abFromC * acFromB);
        if (overBc <= 0 && acFromB - abFromB >= 0 && abFromC - acFromC >= 0)
        {
            return b + ((c - b) * ((acFromB - abFromB) / (acFromB - abFromB + abFromC - acFromC)));
        }

        var share = 1 / (overAb + overAc + overBc);
        return a + (ab * (overAc * share)) + (ac * (overAb * share));
    }
}
