using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Models.Folders;

namespace ElbowAssist.Models.Checking;

/// <summary>
/// Opens a model folder, loads its network and runs its golden case: an input whose outputs were written down when the
/// model was made.
/// </summary>
public static class ModelCheck
{
    /// <summary>Checks a folder.</summary>
    /// <returns>What does not fit, a sentence each; empty if everything fits.</returns>
    public static IReadOnlyList<string> Run(string folder)
    {
        try
        {
            var opened = ModelFolder.Open(folder);
            return opened.Manifest.Task == "view" ? CheckView(opened) : CheckLandmarks(opened);
        }
        catch (ModelFolderException e)
        {
            return [e.Message];
        }
    }

    private static List<string> CheckLandmarks(ModelFolder folder)
    {
        using var model = LandmarkModel.Load(folder, threads: 1);
        var golden = ReadGolden(folder, out var input);
        using var lease = model.Rent();
        input.CopyTo(lease.Values);
        var pass = model.Run(lease, isMirrored: false);

        var findings = new List<string>();
        var points = model.Landmarks.Zip(pass.Proposals, (n, p) => (n, p.Position, p.Share)).ToList();
        ComparePoints(folder, golden, points, findings);
        Compare(folder, "covariance", golden.Covariance?.SelectMany(c => c),
            pass.Proposals.SelectMany(p => p.Spread is { } s ? new[] { s.XX, s.XY, s.YY } : [0, 0, 0]), golden.Tolerance.Relative, findings);
        Compare(folder, "visibility", golden.Visibility?.Select(LandmarkModel.Probability),
            pass.Proposals.Select(p => p.Visibility), golden.Tolerance.Relative, findings);
        CompareViewError(folder, golden, pass.ViewError, findings);
        return findings;
    }

    private static List<string> CheckView(ModelFolder folder)
    {
        using var model = ViewModel.Load(folder, threads: 1);
        var golden = ReadGolden(folder, out var input);
        using var lease = model.Rent();
        input.CopyTo(lease.Values);
        var pass = model.Run(lease);

        var findings = new List<string>();
        ComparePoints(
            folder, golden,
            [
                ("shaft", pass.Shaft.Position, pass.Shaft.Share), ("joint", pass.Joint.Position, pass.Joint.Share),
                ("forearm", pass.Forearm.Position, pass.Forearm.Share), ("mark", pass.Mark.Position, pass.Mark.Share),
            ],
            findings);
        var classes = folder.Manifest.Outputs.View!.Classes;
        Compare(folder, "view", golden.View is null ? null : SoftMax(golden.View), classes.Select(c => pass.Probabilities[c]), golden.Tolerance.Relative, findings);
        CompareViewError(folder, golden, pass.ViewError, findings);
        return findings;
    }

    private static GoldenCase ReadGolden(ModelFolder folder, out float[] input)
    {
        try
        {
            var bytes = File.ReadAllBytes(Path.Combine(folder.Path, "golden", "input.bin"));
            input = MemoryMarshal.Cast<byte, float>(bytes).ToArray();
            if (input.Length != folder.Manifest.Input.Width * folder.Manifest.Input.Height)
            {
                throw new ModelFolderException(folder.Path, "has a golden input of another size than its network takes.");
            }

            return GoldenCase.Read(Path.Combine(folder.Path, "golden", "output.json")) is { } golden && golden.Points.All(p => p?.Name is not null) && golden.Covariance?.All(c => c is not null) != false
                ? golden
                : throw new ModelFolderException(folder.Path, "has an empty golden output, or one with empty entries.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            throw new ModelFolderException(folder.Path, "has no readable golden case (golden/input.bin and golden/output.json).", e);
        }
    }

    private static void ComparePoints(
        ModelFolder folder, GoldenCase golden, List<(string Name, Point Position, double Share)> points, List<string> findings)
    {
        foreach (var expected in golden.Points)
        {
            var (name, position, share) = points.Find(p => p.Name == expected.Name);
            if (name is null)
            {
                findings.Add(Sentence(folder, $"does not give the golden point {expected.Name}."));
                continue;
            }

            var distance = position.DistanceTo(new Point(expected.X, expected.Y));
            if (!(distance <= golden.Tolerance.Pixels) || !(Math.Abs(share - expected.Share) <= golden.Tolerance.Relative))
            {
                findings.Add(Sentence(folder, $"places {name} {distance:F3} pixels from where it was when the model was made."));
            }
        }
    }

    private static void CompareViewError(ModelFolder folder, GoldenCase golden, ViewError? actual, List<string> findings) =>
        Compare(folder, "view error", golden.ViewError is { } e && actual is not null ? [e.Mean, e.Sd] : null,
            actual is { } a ? [a.Degrees, a.StandardDeviation] : [], golden.Tolerance.Relative, findings);

    private static void Compare(
        ModelFolder folder, string what, IEnumerable<double>? expected, IEnumerable<double> actual, double relative, List<string> findings)
    {
        if (expected?.ToList() is not { Count: > 0 } wanted)
        {
            return;
        }

        var got = actual.ToList();
        var largest = wanted.Max(Math.Abs);
        if (got.Count != wanted.Count || got.Zip(wanted).Any(p => !(Math.Abs(p.First - p.Second) <= relative * Math.Max(1, largest))))
        {
            findings.Add(Sentence(folder, $"gives another {what} than when the model was made."));
        }
    }

    private static IEnumerable<double> SoftMax(IReadOnlyList<double> logits)
    {
        var highest = logits.Max();
        var total = logits.Sum(l => Math.Exp(l - highest));
        return logits.Select(l => Math.Exp(l - highest) / total);
    }

    private static string Sentence(ModelFolder folder, FormattableString text) =>
        new ModelFolderException(folder.Path, text.ToString(CultureInfo.InvariantCulture)).Message;
}
