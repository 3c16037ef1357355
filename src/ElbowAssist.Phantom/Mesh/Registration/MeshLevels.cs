using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Mesh.Registration;

/// <summary>
/// What the anatomical levels of the humerus hang on, found on the mesh itself in the frame of the joint: the fitted elbow
/// only says where to look.
/// </summary>
/// <param name="UnitW">W, the smallest outer anteroposterior width of the shaft in its distal half.</param>
/// <param name="FossaRoof">Most proximal point of the olecranon fossa.</param>
/// <param name="Waist">Middle of the bone between the fossae where it is thinnest.</param>
internal sealed record MeshLevels(float UnitW, Vec3 FossaRoof, Vec3 Waist)
{
    /// <summary>
    /// Depth at which the fossa begins: as much as the rounded rim of the parametric fossa lies under the surface at the
    /// height that counts as its roof there (a quarter of the width of its rounding).
    /// </summary>
    private const float RoofDepth = 1;
    private const float HalfWidth = 12;
    private const float Step = 0.5f;

    /// <summary>Finds the levels.</summary>
    /// <param name="mesh">Humerus.</param>
    /// <param name="surface">Its distances.</param>
    /// <param name="shape">The elbow fitted to it.</param>
    public static MeshLevels Of(TriangleMesh mesh, DistanceGrid surface, HumerusShape shape)
    {
        var fitted = HumerusBuilder.Build(shape);
        var roof = Roof(surface, HumerusBuilder.RoofHeight(shape), fitted.OlecranonFossa.Centre.Z)
            ?? new Vec3(fitted.OlecranonFossa.Centre.X + 2, HumerusBuilder.RoofHeight(shape), fitted.OlecranonFossa.Centre.Z);
        var w = ShaftWidth.Smallest(mesh, roof.Y, roof.Y + (float)(5 * shape.WaistAp)) ?? (float)shape.WaistAp;
        var between = 0.5f * (fitted.OlecranonFossa.Centre.Z + fitted.CoronoidFossa.Centre.Z);
        return new MeshLevels(w, roof, ThinnestBetween(surface, fitted.CoronoidFossa.Centre.Y, between) ?? HumerusBuilder.Waist(in fitted));
    }

    /// <summary>Comes down the back of the bone until its middle sinks below the line from side to side.</summary>
    private static Vec3? Roof(DistanceGrid surface, float about, float middle)
    {
        for (var y = about + 18; y > about - 12; y -= 0.25f)
        {
            var places = Enumerable.Range(0, (int)(2 * HalfWidth / Step) + 1).Select(i => middle - HalfWidth + (i * Step))
                .Select(z => Meet(surface, new Vec3(surface.Least.X, y, z), 1)).OfType<Vec3>().ToArray();
            for (var i = 1; i < places.Length - 1; i++)
            {
                if (MathF.Abs(places[i].Z - middle) < 0.5f * HalfWidth && Sunk(places, i) > RoofDepth)
                {
                    return places[i];
                }
            }
        }

        return null;
    }

    /// <summary>How far a place lies in front of the straight lines that bridge it.</summary>
    private static float Sunk(Vec3[] places, int at)
    {
        var p = places[at];
        var most = 0f;
        for (var i = 0; i < at; i++)
        {
            for (var j = at + 1; j < places.Length; j++)
            {
                var share = (p.Z - places[i].Z) / (places[j].Z - places[i].Z);
                most = MathF.Max(most, p.X - Distance.Mix(places[i].X, places[j].X, share));
            }
        }

        return most;
    }

    private static Vec3? ThinnestBetween(DistanceGrid surface, float about, float z)
    {
        Vec3? thinnest = null;
        var least = float.MaxValue;
        for (var y = about - 6; y <= about + 8; y += 0.1f)
        {
            if (Meet(surface, new Vec3(surface.Least.X, y, z), 1) is { } back
                && Meet(surface, new Vec3(surface.Most.X, y, z), -1) is { } front
                && front.X - back.X < least)
            {
                least = front.X - back.X;
                thinnest = (front + back) * 0.5f;
            }
        }

        return thinnest;
    }

    /// <summary>Where a line along X first meets the surface.</summary>
    private static Vec3? Meet(DistanceGrid surface, Vec3 from, float direction)
    {
        var p = from;
        while (p.X >= surface.Least.X && p.X <= surface.Most.X)
        {
            var d = surface.At(p);
            if (d < 0.02f)
            {
                return p;
            }

            p += new Vec3(direction * MathF.Max(0.8f * d, 0.02f), 0, 0);
        }

        return null;
    }
}
