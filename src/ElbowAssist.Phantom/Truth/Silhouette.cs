using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Truth;

/// <summary>A place on an outline: on the plane of the joint (mm), with the unit tangent and the outward normal there, and where the ray touches.</summary>
internal readonly record struct OutlinePoint(Point Position, Vector Tangent, Vector Outward, Vec3 Touch);

/// <summary>Signed distance to a bone or a part of one.</summary>
internal delegate float Surface(Vec3 point);

/// <summary>Finds where rays touch surfaces. Everything is searched on the same distance functions that are rendered.</summary>
internal sealed class Silhouette(FilmCamera camera, float halfDepth)
{
    private const int Sectors = 40;
    private const float GradientStep = 0.02f;

    /// <summary>
    /// The two outermost places at which the outline of a surface meets a plane: seen from the axis, on the side of
    /// <paramref name="toward"/> and on the other side.
    /// </summary>
    /// <param name="surface">Bone.</param>
    /// <param name="centre">A point of the plane inside the bone.</param>
    /// <param name="axis">Normal of the plane, the bone's axis.</param>
    /// <param name="toward">Anatomical direction that names the first side.</param>
    public (OutlinePoint? Toward, OutlinePoint? Away) Section(Surface surface, Vec3 centre, Vec3 axis, Vec3 toward)
    {
        var projected = camera.DirectionToPlane(axis);
        var across = projected.Perpendicular.Unit;
        if (across.Dot(camera.DirectionToPlane(toward)) < 0)
        {
            across = -across;
        }

        var first = toward - (axis * toward.Dot(axis));
        first = first.Unit;
        var second = axis.Cross(first).Unit;
        OutlinePoint? near = null, far = null;
        double most = double.MinValue, least = double.MaxValue;
        var previous = Facing(0);
        for (var i = 1; i <= Sectors; i++)
        {
            var angle = i * 2 * MathF.PI / Sectors;
            var current = Facing(angle);
            if (!float.IsNaN(previous) && !float.IsNaN(current) && (previous < 0) != (current < 0))
            {
                var p = Root(angle - (2 * MathF.PI / Sectors), angle, previous < 0);
                var outline = At(surface, p);
                var u = across.Dot(outline.Position - camera.ToPlane(centre));
                if (u > most)
                {
                    (most, near) = (u, outline);
                }

                if (u < least)
                {
                    (least, far) = (u, outline);
                }
            }

            previous = current;
        }

        return (near, far);

        Vec3 Direction(float angle) => (first * MathF.Cos(angle)) + (second * MathF.Sin(angle));

        float Facing(float angle)
        {
            var p = Rim(surface, centre, Direction(angle), 30);
            return p is { } q ? Normal(surface, q).Dot(camera.RayThrough(q)) : float.NaN;
        }

        Vec3 Root(float low, float high, bool lowIsNegative)
        {
            for (var i = 0; i < 18; i++)
            {
                var middle = 0.5f * (low + high);
                if ((Facing(middle) < 0) == lowIsNegative)
                {
                    low = middle;
                }
                else
                {
                    high = middle;
                }
            }

            return Rim(surface, centre, Direction(0.5f * (low + high)), 30) ?? centre;
        }
    }

    /// <summary>The outermost place at which the outline of a surface meets a half line on the plane of the joint.</summary>
    /// <returns>Null if the half line starts outside the outline or does not leave it within the limit.</returns>
    public OutlinePoint? Outline(Surface surface, Point from, Vector direction, double least, double most)
    {
        var unit = direction.Unit;
        if (!Covers(surface, from + (unit * least)) || Covers(surface, from + (unit * most)))
        {
            return null;
        }

        for (var i = 0; i < 16; i++)
        {
            var middle = 0.5 * (least + most);
            if (Covers(surface, from + (unit * middle)))
            {
                least = middle;
            }
            else
            {
                most = middle;
            }
        }

        var (_, touch) = Clearance(surface, from + (unit * least));
        return At(surface, touch) with { Position = from + (unit * (0.5 * (least + most))) };
    }

