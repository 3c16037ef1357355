using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Testing.DrawnElbows;

/// <summary>
/// A flat elbow drawn from a few numbers, in pixels of a film of 800 by 1200. The proportions are invented and no patient
/// stands behind them; it gives studies whole and consistent sets of landmarks.
/// </summary>
public sealed record DrawnElbow
{
    /// <summary>Columns of every drawn film.</summary>
    public const int Columns = 800;

    /// <summary>Rows of every drawn film.</summary>
    public const int Rows = 1200;

    /// <summary>Width of the humeral shaft, pixels.</summary>
    public double W { get; init; } = 100;

    /// <summary>Radius of the ossified capitellum.</summary>
    public double Capitellum { get; init; } = 58;

    /// <summary>Diameter of the radial head.</summary>
    public double RadialHead { get; init; } = 110;

    /// <summary>Growing elbow: the nucleus shows all round and its physis is open.</summary>
    public bool Growing { get; init; }

    /// <summary>Distance of the capitellar centre in front of the anterior humeral line, over its radius.</summary>
    public double CentreBeforeLine { get; init; }

    /// <summary>Distance of the radial axis from the capitellar centre on the lateral, over its diameter; + toward the flexor side.</summary>
    public double RadialOffset { get; init; }

    /// <summary>Baumann angle, convention A, degrees.</summary>
    public double Baumann { get; init; } = 72;

    /// <summary>Angle of the condylar axis against the shaft, degrees.</summary>
    public double CondylarTilt { get; init; } = 40;

    /// <summary>Backward shift of everything below a supracondylar fracture, over W.</summary>
    public double BackwardShift { get; init; }

    /// <summary>Extension of everything below a supracondylar fracture, degrees.</summary>
    public double Extension { get; init; }

    /// <summary>Angle of the anterior fat pad against the shaft, degrees.</summary>
    public double FatPadAngle { get; init; } = 8;

    /// <summary>Mirrored films, as of the other side.</summary>
    public bool Mirrored { get; init; }

    /// <summary>The places of the lateral landmarks.</summary>
    public IReadOnlyDictionary<string, Point> Lateral() => Mirror(LateralPlaces.Of(this));

    /// <summary>The places of the AP landmarks.</summary>
    public IReadOnlyDictionary<string, Point> Ap() => Mirror(ApPlaces.Of(this));

    /// <summary>
    /// Landmarks of a view as a reader might place them: off by a seeded error along x and y, with a spread to match.
    /// What lies off the film has no place.
    /// </summary>
    /// <param name="view">Lateral or AP.</param>
    /// <param name="seed">Seed of the errors.</param>
    /// <param name="deviation">Standard deviation of the errors, pixels.</param>
    /// <param name="source">Who is said to have laid them.</param>
    public IReadOnlyList<Landmark> Landmarks(View view, int seed, double deviation = 0.8, LandmarkSource source = LandmarkSource.Reader)
    {
        var random = new Random(seed);
        var places = view == View.Lateral ? Lateral() : Ap();
        return
        [
            .. LandmarkSet.Of(view)!.Landmarks.Select(d =>
            {
                var (ex, ey) = (Gaussian(random) * deviation, Gaussian(random) * deviation);
                return places.TryGetValue(d.Name, out var p) && p is { X: > 2 and < Columns - 2, Y: > 2 and < Rows - 2 }
                    ? new Landmark(d.Name, d.Kind, new Point(Math.Round(p.X + ex, 1), Math.Round(p.Y + ey, 1)), Covariance.Isotropic(Math.Max(0.3, deviation)), 1, source)
                    : new Landmark(d.Name, d.Kind, null, null, 0, source);
            }),
        ];
    }

    private Dictionary<string, Point> Mirror(Dictionary<string, Point> places) =>
        Mirrored ? places.ToDictionary(p => p.Key, p => new Point(Columns - p.Value.X, p.Value.Y), StringComparer.Ordinal) : places;

    private static double Gaussian(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
