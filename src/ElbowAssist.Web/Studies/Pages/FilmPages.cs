using System.Globalization;
using System.Text;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Rules.References;
using ElbowAssist.Drawing;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store.Entries;

namespace ElbowAssist.Web.Studies.Pages;

/// <summary>From a film to what the page may show of it.</summary>
internal static class FilmPages
{
    private static readonly OverlayOptions LinesOnly = new() { Landmarks = false, Legend = false };

    public static FilmPage Of(OpenStudy study, OpenFilm film)
    {
        if (OpenStudy.Unreadable(film) is { } sentence)
        {
            return Bare(film, "unreadable") with { Message = sentence };
        }

        if (!film.Opened.IsCompletedSuccessfully)
        {
            return Bare(film, "reading");
        }

        var opened = film.Opened.Result;
        var page = Bare(film, "reading") with
        {
            Width = opened.Radiograph.Width,
            Height = opened.Radiograph.Height,
            OwnLines = [.. study.Status.OwnLines.Values.Where(l => l.FilmId == film.Stored.Id).Select(l => Own(study, film, l, null))],
            Brought = [.. study.Status.Brought.Where(l => l.FilmId == film.Stored.Id && study.Status.OwnLines.ContainsKey((l.FilmId, l.Name)))
                .Select(l => new BroughtLinePage(l.Name, [l.From.X, l.From.Y], [l.To.X, l.To.Y], l.ByTeacher))],
        };
        if (film.Proposal(study.Stated(film)?.View ?? Anatomy.View.Unknown).IsFaulted)
        {
            return page with { State = "unreadable", Message = "The tool could not read this film; you can still look at it and lay your own lines." };
        }

        return study.Reading(film) is { } reading ? Read(study, film, page, reading) : page;
    }

    public static AlignmentPage Alignment(FilmReading shown, bool partial)
    {
        var sentences = Sentences(shown);
        return new(
            partial,
            Encoding.UTF8.GetString(OverlaySvg.Write(shown, LinesOnly)),
            [.. shown.Measurements.Select(m => new MeasurementPage(
                m.Name,
                ReadingWords.Title(m.Name),
                ReadingWords.Value(m),
                ReadingWords.State(m.State),
                Texts(m.Reasons, sentences),
                m.Note,
                m.Source,
                m.Value is null ? [] : [.. ReferenceTable.For(m.Name, shown.Patient).Select(r => $"{r.Text} ({r.Source.Citation})")]))],
            partial ? [] : [.. shown.Landmarks.Select(l => new LandmarkPage(l.Name, l.Position?.X, l.Position?.Y, l.Source == LandmarkSource.Reader, l.Covariance is { } c ? Ellipse(c) : null))]);
    }

    /// <summary>What moves while a landmark is dragged.</summary>
    public static TriedPage Tried(FilmReading shown)
    {
        var sentences = Sentences(shown);
        return new(
            Encoding.UTF8.GetString(OverlaySvg.Write(shown, LinesOnly)),
            [.. shown.Measurements.Select(m => new TriedMeasurement(m.Name, ReadingWords.Value(m), ReadingWords.State(m.State), Texts(m.Reasons, sentences)))]);
    }

    private static FilmPage Read(OpenStudy study, OpenFilm film, FilmPage page, FilmReading reading)
    {
        var status = study.Status;
        var id = film.Stored.Id;
        page = page with
        {
            State = reading.Adequacy.Refused ? "refused" : "ready",
            View = Vocabularies.View.WordOf(reading.View.Name),
            Side = Vocabularies.Side.WordOf(reading.Side),
            SideContradicted = reading.Side == Anatomy.Side.Unknown && film.Opened.Result.Facts.SideStatements.Select(s => s.Side).Distinct().Count() > 1,
            Context = Vocabularies.Context.WordOf(reading.Context),
        };
        if (reading.Adequacy.Refused)
        {
            // A refusal shows nothing of the film's content, and comes at once: it is help, not a proposal.
            return page with { Refusal = [.. reading.Reasons.Select(r => r.Text)] };
        }

        var alignment = Curtain.Alignment(reading, status, id);
        return page with
        {
            Carries = Curtain.Shows(status, WalkTopic.Views) ? Carries(reading) : null,
            Alignment = alignment is null ? null : Alignment(alignment, !Curtain.Shows(status, WalkTopic.Alignment)),
            Evidence = Curtain.Shows(status, WalkTopic.Effusion)
                ? [.. reading.Evidence.Select(e => new EvidencePage(e.Name, ReadingWords.Title(e.Name), e.State == EvidenceState.LookHere))]
                : null,
            OwnLines = [.. status.OwnLines.Values.Where(l => l.FilmId == id).Select(l => Own(study, film, l, alignment))],
        };
    }

    private static CarriesPage Carries(FilmReading reading)
    {
        var sentences = Sentences(reading);
        return new(
            [.. reading.Adequacy.CanCarry.Select(ReadingWords.Title)],
            [.. reading.Adequacy.CannotCarry.GroupBy(c => string.Join(' ', Texts(c.Reasons, sentences)), StringComparer.Ordinal)
                .Select(g => new CannotPage(string.Join("; ", g.Select(c => ReadingWords.Title(c.Name))), Texts(g.First().Reasons, sentences)))],
            reading.View.ErrorDegrees);
    }

    private static OwnLinePage Own(OpenStudy study, OpenFilm film, OwnLineLaid line, FilmReading? alignment)
    {
        var compared = alignment is not null && (Curtain.Shows(study.Status, WalkTopic.Alignment) || study.Status.Compared.Contains((film.Stored.Id, line.Name)));
        return new(line.Name, [line.From.X, line.From.Y], [line.To.X, line.To.Y], compared, compared ? Words(line, alignment!) : null);
    }

    private static string Words(OwnLineLaid line, FilmReading alignment)
    {
        if (LineDifference.Of(line, alignment) is not { } difference)
        {
            return "The tool lays no such line on this film, so there is nothing to compare with; the reasons stand beside the measurement.";
        }

        var length = difference.Millimetres is { } mm ? string.Create(CultureInfo.InvariantCulture, $" ({mm:0.0} mm)") : "";
        return string.Create(CultureInfo.InvariantCulture,
            $"Yours and the tool's differ by {difference.AngleDegrees:0.0}° and, beside the centre of the capitellum, by {difference.OfCapitellum:0.00} of its diameter{length}.");
    }

    // Half axes of the ellipse that holds 95 of 100 layings: the chi-squared point with two degrees of freedom is 5.991.
    private static double[] Ellipse(Covariance c)
    {
        var mean = (c.XX + c.YY) / 2;
        var half = Math.Sqrt((((c.XX - c.YY) / 2) * ((c.XX - c.YY) / 2)) + (c.XY * c.XY));
        return [Math.Sqrt(5.991 * (mean + half)), Math.Sqrt(5.991 * Math.Max(0, mean - half)), 0.5 * Math.Atan2(2 * c.XY, c.XX - c.YY) * 180 / Math.PI];
    }

    private static Dictionary<string, string> Sentences(FilmReading reading) =>
        reading.Reasons.DistinctBy(r => r.Code).ToDictionary(r => r.Code, r => r.Text, StringComparer.Ordinal);

    private static IReadOnlyList<string> Texts(IReadOnlyList<string> codes, Dictionary<string, string> sentences) =>
        [.. codes.Select(c => sentences.GetValueOrDefault(c)).OfType<string>()];

    private static FilmPage Bare(OpenFilm film, string state) =>
        new(film.Stored.Id, film.Stored.Name, state, null, 0, 0, "unknown", "unknown", false, "unknown", [], null, null, null, [], []);
}
