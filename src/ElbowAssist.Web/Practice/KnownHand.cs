using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Store;
using ElbowAssist.Store.Entries;
using ElbowAssist.Web.Studies;

namespace ElbowAssist.Web.Practice;

/// <summary>A film the reader has laid a line on before; which it is, it does not say.</summary>
/// <param name="Id">Identifier, for this time only.</param>
/// <param name="Line">The line to lay again.</param>
public sealed record HandFilm(string Id, string Line);

/// <summary>How far the line moved when laid again.</summary>
/// <param name="AngleDegrees">Angle between the two layings.</param>
/// <param name="OfCapitellum">Distance of the two beside the capitellum's centre, in its diameters.</param>
/// <param name="Words">The same in words, with the reader's own spread so far beside the tool's.</param>
public sealed record HandResult(double AngleDegrees, double OfCapitellum, string Words);

/// <summary>
/// Own earlier films come back blinded, to be laid again: how far does the reader's own line move? Only films of closed
/// reads come back, so nothing is shown early.
/// </summary>
internal sealed class KnownHand(StudyStore store, OpenStudies open)
{
    private const string Kind = "hand";
    private const int Held = 16;
    private const int EnoughFilms = 3;

    private readonly Lock gate = new();
    private readonly LinkedList<(string Id, string Study, OwnLineLaid Earlier)> given = new();

    /// <summary>A film to lay again, or null where there is none.</summary>
    public HandFilm? Next()
    {
        var laid = (from study in store.List()
                    let status = StudyStatus.Of(store.Entries(study.Id))
                    where status.Walk?.ConcludedAt is not null
                    from line in status.OwnLines.Values
                    where study.Films.Any(f => f.Id == line.FilmId)
                    select (Study: study.Id, Line: line)).ToList();
        if (laid.Count == 0)
        {
            return null;
        }

        var (chosen, earlier) = laid[RandomNumberGenerator.GetInt32(laid.Count)];
        var id = RandomNumberGenerator.GetHexString(16, lowercase: true);
        lock (gate)
        {
            given.AddFirst((id, chosen, earlier));
            while (given.Count > Held)
            {
                given.RemoveLast();
            }
        }

        return new HandFilm(id, earlier.Name);
    }

    /// <summary>The film of an identifier given out before, or null.</summary>
    public OpenFilm? Film(string id) => Given(id) is var (_, study, earlier) ? open.Find(study)?.Film(earlier.FilmId) : null;

    /// <summary>Compares the two layings and keeps the result; null where the film cannot carry a comparison.</summary>
    public async Task<HandResult?> AnswerAsync(string id, Point from, Point to)
    {
        if (Given(id) is not var (_, studyId, earlier) || open.Find(studyId) is not { } study || study.Film(earlier.FilmId) is not { } film)
        {
            return null;
        }

        // A study opened anew is still being read.
        await film.Proposal(study.Stated(film)?.View ?? Anatomy.View.Unknown).ConfigureAwait(false);
        if (study.Reading(film) is not { } reading ||
            LineDifference.Of(earlier with { From = from, To = to }, earlier.From, earlier.To - earlier.From, reading) is not { } difference)
        {
            return null;
        }

        lock (gate)
        {
            given.Remove(given.First(g => g.Id == id));
        }

        store.AddPractice(Kind, JsonSerializer.Serialize(new { line = earlier.Name, difference.AngleDegrees, difference.OfCapitellum }, JsonSerializerOptions.Web));
        var tool = reading.Measurements.FirstOrDefault(m => m.Name == "anterior-humeral-line.position" && earlier.Name == "anterior-humeral-line")?.Redraw95;
        var words = string.Create(CultureInfo.InvariantCulture,
            $"This line and your earlier one differ by {difference.AngleDegrees:0.0}° and, beside the centre of the capitellum, by {difference.OfCapitellum:0.00} of its diameter.{Spread(earlier.Name)}");
        return new(difference.AngleDegrees, difference.OfCapitellum, tool is { } t
            ? string.Create(CultureInfo.InvariantCulture, $"{words} The tool's redraw interval for this line on this film is ±{(t.High - t.Low) / 2:0.00}.")
            : words);
    }

    // Two layings of spread σ differ with spread σ√2.
    private string Spread(string line)
    {
        List<double> offsets =
        [
            .. store.Practice().Where(p => p.Kind == Kind).Select(p => JsonSerializer.Deserialize<JsonElement>(p.Result))
                .Where(r => r.GetProperty("line").GetString() == line).Select(r => r.GetProperty("ofCapitellum").GetDouble()),
        ];
        return offsets.Count < EnoughFilms
            ? ""
            : string.Create(CultureInfo.InvariantCulture,
                $" Over {offsets.Count} films, 95 of 100 of your redraws would fall within ±{1.96 * Math.Sqrt(offsets.Average(o => o * o) / 2):0.00} of a capitellum.");
    }

    private (string Id, string Study, OwnLineLaid Earlier)? Given(string id)
    {
        lock (gate)
        {
            return given.Where(g => g.Id == id).Select(g => ((string, string, OwnLineLaid)?)g).FirstOrDefault();
        }
    }
}
