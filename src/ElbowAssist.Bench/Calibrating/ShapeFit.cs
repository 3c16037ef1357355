using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Pipeline.Calibration;
using MathNet.Numerics.LinearAlgebra;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>Fits the shapes that the true landmarks of each bone take: generalised Procrustes alignment, then main modes.</summary>
internal static class ShapeFit
{
    private const int MostModes = 10;
    private const int Rounds = 5;
    private const int FewestFilms = 20;

    private static readonly (string Name, string[] Beginnings)[] Bones =
        [("humerus", ["humerus.", "capitellum.", "trochlea."]), ("radius", ["radius."]), ("ulna", ["ulna."])];

    public static IReadOnlyList<ShapeModel> Of(IReadOnlyList<CalibrationFilm> films, LandmarkSet set) =>
    [
        .. Bones.Select(b => Fit(
            b.Name,
            [.. set.Landmarks.Select(l => l.Name).Where(n => b.Beginnings.Any(start => n.StartsWith(start, StringComparison.Ordinal)))],
            films)).OfType<ShapeModel>(),
    ];

    private static ShapeModel? Fit(string bone, string[] names, IReadOnlyList<CalibrationFilm> films)
    {
        var shapes = films.Select(f => Seen(f, names)).Where(s => s.Count(p => p is not null) >= Math.Max(ShapeModel.Fewest, names.Length / 2)).ToList();
        if (shapes.Count < FewestFilms || Start(shapes) is not { } mean)
        {
            return null;
        }

        var aligned = shapes;
        for (var round = 0; round < Rounds; round++)
        {
            aligned = [.. shapes.Select(s => Aligned(s, mean)).OfType<Point?[]>()];
            mean = Unit([.. Enumerable.Range(0, names.Length).Select(i => Mean(aligned, i, mean[i]))]);
        }

        var size = 2 * names.Length;
        var moment = Matrix<double>.Build.Dense(size, size, (r, c) => Moment(aligned, mean, r, c));
        var eigen = moment.Evd(Symmetricity.Symmetric);
        var values = eigen.EigenValues.Select(v => Math.Max(0, v.Real)).Reverse().ToArray();
        var kept = Math.Min(MostModes, size / 3);
        var residual = Math.Max(1e-5, values.Skip(kept).Average());
        return new ShapeModel(
            bone,
            names,
            [.. mean.SelectMany(p => new[] { Math.Round(p.X, 5), Math.Round(p.Y, 5) })],
            [
                .. Enumerable.Range(0, kept).Select(k => eigen.EigenVectors.Column(size - 1 - k)
                    .Select(v => Math.Round(v * Math.Sqrt(Math.Max(0, values[k] - residual)), 5)).ToArray()),
            ],
            Math.Round(residual, 7),
            aligned.Count);
    }

    private static Point?[] Seen(CalibrationFilm film, string[] names)
    {
        var pose = film.Proposed.Proposals.Landmarks!.FilmToCrop;
        var places = film.Truth.Landmarks.ToDictionary(l => l.Name, l => l.Position, StringComparer.Ordinal);
        return [.. names.Select(n => places.GetValueOrDefault(n) is { } p ? pose.Apply(p) : (Point?)null)];
    }

    // The first film that shows every landmark; the order of films does not matter much after a few rounds.
    private static Point[]? Start(List<Point?[]> shapes) =>
        shapes.Find(s => s.All(p => p is not null)) is { } whole ? Unit([.. whole.Select(p => p!.Value)]) : null;

    private static Point?[]? Aligned(Point?[] shape, Point[] mean)
    {
        int[] seen = [.. Enumerable.Range(0, shape.Length).Where(i => shape[i] is not null)];
        return Procrustes.Onto([.. seen.Select(i => shape[i]!.Value)], [.. seen.Select(i => mean[i])]) is { } onto
            ? [.. shape.Select(p => p is { } q ? onto.Apply(q) : (Point?)null)]
            : null;
    }

    private static Point Mean(List<Point?[]> shapes, int i, Point before)
    {
        var seen = shapes.Select(s => s[i]).OfType<Point>().ToList();
        return seen.Count == 0 ? before : new Point(seen.Average(p => p.X), seen.Average(p => p.Y));
    }

    private static Point[] Unit(Point[] shape)
    {
        var centre = new Point(shape.Average(p => p.X), shape.Average(p => p.Y));
        var size = Math.Sqrt(shape.Average(p => (p - centre).Dot(p - centre)));
        return [.. shape.Select(p => new Point((p.X - centre.X) / size, (p.Y - centre.Y) / size))];
    }

    private static double Moment(List<Point?[]> shapes, Point[] mean, int row, int column)
    {
        double sum = 0;
        var count = 0;
        foreach (var shape in shapes)
        {
            if (shape[row / 2] is { } p && shape[column / 2] is { } q)
            {
                sum += Departure(p, mean[row / 2], row) * Departure(q, mean[column / 2], column);
                count++;
            }
        }

        return count < 5 ? 0 : sum / count;
    }

    private static double Departure(Point p, Point mean, int coordinate) => int.IsEvenInteger(coordinate) ? p.X - mean.X : p.Y - mean.Y;
}
