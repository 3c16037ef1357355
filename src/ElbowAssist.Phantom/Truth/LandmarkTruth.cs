using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Truth;

/// <summary>The exact landmarks of one film.</summary>
internal sealed class LandmarkTruth
{
    private readonly BoneSurfaces bones;
    private readonly FilmCamera camera;
    private readonly FilmPlacement placement;
    private readonly Silhouette silhouette;
    private readonly Dictionary<string, TruthLandmark> found = new(StringComparer.Ordinal);

    public LandmarkTruth(PosedElbow elbow, FilmCamera camera, FilmPlacement placement)
    {
        bones = new BoneSurfaces(elbow);
        this.camera = camera;
        this.placement = placement;
        silhouette = new Silhouette(camera, 70);
    }

    /// <summary>Every landmark of a view in its fixed order; empty for views without landmarks.</summary>
    public IReadOnlyList<TruthLandmark> Of(View view)
    {
        var set = LandmarkSet.Of(view);
        if (set is null)
        {
            return [];
        }

        if (view == View.Lateral)
        {
            Lateral();
        }
        else
        {
            Ap();
        }

        return [.. set.Landmarks.Select(l => found.GetValueOrDefault(l.Name) ?? new TruthLandmark(l.Name, l.Kind, null, null))];
    }

    private void Lateral()
    {
        var points = bones.Points;
        Shaft([3, 2.5f, 2, 1.5f, 1], LandmarkNames.HumerusAnterior, LandmarkNames.HumerusPosterior, points.Shaft.AxisX);
        AddPoint(LandmarkNames.HumerusFossaRoof, Frame.ToOuter(points.Shaft, points.FossaRoof), true);
        AddPoint(LandmarkNames.HumerusWaist, points.Waist, camera.ViewErrorDegrees < 25);
        CapitellumRim();
        TrochleaLip();
        var physis = bones.Physis();
        AddPoint(LandmarkNames.CapitellumPhysisAnterior, physis.Anterior);
        AddPoint(LandmarkNames.CapitellumPhysisPosterior, physis.Posterior);
        Radius(LandmarkNames.RadiusAnterior, LandmarkNames.RadiusPosterior, bones.Geometry.Ulna.Forearm.AxisY);
        HeadRim(LandmarkNames.RadiusHeadAnterior, LandmarkNames.RadiusHeadPosterior, bones.Geometry.Ulna.Forearm.AxisY);
        AddPoint(LandmarkNames.UlnaCoronoid, points.CoronoidTip, true);
        AddPoint(LandmarkNames.UlnaOlecranon, bones.Olecranon);
        Notch();
        Ulna(null, LandmarkNames.UlnaPosterior, bones.Geometry.Ulna.Forearm.AxisY);
        AddPoint(LandmarkNames.FatPadAnteriorTip, points.AnteriorPadTip, points.AnteriorPadShown);
        AddPoint(LandmarkNames.FatPadAnteriorBase, points.AnteriorPadBase, points.AnteriorPadShown);
        AddPoint(LandmarkNames.FatPadPosteriorTip, points.PosteriorPadTip, points.PosteriorPadShown);
    }

    private void Ap()
    {
        var points = bones.Points;
        Shaft([3.5f, 2.75f, 2, 1.25f], LandmarkNames.HumerusLateral, LandmarkNames.HumerusMedial, points.Shaft.AxisZ);
        AddPoint(LandmarkNames.HumerusEpicondyleLateral, bones.LateralEpicondyle);
        AddPoint(LandmarkNames.HumerusEpicondyleMedial, bones.MedialEpicondyle);
        AddPoint(LandmarkNames.HumerusFossaRoof, Frame.ToOuter(points.Shaft, points.FossaRoof), true);
        CapitellumEdges();
        var physis = bones.Physis();
        AddPoint(LandmarkNames.CapitellumPhysisLateral, physis.Lateral);
        AddPoint(LandmarkNames.CapitellumPhysisMedial, physis.Medial);
        Radius(LandmarkNames.RadiusLateral, LandmarkNames.RadiusMedial, bones.Geometry.Ulna.Forearm.AxisZ);
        HeadRim(LandmarkNames.RadiusHeadLateral, LandmarkNames.RadiusHeadMedial, bones.Geometry.Ulna.Forearm.AxisZ);
        Ulna(LandmarkNames.UlnaLateral, LandmarkNames.UlnaMedial, bones.Geometry.Ulna.Forearm.AxisZ);
    }

    private void Shaft(float[] levels, Func<int, string> toward, Func<int, string> away, Vec3 direction)
    {
        for (var i = 0; i < levels.Length; i++)
        {
            var centre = bones.ShaftMiddle(levels[i] * bones.Points.UnitW);
            AddSection(bones.Humerus, centre, bones.Points.Shaft.AxisY, direction, toward(i + 1), away(i + 1));
        }
    }

