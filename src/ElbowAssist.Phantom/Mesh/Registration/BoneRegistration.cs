using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Sampling;
using ElbowAssist.Phantom.Shape;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Phantom.Mesh.Registration;

/// <summary>Fits pose and shape of one parametric bone to a mesh: distances of points of the mesh to the parametric surface.</summary>
internal sealed class BoneRegistration
{
    private const int Points = 1000;
    private const int Steps = 40;

    /// <summary>
    /// Distances that a good fit leaves (mm), and how many points count as independent: few, because a real bone departs from
    /// the parametric one over whole regions, and parameters must not leave the range of adults to make up for it.
    /// </summary>
    private const double Residual = 1;
    private const double Independent = 40;
    private const double Huber = 2;

    /// <summary>Units of the unknowns of the pose: radians and millimetres.</summary>
    private const double TurnUnit = 0.05;
    private const double ShiftUnit = 2;
    private const double PoseSpread = 100;

    private readonly string name;
    private readonly IReadOnlyList<ShapeParameter> parameters;
    private readonly Func<ElbowShape, Surface> surface;

    /// <param name="name">Name of the bone.</param>
    /// <param name="parameters">What may change.</param>
    /// <param name="surface">The surface of the bone in its own frame.</param>
    public BoneRegistration(string name, IReadOnlyList<ShapeParameter> parameters, Func<ElbowShape, Surface> surface) =>
        (this.name, this.parameters, this.surface) = (name, parameters, surface);

    /// <summary>Fits from the best of several starting frames.</summary>
    /// <param name="mesh">Bone.</param>
    /// <param name="starts">Rough frames of the bone.</param>
    /// <param name="near">True for points, in a starting frame, of the part that is fitted.</param>
    /// <param name="elbow">The other bones.</param>
    public BoneFit Fit(TriangleMesh mesh, IReadOnlyList<Frame> starts, Func<Vec3, bool> near, ElbowShape elbow)
    {
        var first = starts[0];
        var points = Sample(mesh, p => near(Frame.ToLocal(in first, p)));
        var few = points.Where((_, i) => i % 4 == 0).ToArray();
        var (start, unknowns, _) = starts.Select(s =>
        {
            var (x, cost) = Search(few, s, elbow).Minimise(new double[6 + parameters.Count], starts.Count > 1 ? 8 : 0);
            return (s, x, cost);
        }).MinBy(s => s.cost);
        var (found, _) = Search(points, start, elbow).Minimise(unknowns, Steps);
        var frame = Posed(start, found);
        var shape = Shaped(elbow, found);
        return new BoneFit(frame, shape, Measure(points, frame, surface(shape)));
    }

    private LeastSquares Search(Vec3[] points, Frame start, ElbowShape elbow) => new(
        points.Length,
        x =>
        {
            var frame = Posed(start, x);
            var bone = surface(Shaped(elbow, x));
            return [.. points.Select(p => (double)FirstOrder(bone, Frame.ToLocal(in frame, p)).Distance)];
        },
        Independent / points.Length / (Residual * Residual),
        Huber,
        [.. Enumerable.Range(0, 6 + parameters.Count).Select(j => j < 6 ? PoseSpread : 1)]);

    private static Frame Posed(Frame start, double[] x)
    {
        var axis = new Vec3((float)x[0], (float)x[1], (float)x[2]);
        var turn = axis.Length > 0 ? Frame.Turn(axis, axis.Length * TurnUnit * 180 / Math.PI, default) : Frame.Identity;
        turn.Origin = new Vec3((float)x[3], (float)x[4], (float)x[5]) * (float)ShiftUnit;
        return Frame.Compose(in start, in turn);
    }

    private ElbowShape Shaped(ElbowShape elbow, double[] x) =>
        parameters.Select((p, i) => (p, i)).Aggregate(elbow, (shape, n) => n.p.Set(shape, n.p.Mean + (n.p.Spread * Math.Clamp(x[6 + n.i], -5, 5))));

    /// <summary>Distance by the first terms of its series, and the direction away from the surface.</summary>
    private static (float Distance, Vec3 Away) FirstOrder(Surface bone, Vec3 p)
    {
        const float h = 0.05f;
        var gradient = new Vec3(
            bone(p + new Vec3(h, 0, 0)) - bone(p - new Vec3(h, 0, 0)),
            bone(p + new Vec3(0, h, 0)) - bone(p - new Vec3(0, h, 0)),
            bone(p + new Vec3(0, 0, h)) - bone(p - new Vec3(0, 0, h))) * (0.5f / h);
        var steepness = MathF.Max(gradient.Length, 0.4f);
        return (bone(p) / steepness, gradient * (1 / steepness));
    }

    private BoneFitDistances Measure(Vec3[] points, Frame frame, Surface bone)
    {
        var distances = points.Select(p => Frame.ToLocal(in frame, p)).Select(p =>
        {
            var q = p;
            for (var i = 0; i < 6; i++)
            {
                var (d, away) = FirstOrder(bone, q);
                q -= away * d;
            }

            return (double)(q - p).Length;
        }).Order().ToList();
        return new BoneFitDistances(name, distances.Average(), distances[(int)(0.95 * (distances.Count - 1))], distances[^1]);
    }

    /// <summary>Points spread evenly over the part of a surface that is fitted.</summary>
    private static Vec3[] Sample(TriangleMesh mesh, Func<Vec3, bool> near)
    {
        var random = new CounterRandom(0, 1);
        var areas = new double[mesh.TriangleCount];
        var sum = 0.0;
        for (var t = 0; t < areas.Length; t++)
        {
            var (a, b, c) = mesh.Triangle(t);
            sum += (b - a).Cross(c - a).Length;
            areas[t] = sum;
        }

        var points = new List<Vec3>(Points);
        for (var tries = 0; points.Count < Points && tries < 100 * Points; tries++)
        {
            var found = Array.BinarySearch(areas, random.Uniform() * sum);
            var (a, b, c) = mesh.Triangle(Math.Min(found < 0 ? ~found : found, areas.Length - 1));
            float u = (float)random.Uniform(), v = (float)random.Uniform();
            (u, v) = u + v > 1 ? (1 - u, 1 - v) : (u, v);
            var p = a + ((b - a) * u) + ((c - a) * v);
            if (near(p))
            {
                points.Add(p);
            }
        }

        return points.Count == Points
            ? [.. points]
            : throw new InvalidDataException("The bones do not look like the bones of one elbow: too little of them lies near the joint; check the unit and that they lie in one frame.");
    }
}