    /// <summary>The first place at which a half line on the plane of the joint, starting outside, meets the outline.</summary>
    public OutlinePoint? FirstMet(Surface surface, Point from, Vector direction, double least, double most)
    {
        var unit = direction.Unit;
        if (Covers(surface, from + (unit * least)))
        {
            return null;
        }

        for (var r = least + 0.6; r < most; r += 0.6)
        {
            if (Covers(surface, from + (unit * r)))
            {
                double low = r - 0.6, high = r;
                for (var i = 0; i < 14; i++)
                {
                    var middle = 0.5 * (low + high);
                    (low, high) = Covers(surface, from + (unit * middle)) ? (low, middle) : (middle, high);
                }

                var (_, touch) = Clearance(surface, from + (unit * high));
                return At(surface, touch) with { Position = from + (unit * (0.5 * (low + high))) };
            }
        }

        return null;
    }

    /// <summary>True if the ray through a place on the plane of the joint meets the surface.</summary>
    public bool Covers(Surface surface, Point place) => Clearance(surface, place).Distance < 0;

    /// <summary>True if the outline is an edge of the whole bone: covered just inside, uncovered just outside.</summary>
    public bool IsEdge(Surface bone, OutlinePoint outline, double margin = 0.35) =>
        Covers(bone, outline.Position - (outline.Outward * margin)) &&
        !Covers(bone, outline.Position + (outline.Outward * margin));

    /// <summary>Where a half line from inside leaves a surface.</summary>
    public static Vec3? Rim(Surface surface, Vec3 from, Vec3 direction, float most)
    {
        float low = 0, high = 0;
        if (surface(from) > 0)
        {
            return null;
        }

        while (surface(from + (direction * high)) <= 0)
        {
            low = high;
            high += 1.5f;
            if (high > most)
            {
                return null;
            }
        }

        for (var i = 0; i < 17; i++)
        {
            var middle = 0.5f * (low + high);
            if (surface(from + (direction * middle)) <= 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return from + (direction * (0.5f * (low + high)));
    }

    private static Vec3 Normal(Surface surface, Vec3 p)
    {
        var n = new Vec3(
            surface(p + new Vec3(GradientStep, 0, 0)) - surface(p - new Vec3(GradientStep, 0, 0)),
            surface(p + new Vec3(0, GradientStep, 0)) - surface(p - new Vec3(0, GradientStep, 0)),
            surface(p + new Vec3(0, 0, GradientStep)) - surface(p - new Vec3(0, 0, GradientStep)));
        return n.Unit;
    }

    private OutlinePoint At(Surface surface, Vec3 p)
    {
        var n = Normal(surface, p);
        return new OutlinePoint(
            camera.ToPlane(p),
            camera.DirectionToPlane(n.Cross(camera.Beam)).Unit,
            camera.DirectionToPlane(n).Unit,
            p);
    }

    /// <summary>Smallest distance to a surface along the ray through a place (below 0: the ray meets it), and where.</summary>
    private (float Distance, Vec3 Nearest) Clearance(Surface surface, Point place)
    {
        var target = camera.FromPlane(place);
        var ray = camera.RayThrough(target);
        float t = -halfDepth, best = float.MaxValue, bestT = 0, bestStep = 1;
        while (t < halfDepth)
        {
            var d = surface(target + (ray * t));
            var step = MathF.Max(MathF.Abs(d) * 0.7f, 0.5f);
            if (d < best)
            {
                (best, bestT, bestStep) = (d, t, step);
                if (d < -1)
                {
                    break;
                }
            }

            t += step;
        }

        float low = bestT - bestStep - 0.5f, high = bestT + bestStep;
        const float golden = 0.381966f;
        float a = low + (golden * (high - low)), b = high - (golden * (high - low));
        float da = surface(target + (ray * a)), db = surface(target + (ray * b));
        for (var i = 0; i < 22; i++)
        {
            if (da < db)
            {
                (high, b, db) = (b, a, da);
                a = low + (golden * (high - low));
                da = surface(target + (ray * a));
            }
            else
            {
                (low, a, da) = (a, b, db);
                b = high - (golden * (high - low));
                db = surface(target + (ray * b));
            }
        }

        var at = da < db ? a : b;
        return MathF.Min(da, db) < best ? (MathF.Min(da, db), target + (ray * at)) : (best, target + (ray * bestT));
    }
}