    private void Radius(Func<int, string> toward, Func<int, string> away, Vec3 direction)
    {
        float[] levels = [0.6f, 0.85f, 2.0f, 2.6f];
        for (var i = 0; i < levels.Length; i++)
        {
            var centre = bones.RadiusMiddle(levels[i] * 2 * bones.Geometry.Radius.HeadY);
            AddSection(bones.Radius, centre, bones.Geometry.Radius.Bone.AxisX, direction, toward(i + 1), away(i + 1));
        }
    }

    private void Ulna(Func<int, string>? toward, Func<int, string> away, Vec3 direction)
    {
        var forearm = bones.Geometry.Ulna.Forearm;
        var start = Frame.ToLocal(in forearm, bones.Points.CoronoidTip).X;
        for (var i = 1; i <= 3; i++)
        {
            var centre = bones.UlnaMiddle(start + (2 * i * bones.Points.UnitW));
            AddSection(bones.Ulna, centre, forearm.AxisX, direction, toward?.Invoke(i), away(i));
        }
    }

    private void HeadRim(string toward, string away, Vec3 direction)
    {
        if (!bones.HeadExists)
        {
            return;
        }

        var axis = camera.DirectionToPlane(bones.Geometry.Radius.Bone.AxisX);
        var across = axis.Perpendicular.Unit;
        across = across.Dot(camera.DirectionToPlane(direction)) < 0 ? -across : across;
        AddPoint(toward, Extreme(across), true);
        AddPoint(away, Extreme(-across), true);

        Vec3 Extreme(Vector along)
        {
            double Reach(float angle)
            {
                var p = camera.ToPlane(bones.HeadRim(angle));
                return (p.X * along.X) + (p.Y * along.Y);
            }

            var best = Enumerable.Range(0, 72).Select(i => i * MathF.PI / 36).MaxBy(Reach);
            for (var step = MathF.PI / 72; step > 1e-4f; step /= 2)
            {
                best = new[] { best - step, best, best + step }.MaxBy(Reach);
            }

            return bones.HeadRim(best);
        }
    }

    /// <summary>Directions on the plane of the joint: distal along the shaft axis, and anterior, square to it.</summary>
    private (Vector Distal, Vector Anterior) ShaftDirections()
    {
        var distal = -camera.DirectionToPlane(bones.Points.Shaft.AxisY).Unit;
        var anterior = distal.Perpendicular;
        return anterior.Dot(camera.DirectionToPlane(bones.Points.Shaft.AxisX)) < 0 ? (distal, -anterior) : (distal, anterior);
    }

    private void CapitellumRim()
    {
        if (!bones.CapitellumExists)
        {
            return;
        }

        var centre = camera.ToPlane(bones.CapitellumCentre);
        for (var i = 0; i < 12; i++)
        {
            // Nothing on a mesh tells the back of the capitellum from the condyle behind it.
            if (bones.AreMeshes && i is > 5 and < 10)
            {
                continue;
            }

            AddOutline(LandmarkNames.CapitellumRim(i + 1), bones.Capitellum, bones.CapitellumBone, centre, AtAngle(i * 30));
        }
    }

    private void TrochleaLip()
    {
        if (!bones.TrochleaExists)
        {
            return;
        }

        var centre = camera.ToPlane(bones.MedialLipCentre);
        for (var i = 0; i < 5; i++)
        {
            AddOutline(LandmarkNames.TrochleaLip(i + 1), bones.MedialLip, bones.Humerus, centre, AtAngle(-30 + (30 * i)));
        }
    }

    private Vector AtAngle(double degrees)
    {
        var (distal, anterior) = ShaftDirections();
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return (distal * cos) + (anterior * sin);
    }

    private void Notch()
    {
        var centre = camera.ToPlane(default);
        var coronoid = camera.ToPlane(bones.Points.CoronoidTip) - centre;
        var olecranon = camera.ToPlane(bones.Points.OlecranonTip) - centre;
        var floor = camera.DirectionToPlane(-bones.Geometry.Ulna.Forearm.AxisY);
        var from = Math.Atan2(coronoid.Y, coronoid.X);
        var span = Math.IEEERemainder(Math.Atan2(olecranon.Y, olecranon.X) - from, 2 * Math.PI);
        var middle = new Vector(Math.Cos(from + (span / 2)), Math.Sin(from + (span / 2)));
        span = middle.Dot(floor) < 0 ? span - (Math.Sign(span) * 2 * Math.PI) : span;
        for (var i = 1; i <= 4; i++)
        {
            var angle = from + (span * i / 5);
            var direction = new Vector(Math.Cos(angle), Math.Sin(angle));
            var r = bones.Geometry.Humerus.Trochlea.GrooveRadius;
            if (silhouette.FirstMet(bones.Ulna, centre, direction, 0.6 * r, r + 9) is { } outline)
            {
                AddContour(LandmarkNames.UlnaNotch(i), outline);
            }
        }
    }

