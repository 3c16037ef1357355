using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Reading;

namespace ElbowAssist.Web.Turning;

/// <summary>A simulated elbow like the one on a film: of its age, sex and side, chosen among a few by how well its landmarks lie on the film's.</summary>
/// <param name="Elbow">The simulated elbow; never the patient's.</param>
/// <param name="View">View.</param>
/// <param name="Pose">The pose that fits best.</param>
/// <param name="MisfitInW">Root of the mean squared distance of the landmarks after turning, shifting and scaling, in shaft widths.</param>
internal sealed record MatchedElbow(ElbowCase Elbow, View View, ElbowPose Pose, double MisfitInW)
{
    public const int Size = 288;

    private const int Candidates = 4;
    private const ulong FirstSeed = 100_000;
    private static readonly double[] Turns = [-12, 0, 12];

    /// <summary>The best match, or null where the film has too few landmarks.</summary>
    public static MatchedElbow? To(FilmReading reading, CancellationToken cancellation)
    {
        var places = reading.Landmarks.Where(l => l.Position is not null).ToDictionary(l => l.Name, l => l.Position!.Value, StringComparer.Ordinal);
        if (places.Count < 8 || reading.View.Name is not (View.Lateral or View.Ap))
        {
            return null;
        }

        MatchedElbow? best = null;
        foreach (var elbow in Likely(reading.Patient))
        {
            cancellation.ThrowIfCancellationRequested();
            var sided = elbow with { Side = reading.Side == Side.Unknown ? elbow.Side : reading.Side };
            foreach (var turn in Turns)
            {
                var pose = PoseOf(reading, turn);
                var truth = Simulation.Truth(sided, reading.View.Name, pose, Size);
                var pairs = truth.Landmarks.Where(l => l.Position is not null && places.ContainsKey(l.Name)).Select(l => (From: l.Position!.Value, To: places[l.Name])).ToList();
                if (pairs.Count < 8)
                {
                    continue;
                }

                var misfit = Misfit(pairs) / (truth.UnitWMillimetres / truth.ObjectPixelMillimetres);
                if (best is null || misfit < best.MisfitInW)
                {
                    best = new MatchedElbow(sided, reading.View.Name, pose, misfit);
                }
            }
        }

        return best;
    }

    private static IEnumerable<ElbowCase> Likely(Patient patient)
    {
        var age = (patient.AgeMonths ?? 40 * 12) / 12.0;
        var options = new SimulationOptions { FromAgeYears = age, ToAgeYears = age + 0.01, InjuredShare = 0 };
        return Enumerable.Range(0, 4 * Candidates).Select(i => Simulation.Sample(FirstSeed + (ulong)i, options))
            .Where(e => patient.Sex is not { } sex || e.Sex == sex).Take(Candidates);
    }

    private static ElbowPose PoseOf(FilmReading reading, double turn)
    {
        var lateral = reading.View.Name == View.Lateral;
        var flexion = reading.Measurements.FirstOrDefault(m => m.Name == "flexion-angle")?.Value;
        return new ElbowPose
        {
            FlexionDegrees = lateral ? flexion ?? 90 : 5,
            ForearmRotationDegrees = lateral ? 80 : 0,
            AxialRotationDegrees = turn,
            TiltDegrees = 0,
            FromBehind = false,
            SourceDetectorMillimetres = 1100,
            ObjectDetectorMillimetres = 40,
            CentralRayX = 0,
            CentralRayY = 0,
        };
    }

    // After the similarity that brings one set of points closest to the other, in pixels of the first: the closed form of
    // least squares in the plane, points as complex numbers. Both films show the same side, so nothing is mirrored,
    // unless the film itself is; the better of the two counts.
    private static double Misfit(List<(Point From, Point To)> pairs) => Math.Min(Residual(pairs, 1), Residual(pairs, -1));

    private static double Residual(List<(Point From, Point To)> pairs, int sign)
    {
        var (fx, fy) = (pairs.Average(p => p.From.X), pairs.Average(p => p.From.Y));
        var (tx, ty) = (pairs.Average(p => sign * p.To.X), pairs.Average(p => p.To.Y));
        double dot = 0, cross = 0, from = 0, to = 0;
        foreach (var (f, t) in pairs)
        {
            var (ax, ay, bx, by) = (f.X - fx, f.Y - fy, (sign * t.X) - tx, t.Y - ty);
            dot += (bx * ax) + (by * ay);
            cross += (bx * ay) - (by * ax);
            from += (ax * ax) + (ay * ay);
            to += (bx * bx) + (by * by);
        }

        // Residual of mapping the film onto the simulated one.
        return Math.Sqrt(Math.Max(0, from - (((dot * dot) + (cross * cross)) / Math.Max(1e-9, to))) / pairs.Count);
    }
}
