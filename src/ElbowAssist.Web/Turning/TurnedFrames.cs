using System.Globalization;
using System.Text;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Drawing;
using ElbowAssist.Phantom;
using ElbowAssist.Phantom.Output;
using ElbowAssist.Phantom.Rendering;
using ElbowAssist.Reading;

namespace ElbowAssist.Web.Turning;

/// <summary>A matched elbow turned step by step.</summary>
/// <param name="Words">What it is and how well it fits; what it cannot say.</param>
/// <param name="Frames">One for each step, from one side to the other.</param>
public sealed record TurnedElbow(string Words, IReadOnlyList<TurnedFrame> Frames);

/// <summary>One step.</summary>
/// <param name="Degrees">Turn of the humerus about its shaft, from where it fits the film best.</param>
/// <param name="Picture">The simulated film as a PNG, base64.</param>
/// <param name="Overlay">Its lines, as SVG.</param>
/// <param name="Values">What is measured on it, in words.</param>
public sealed record TurnedFrame(int Degrees, string Picture, string Overlay, IReadOnlyList<string> Values);

/// <summary>Renders a matched elbow at every step of the turn.</summary>
internal static class TurnedFrames
{
    private const int Reach = 20;
    private const int Step = 5;

    // Attenuation per millimetre, roughly at 60 kV (choice of this project, for looking only).
    private const double BoneRate = 0.075, SoftRate = 0.021, FatRate = 0.018;

    private static readonly string[] Shown =
        ["anterior-humeral-line.position", "radiocapitellar-line.lateral.neck.offset", "radiocapitellar-line.ap.neck.offset", "shaft-condylar-angle", "true-lateral.arc-offset", "baumann-angle"];

    public static TurnedElbow Of(MatchedElbow match, ToolIdentity tool, CancellationToken cancellation)
    {
        List<TurnedFrame> frames = [];
        for (var degrees = -Reach; degrees <= Reach; degrees += Step)
        {
            cancellation.ThrowIfCancellationRequested();
            var pose = match.Pose with { AxialRotationDegrees = match.Pose.AxialRotationDegrees + degrees };
            var projection = Simulation.Project(match.Elbow, match.View, pose, MatchedElbow.Size);
            var reading = Reading(projection, tool);
            frames.Add(new(
                degrees,
                Convert.ToBase64String(Picture(projection.Paths)),
                Encoding.UTF8.GetString(OverlaySvg.Write(reading, new OverlayOptions { Landmarks = false, Legend = false })),
                [.. reading.Measurements.Select(m => $"{ReadingWords.Title(m.Name)}: {Value(m)}")]));
        }

        var words = string.Create(CultureInfo.InvariantCulture,
            $"A simulated, uninjured elbow of this age and sex, not this patient. Its landmarks lie on this film's to within {match.MisfitInW:0.0} shaft widths. It shows what turning alone does to the lines; whether the film or the bone is turned, it cannot tell.");
        return new(words, frames);
    }

    // The interval of exact landmarks says nothing, so the value stands alone.
    private static string Value(Measurement m) => ReadingWords.Value(m)!.Split(" (", 2)[0];

    // Every construction on the exact landmarks, as the truth of a simulated film is measured: what a real film could not
    // carry at such a turn is shown here on purpose.
    private static FilmReading Reading(Projection projection, ToolIdentity tool)
    {
        var truth = projection.Truth;
        var set = LandmarkSet.Of(truth.View)!;
        var exact = LaidLandmarks.Exact(set, [.. truth.Landmarks.Select(l => l.Position)], FilmScale.Of(truth.ObjectPixelMillimetres, truth.ObjectPixelMillimetres));
        List<MeasuredValue> values = [.. FilmMeasuring.Measure(exact, RedrawOptions.Default with { Draws = 2 }).Where(v => v.Value is not null && Shown.Contains(v.Definition.Name, StringComparer.Ordinal))];
        return new FilmReading
        {
            Tool = tool,
            Models = [],
            Image = new ImageFacts("simulated", MatchedElbow.Size, MatchedElbow.Size, truth.ObjectPixelMillimetres, truth.ObjectPixelMillimetres, "simulated", ""),
            View = new ViewFinding(truth.View, new Dictionary<string, double>(StringComparer.Ordinal), null),
            Side = truth.Side,
            Patient = new Patient(truth.AgeMonths, truth.Sex),
            Context = FilmContext.Acute,
            Adequacy = new Adequacy(false, [], [], []),
            Landmarks = [.. truth.Landmarks.Select(l => new Landmark(l.Name, l.Kind, l.Position, null, l.Position is null ? 0 : 1, LandmarkSource.Model))],
            Lines = [.. values.SelectMany(v => v.Lines.Select(l => new NamedLine(v.Definition.Name, l.Line.Point, l.Line.Direction)))],
            Circles = [.. values.SelectMany(v => v.Circles).DistinctBy(c => c.Name, StringComparer.Ordinal).Select(c => new NamedCircle(c.Name, c.Circle.Centre, c.Circle.Radius))],
            Measurements = [.. values.Select(Measurement.Exact)],
            Evidence = [],
            Prompts = [],
            Reasons = [],
            Timing = new Dictionary<string, double>(StringComparer.Ordinal),
        };
    }

    private static byte[] Picture(PathImage paths)
    {
        var pixels = new ushort[paths.Width * paths.Height];
        for (var i = 0; i < pixels.Length; i++)
        {
            var depth = (BoneRate * paths.Bone[i]) + (SoftRate * paths.Soft[i]) + (FatRate * paths.Fat[i]) + (0.5 * paths.Metal[i]);
            pixels[i] = (ushort)(ushort.MaxValue * Math.Pow(1 - Math.Exp(-0.75 * depth), 1.3));
        }

        using var png = new MemoryStream();
        GreyPng.Write(png, pixels, paths.Width, paths.Height);
        return png.ToArray();
    }
}
