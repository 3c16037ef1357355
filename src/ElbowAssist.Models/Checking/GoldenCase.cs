using System.Text.Json;
using ElbowAssist.Models.Folders;

namespace ElbowAssist.Models.Checking;

/// <summary>The expected outputs of a golden case, <c>golden/output.json</c>.</summary>
internal sealed record GoldenCase
{
    public required GoldenTolerance Tolerance { get; init; }

    public required IReadOnlyList<GoldenPoint> Points { get; init; }

    public GoldenViewError? ViewError { get; init; }

    public IReadOnlyList<double[]>? Covariance { get; init; }

    public IReadOnlyList<double>? Visibility { get; init; }

    public IReadOnlyList<double>? View { get; init; }

    public static GoldenCase? Read(string path) =>
        JsonSerializer.Deserialize<GoldenCase>(File.ReadAllBytes(path), ModelManifest.JsonOptions);
}

/// <summary>How far a machine may differ: points in input pixels, other numbers relative to the largest of their kind.</summary>
internal sealed record GoldenTolerance(double Pixels, double Relative);

internal sealed record GoldenPoint(string Name, double X, double Y, double Share);

internal sealed record GoldenViewError(double Mean, double Sd);
