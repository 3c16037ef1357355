using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Scoring;

/// <summary>Compares a reading with the truth of its film.</summary>
public static class FilmScorer
{
    /// <summary>The score of one film. Lengths are taken after scaling by the truth's pixel spacing.</summary>
    public static FilmScore Score(TruthFile truth, FilmReading reading)
    {
        ArgumentNullException.ThrowIfNull(truth);
        ArgumentNullException.ThrowIfNull(reading);
        var scale = new Scale(truth.Image.ColumnSpacingMm ?? 1, truth.Image.RowSpacingMm ?? 1);
        var laid = reading.Landmarks.ToDictionary(l => l.Name, StringComparer.Ordinal);
        var drawn = reading.Lines.ToLookup(l => l.Name, StringComparer.Ordinal);
        var read = reading.Measurements.ToDictionary(m => m.Name, StringComparer.Ordinal);
        return new FilmScore
        {
            File = truth.Image.File,
            View = truth.View.Name,
            AgeMonths = truth.Patient.AgeMonths ?? truth.Simulated?.AgeMonths,
            Injuries = truth.Simulated?.Injuries ?? [],
            TrueViewErrorDegrees = truth.Simulated?.ViewErrorDegrees,
            ReadView = reading.View.Name,
            ViewErrorDifference = reading.View.ErrorDegrees - truth.Simulated?.ViewErrorDegrees,
            Refused = reading.Adequacy.Refused,
            Reasons = [.. reading.Reasons.Select(r => r.Code)],
            LengthUnit = truth.Image.ColumnSpacingMm is null ? "px" : "mm",
            Landmarks = [.. truth.Landmarks.Select(t => Score(t, laid.GetValueOrDefault(t.Name), scale))],
            // An angle draws both its legs under one name, always in the same order.
            Lines =
            [
                .. truth.Lines.GroupBy(t => t.Name, StringComparer.Ordinal)
                    .SelectMany(legs => legs.Zip(drawn[legs.Key], (t, d) => Score(t, d, scale))),
            ],
            Measurements =
            [
                .. truth.Measurements.Where(t => t.Value is not null && read.ContainsKey(t.Name))
                    .Select(t => Score(t, read[t.Name])),
            ],
        };
    }

    private static LandmarkScore Score(TrueLandmark truth, Landmark? laid, Scale scale)
    {
        if (truth.Position is not { } place || laid?.Position is not { } position)
        {
            return new LandmarkScore(
                truth.Name, truth.Kind, truth.Position is not null, laid?.Position is not null, null, null, null, null);
        }

        var error = scale.Of(position - place);
        double? normal = null, slip = null;
        if (truth.Tangent is { } tangent)
        {
            var along = scale.Of(tangent).Unit;
            normal = Math.Abs(along.Cross(error));
            slip = Math.Abs(along.Dot(error));
        }

        return new LandmarkScore(
            truth.Name, truth.Kind, true, true, error.Length, normal, slip, Mahalanobis(position - place, laid.Covariance));
    }

    private static double? Mahalanobis(Vector error, Covariance? covariance)
    {
        if (covariance is not { } c)
        {
            return null;
        }

        var determinant = (c.XX * c.YY) - (c.XY * c.XY);
        return determinant <= 0
            ? null
            : ((c.YY * error.X * error.X) - (2 * c.XY * error.X * error.Y) + (c.XX * error.Y * error.Y)) / determinant;
    }

    private static LineScore Score(NamedLine truth, NamedLine drawn, Scale scale)
    {
        Vector a = scale.Of(truth.Direction), b = scale.Of(drawn.Direction);
        var angle = Math.Atan2(Math.Abs(a.Cross(b)), Math.Abs(a.Dot(b))) * 180 / Math.PI;
        var offset = Math.Abs(b.Unit.Cross(scale.Of(truth.Point - drawn.Point)));
        return new LineScore(truth.Name, angle, offset);
    }

    private static MeasurementScore Score(Measurement truth, Measurement read) => new(
        truth.Name,
        truth.Unit,
        read.State,
        truth.Value!.Value,
        read.Value - truth.Value,
        read.Redraw95,
        read.Zones,
        ZoneOf(truth));

    /// <summary>The zone in which the true value lies, or null where the measurement has no zones.</summary>
    private static string? ZoneOf(Measurement truth) =>
        ViewMeasurements.Lateral.Concat(ViewMeasurements.Ap).FirstOrDefault(m => m.Name == truth.Name)?
            .Zones.FirstOrDefault(z => z.Holds(truth.Value!.Value))?.Name;

    private readonly record struct Scale(double X, double Y)
    {
        public Vector Of(Vector v) => new(v.X * X, v.Y * Y);
    }
}