    private void CapitellumEdges()
    {
        var centre = camera.ToPlane(bones.CapitellumCentre);
        var lateral = camera.DirectionToPlane(new Vec3(0, 0, 1)).Unit;
        var distal = lateral.Perpendicular;
        distal = distal.Dot(camera.DirectionToPlane(new Vec3(0, -1, 0))) < 0 ? -distal : distal;
        if (bones.CapitellumExists)
        {
            AddExtreme(LandmarkNames.CapitellumEdgeLateral, bones.Capitellum, bones.CapitellumBone, centre, lateral);
            AddExtreme(LandmarkNames.CapitellumDistal, bones.Capitellum, bones.CapitellumBone, centre, distal);
        }

        if (bones.CapitellumIsNucleus)
        {
            if (bones.CapitellumExists)
            {
                AddExtreme(LandmarkNames.CapitellumEdgeMedial, bones.Capitellum, bones.CapitellumBone, centre, -lateral);
            }

            return;
        }

        // The grown capitellum has no medial edge of its own: it ends where it meets the trochlea.
        var end = new Vec3(0, 0, bones.Geometry.Humerus.Trochlea.EndZ);
        AddOutline(LandmarkNames.CapitellumEdgeMedial, bones.Humerus, bones.Humerus, camera.ToPlane(end), distal);
        AddExtreme(LandmarkNames.TrochleaEdgeMedial, bones.MedialLip, bones.Humerus, camera.ToPlane(bones.MedialLipCentre), -lateral);
    }

    /// <summary>The place of an outline that reaches farthest along a direction, if it is an edge of the bone.</summary>
    private void AddExtreme(string name, Surface part, Surface bone, Point centre, Vector along)
    {
        OutlinePoint? best = null;
        var bestAngle = 0.0;
        void Try(double angle)
        {
            var (sin, cos) = Math.SinCos(angle);
            var direction = (along * cos) + (along.Perpendicular * sin);
            var outline = silhouette.Outline(part, centre, direction, 0.1, 45);
            if (outline is { } o && (best is null || along.Dot(o.Position - best.Value.Position) > 0))
            {
                (best, bestAngle) = (o, angle);
            }
        }

        for (var i = -4; i <= 4; i++)
        {
            Try(i * 0.3);
        }

        for (var step = 0.15; step > 0.002; step /= 2)
        {
            var at = bestAngle;
            Try(at - step);
            Try(at + step);
        }

        // Where part and whole differ by no more than their blend, the landmark is laid on the edge of the whole.
        if (best is { } b && silhouette.Outline(bone, b.Position - (b.Outward * 2), b.Outward, 1.4, 2.6) is { } edge)
        {
            AddContour(name, edge);
        }
    }

    /// <summary>
    /// The outline of a part along a half line, where the ray touches free surface: a part buried in the rest of the bone
    /// has no edge there, one that is merely in front of or behind it has.
    /// </summary>
    private void AddOutline(string name, Surface part, Surface bone, Point centre, Vector direction)
    {
        if (silhouette.Outline(part, centre, direction, 0.1, 45) is { } outline && MathF.Abs(bone(outline.Touch)) < 0.25f)
        {
            AddContour(name, outline);
        }
    }

    private void AddSection(Surface bone, Vec3 centre, Vec3 axis, Vec3 direction, string? toward, string away)
    {
        var (near, far) = silhouette.Section(bone, centre, axis, direction);
        if (toward is not null && near is { } n && silhouette.IsEdge(bone, n))
        {
            AddContour(toward, n);
        }

        if (far is { } f && silhouette.IsEdge(bone, f))
        {
            AddContour(away, f);
        }
    }

    private void AddContour(string name, OutlinePoint outline)
    {
        var position = placement.PlaneToFilm.Apply(outline.Position);
        if (OnFilm(position))
        {
            found[name] = new TruthLandmark(name, LandmarkKind.Contour, position, placement.PlaneToFilm.Apply(outline.Tangent).Unit);
        }
    }

    private void AddPoint(string name, Vec3? p) => AddPoint(name, p ?? default, p is not null);

    private void AddPoint(string name, Vec3 p, bool shown)
    {
        var position = placement.PlaneToFilm.Apply(camera.ToPlane(p));
        if (shown && OnFilm(position))
        {
            found[name] = new TruthLandmark(name, LandmarkKind.Point, position, null);
        }
    }

    private bool OnFilm(Point p) => p.X >= 0 && p.Y >= 0 && p.X <= placement.Width && p.Y <= placement.Height;
}
