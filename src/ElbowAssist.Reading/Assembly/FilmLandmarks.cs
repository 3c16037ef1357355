using System.Buffers;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Spread;
using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Reading.Assembly;

/// <summary>The landmarks of a film put in the order of its view, and those of them that constructions may use.</summary>
internal sealed class FilmLandmarks
{
    private FilmLandmarks(LandmarkSet set, Landmark[] all, LaidLandmarks laid, IReadOnlySet<string> assumed)
    {
        Set = set;
        All = all;
        Laid = laid;
        AssumedSpread = assumed;
    }

    public LandmarkSet Set { get; }

    /// <summary>All landmarks of the view in the fixed order.</summary>
    public IReadOnlyList<Landmark> All { get; }

    /// <summary>The usable ones with their joint spread.</summary>
    public LaidLandmarks Laid { get; }

    /// <summary>Names of landmarks whose spread is not known and was assumed.</summary>
    public IReadOnlySet<string> AssumedSpread { get; }

    public static FilmLandmarks Of(ReadingInput input, LandmarkSet set, AdequacyLimits limits)
    {
        var given = new Dictionary<string, Landmark>(StringComparer.Ordinal);
        foreach (var landmark in input.Landmarks)
        {
            given[landmark.Name] = landmark;
        }

        Landmark[] all = [.. set.Landmarks.Select(d => given.TryGetValue(d.Name, out var l) ? Cleaned(l) : Missing(d))];
        var unusable = input.Unusable.Select(u => u.Name).ToHashSet(StringComparer.Ordinal);
        Point?[] usable = [.. all.Select(l => IsSeen(l, limits) && !unusable.Contains(l.Name) ? l.Position : null)];
        var scale = FilmScale.Of(input.Image.RowSpacingMm, input.Image.ColumnSpacingMm);
        var assumedDeviation = limits["reader.assumed-spread"] * ShaftWidth.InPixels(set, usable);
        var assumed = all.Where((l, i) => usable[i] is not null && l.Covariance is null && !InJoint(input, l))
            .Select(l => l.Name).ToHashSet(StringComparer.Ordinal);
        var spread = Spread(input, all, usable, assumedDeviation);
        return new FilmLandmarks(set, all, LaidLandmarks.WithSpread(set, usable, spread, scale), assumed);
    }

    private static bool IsSeen(Landmark landmark, AdequacyLimits limits) =>
        landmark.Position is not null &&
        (landmark.Source == LandmarkSource.Reader || landmark.Visibility >= limits["landmark.visibility"]);

    private static bool InJoint(ReadingInput input, Landmark landmark) =>
        input.Spread is not null && landmark.Source == LandmarkSource.Model;

    private static Landmark Cleaned(Landmark landmark)
    {
        var position = landmark.Position is { } p && InputLimits.Holds(p) ? p : (Point?)null;
        var covariance = position is not null && landmark.Covariance is { IsValid: true } c && InputLimits.Holds(c) ? c : (Covariance?)null;
        var visibility = double.IsFinite(landmark.Visibility) ? Math.Clamp(landmark.Visibility, 0, 1) : 0;
        return landmark with { Position = position, Covariance = covariance, Visibility = visibility };
    }

    private static Landmark Missing(LandmarkDefinition definition) =>
        new(definition.Name, definition.Kind, null, null, 0, LandmarkSource.Model);

    private static JointCovariance Spread(ReadingInput input, Landmark[] all, Point?[] usable, double assumedDeviation)
    {
        var size = 2 * all.Length;
        using var rented = MemoryPool<double>.Shared.Rent(size * size);
        var matrix = rented.Memory.Span[..(size * size)];
        matrix.Clear();
        for (var i = 0; i < all.Length; i++)
        {
            for (var j = 0; j < all.Length; j++)
            {
                if (usable[i] is null || usable[j] is null)
                {
                    continue;
                }

                if (InJoint(input, all[i]) && InJoint(input, all[j]))
                {
                    Block(matrix, size, i, j, input.Spread!);
                }
                else if (i == j)
                {
                    var own = all[i].Covariance ?? Covariance.Isotropic(assumedDeviation);
                    matrix[(2 * i * size) + (2 * i)] = own.XX;
                    matrix[(2 * i * size) + (2 * i) + 1] = own.XY;
                    matrix[(((2 * i) + 1) * size) + (2 * i)] = own.XY;
                    matrix[(((2 * i) + 1) * size) + (2 * i) + 1] = own.YY;
                }
            }
        }

        return JointCovariance.TryCreate(all.Length, matrix, out var joint, out var problem)
            ? joint
            : throw new InvalidOperationException(problem);
    }

    private static void Block(Span<double> matrix, int size, int i, int j, JointCovariance joint)
    {
        for (var row = 0; row < 2; row++)
        {
            for (var column = 0; column < 2; column++)
            {
                matrix[(((2 * i) + row) * size) + (2 * j) + column] = joint[(2 * i) + row, (2 * j) + column];
            }
        }
    }
}
