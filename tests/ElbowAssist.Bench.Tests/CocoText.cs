using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Testing;

namespace ElbowAssist.Bench.Tests;

/// <summary>COCO files of an invented elbow that is laid again and again, moved by known distances.</summary>
internal static class CocoText
{
    private static readonly IReadOnlyList<Landmark> Elbow = new InventedElbow().Landmarks(View.Lateral, 0.1, LandmarkSource.Reader);

    /// <summary>Labels and places of one film.</summary>
    /// <param name="File">File name.</param>
    /// <param name="Patient">Patient.</param>
    /// <param name="Spacing">Spacing in mm, or null.</param>
    /// <param name="Laid">Who laid the elbow, with proposals or not, and how far moved, in pixels.</param>
    internal sealed record Film(string File, string? Patient, double? Spacing, params (string Annotator, bool WithProposals, Vector Moved)[] Laid)
    {
        public string Site { get; init; } = "north";

        public IReadOnlyList<string> Injuries { get; init; } = [];
    }

    public static int Landmarks => Elbow.Count(l => l.Position is not null);

    public static byte[] Of(params Film[] films) => JsonSerializer.SerializeToUtf8Bytes(new
    {
        images = films.Select((f, i) => new
        {
            id = i + 1,
            file_name = f.File,
            width = 400,
            height = 400,
            rowSpacingMm = f.Spacing,
            columnSpacingMm = f.Spacing,
            patient = f.Patient,
            site = f.Site,
            ageMonths = 480,
            injuries = f.Injuries,
        }),
        annotations = films.SelectMany((f, i) => f.Laid.Select(l => new
        {
            image_id = i + 1,
            category_id = 7,
            annotator = l.Annotator,
            withProposals = l.WithProposals,
            keypoints = Keypoints(l.Moved),
        })),
        categories = new[] { new { id = 7, name = "elbow", keypoints = Elbow.Select(l => l.Name) } },
    });

    /// <summary>The list that COCO calls results.</summary>
    public static byte[] Results(params (int Image, Vector Moved)[] laid) => JsonSerializer.SerializeToUtf8Bytes(
        laid.Select(l => new { image_id = l.Image, category_id = 7, keypoints = Keypoints(l.Moved), score = 0.9 }));

    // COCO counts from the centre of the top-left pixel.
    private static IEnumerable<double> Keypoints(Vector moved) => Elbow.SelectMany(l => l.Position is { } p
        ? new[] { p.X + moved.X - 0.5, p.Y + moved.Y - 0.5, 2 }
        : [0, 0, 0]);
}
