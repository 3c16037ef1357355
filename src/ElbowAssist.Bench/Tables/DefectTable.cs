using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Bench.Calibrating;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Bench.Tables;

/// <summary>
/// Films with a known defect: how often what the defect spoils is measured anyway, and how often the reason given is the
/// defect. A rotated film spoils what needs a true view; a level off the film, a nucleus not ossified or a closed physis
/// spoils what needs it. Exposure beyond the degrees of <see cref="Adequate"/> spoils what is shown of fat pads. Of every
/// fault of exposure the values given and held are told as well: edges blur by degrees.
/// </summary>
internal static class DefectTable
{
    private static readonly string[] Exposures =
        ["underexposed", "overexposed", "narrow-window", "flat-contrast", "motion", "low-resolution", "over-processed", "cropped"];

    public static Table Of(IReadOnlyList<ReadFilm> films) => new(
        "defects",
        "by simulated defect: spoiled values measured anyway (at most 5 %), and the reason named (at least 90 %)",
        ["view", "defect", "films", "spoiled", "measuredAnyway", "anywayShare", "reasonDue", "reasonNamed", "namedShare", "given", "heldShare"],
        [.. PromiseTables.ByView(films).Where(v => LandmarkSet.Of(v.Films[0].Truth.View.Name) is not null).SelectMany(v => Rows(v.View, v.Films))]);

    private static IEnumerable<IReadOnlyList<object>> Rows(string view, List<ReadFilm> films)
    {
        yield return Rotated(view, films);
        foreach (var row in Missing(view, films))
        {
            yield return row;
        }

        yield return Seen(view, "metal", films.FindAll(f => f.Truth.Context == FilmContext.Fixation), FilmReasons.HardwareSeen);
        yield return Seen(view, "no metal (reason falsely named)", films.FindAll(f => f.Truth.Context is not (FilmContext.Fixation or FilmContext.Cast)), FilmReasons.HardwareSeen);
        yield return Seen(view, "cast", films.FindAll(f => f.Truth.Context == FilmContext.Cast), FilmReasons.CastSeen);
        yield return Seen(view, "no cast (reason falsely named)", films.FindAll(f => f.Truth.Context != FilmContext.Cast), FilmReasons.CastSeen);
        foreach (var (defect, reason, hides, shown) in Adequate.Degrees)
        {
            yield return Exposed(view, defect, films.FindAll(f => f.Truth.Simulated is { } s && shown(s)), reason, hides);
            yield return Seen(view, $"well taken ({reason} falsely named)", films.FindAll(f => Adequate.Holds(f.Truth.Simulated)), reason);
        }

        foreach (var fault in Exposures)
        {
            yield return Seen(view, fault, films.FindAll(f => f.Truth.Simulated is { } s && Adequate.Faults(s).Contains(fault, StringComparer.Ordinal)), null);
        }
    }

    private static IReadOnlyList<object> Rotated(string view, List<ReadFilm> films)
    {
        var poor = films.FindAll(f => f.Truth.Simulated?.ViewErrorDegrees >= Adequate.PoorViewError);
        var needing = ViewMeasurements.Of(films[0].Truth.View.Name).Where(m => m.Conditions.Contains(FilmCondition.TrueView)).Select(m => m.Name).ToHashSet(StringComparer.Ordinal);
        var spoiled = poor.SelectMany(f => f.Reading.Measurements).Where(m => needing.Contains(m.Name) && CouldBeGiven(m)).ToList();
        var due = poor.FindAll(f => !f.Reading.Adequacy.Refused);
        return Row(view, FormattableString.Invariant($"rotated by at least {Adequate.PoorViewError} degrees"), poor, spoiled.Count, spoiled.Count(m => m.Value is not null), due.Count, due.Count(f => Names(f, FilmReasons.FilmRotated)));
    }

    // What another missing landmark or an unmet statement withholds anyway says nothing about rotation.
    private static bool CouldBeGiven(Measurement m) => m.Value is not null || m.Reasons.Contains(FilmReasons.FilmRotated, StringComparer.Ordinal);

    /// <summary>One row for each reason why a construction cannot be laid through the true landmarks.</summary>
    private static IEnumerable<IReadOnlyList<object>> Missing(string view, List<ReadFilm> films)
    {
        var set = LandmarkSet.Of(films[0].Truth.View.Name)!;
        var spoiled = films.Where(f => !f.Reading.Adequacy.Refused).SelectMany(f =>
        {
            var places = f.Truth.Landmarks.ToDictionary(l => l.Name, l => l.Position, StringComparer.Ordinal);
            var laid = LaidLandmarks.Exact(set, [.. set.Landmarks.Select(l => places.GetValueOrDefault(l.Name))], FilmScale.Of(f.Truth.Image.RowSpacingMm, f.Truth.Image.ColumnSpacingMm));
            return FilmMeasuring.Measure(laid, RedrawOptions.Default).Where(v => v.Value is null)
                .SelectMany(v => v.Reasons.Select(r => (Film: f, Reason: r, Read: f.Reading.Measurements.FirstOrDefault(m => m.Name == v.Definition.Name))));
        }).Where(s => s.Read is not null).ToList();
        foreach (var reason in spoiled.GroupBy(s => s.Reason, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var all = reason.ToList();
            var withheld = all.FindAll(s => s.Read!.Value is null);
            yield return Row(
                view, reason.Key, [.. all.Select(s => s.Film).Distinct()], all.Count, all.Count - withheld.Count, withheld.Count,
                withheld.Count(s => Names(s.Film, reason.Key)));
        }
    }

    /// <summary>Films exposed beyond a degree: where it hides soft tissue it spoils what is shown of fat pads, while lines say by their spread what they bear.</summary>
    private static IReadOnlyList<object> Exposed(string view, string defect, List<ReadFilm> films, string reason, bool hidesSoftTissue)
    {
        var told = films.FindAll(f => !f.Reading.Adequacy.Refused);
        var pads = told.Where(_ => hidesSoftTissue).SelectMany(f => f.Reading.Evidence).ToList();
        return Row(
            view, defect, films, pads.Count, pads.Count(e => e.State == EvidenceState.LookHere), told.Count, told.Count(f => Names(f, reason)));
    }

    private static IReadOnlyList<object> Seen(string view, string defect, List<ReadFilm> films, string? reason)
    {
        var told = films.FindAll(f => !f.Reading.Adequacy.Refused);
        return Row(view, defect, films, 0, 0, reason is null ? 0 : told.Count, reason is null ? 0 : told.Count(f => Names(f, reason)));
    }

    private static bool Names(ReadFilm film, string reason) => film.Reading.Reasons.Any(r => r.Code == reason);

    private static IReadOnlyList<object> Row(string view, string defect, List<ReadFilm> films, int spoiled, int anyway, int due, int named)
    {
        var given = films.SelectMany(f => f.Score.Measurements).Where(m => m.Redraw95 is not null).ToList();
        return
        [
            view, defect, films.Count, spoiled, anyway, PromiseTables.Share(anyway, spoiled), due, named, PromiseTables.Share(named, due),
            given.Count, PromiseTables.Share(given.Count(m => m.Covered == true), given.Count),
        ];
    }
}
