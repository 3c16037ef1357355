using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Drawing;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Phantom;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Store;
using ElbowAssist.Store.Entries;
using ElbowAssist.Web.Films;
using ElbowAssist.Web.Studies;

namespace ElbowAssist.Web.Practice;

/// <summary>A practice film with its truth, held until it falls off the bench.</summary>
internal sealed record PracticeCase(string Id, SimulatedFilm Film, PracticeWish Wish, Radiograph Radiograph)
{
    /// <summary>Whether the truth was told; what is laid afterwards does not count.</summary>
    public bool Answered { get; set; }
}

/// <summary>
/// Simulated films to practise on, with exact truth. Seeds lie between those of the validation and those of training, and
/// are drawn anew each time.
/// </summary>
internal sealed class PracticeRoom(IFilmDesk desk, Workers workers, StudyStore store)
{
    private const int Size = 768;
    private const int Held = 8;
    private const int FirstSeed = 100_000;
    private const int LastSeed = 999_999;
    private const double TrueViewDegrees = 10;

    private readonly Lock gate = new();
    private readonly LinkedList<PracticeCase> bench = new();

    /// <summary>Simulates a film.</summary>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public async Task<PracticeCase> MakeAsync(PracticeWish wish, CancellationToken cancellation, ulong? seed = null, int size = Size)
    {
        var options = new SimulationOptions
        {
            FromAgeYears = wish.Patient == "child" ? 2 : 18,
            ToAgeYears = wish.Patient == "child" ? 12 : 85,
            InjuredShare = wish.Level == 1 ? 0 : 0.5,
            Adequacy = wish.Level switch { 1 => Phantom.Pose.Adequacy.Good, 2 => Phantom.Pose.Adequacy.Mixed, _ => Phantom.Pose.Adequacy.Poor },
        };
        var view = wish.View == "ap" ? View.Ap : View.Lateral;
        var drawn = seed ?? (ulong)RandomNumberGenerator.GetInt32(FirstSeed, LastSeed + 1);
        var film = await workers.RunAsync(_ => new FilmSimulator().Simulate(drawn, view, options, size), cancellation).ConfigureAwait(false);
        var radiograph = Radiograph.FromPixels(film.Pixels, film.Width, film.Height, new RadiographFacts
        {
            FileName = "simulated",
            Sha256 = "",
            Format = FilmFormat.Pixels,
            BitDepth = 16,
            RowSpacingMm = film.PixelMm,
            ColumnSpacingMm = film.PixelMm,
        });
        var made = new PracticeCase(RandomNumberGenerator.GetHexString(16, lowercase: true), film, wish, radiograph);
        lock (gate)
        {
            bench.AddFirst(made);
            while (bench.Count > Held)
            {
                bench.RemoveLast();
            }
        }

        return made;
    }

    public PracticeCase? Find(string id)
    {
        lock (gate)
        {
            return bench.FirstOrDefault(c => c.Id == id);
        }
    }

    public static PracticeFilm Page(PracticeCase practice)
    {
        var truth = practice.Film.Truth;
        var age = truth.AgeMonths < 216
            ? string.Create(CultureInfo.InvariantCulture, $"{truth.AgeMonths / 12} years {truth.AgeMonths % 12} months")
            : string.Create(CultureInfo.InvariantCulture, $"{truth.AgeMonths / 12} years");
        return new(
            practice.Id,
            $"Simulated, no patient: {age}, {(truth.Sex == Sex.Female ? "female" : "male")}, {Vocabularies.Side.WordOf(truth.Side)} elbow",
            Vocabularies.View.WordOf(truth.View),
            practice.Film.Width,
            practice.Film.Height,
            truth.View == View.Lateral ? ["anterior-humeral-line", "radiocapitellar-line"] : ["radiocapitellar-line"],
            [.. Judged(truth.View).Select(n => new PracticeMeasurement(n, ReadingWords.Title(n)))]);
    }

    private static string[] Judged(View view) => view == View.Lateral
        ? ["anterior-humeral-line.position", "radiocapitellar-line.lateral.neck.offset", "shaft-condylar-angle"]
        : ["radiocapitellar-line.ap.neck.offset", "baumann-angle", "radial-neck-shaft-angle"];

    private static IEnumerable<PracticeCarried> Carried(FilmReading reading, IReadOnlyList<string>? said)
    {
        foreach (var measurement in reading.Measurements.Where(m => Judged(reading.View.Name).Contains(m.Name, StringComparer.Ordinal)))
        {
            yield return new(
                ReadingWords.Title(measurement.Name),
                measurement.Value is not null,
                said?.Contains(measurement.Name, StringComparer.Ordinal),
                measurement.Value is not null ? [] : [.. reading.Reasons.Where(r => measurement.Reasons.Contains(r.Code)).Select(r => r.Text)]);
        }
    }

    public static DisplaySamples Samples(PracticeCase practice) => DisplaySamples.Of(NormalisedFilm.Of(practice.Radiograph), Size);

    /// <summary>The truth, and the learner's error; the first answer to a film is kept among the results.</summary>
    public PracticeTruth Answer(PracticeCase practice, PracticeAnswer answer)
    {
        var truth = practice.Film.Truth;
        var reading = TrueReading(practice);
        List<PracticeLine> lines = [];
        foreach (var name in Page(practice).Lines)
        {
            if (reading.Lines.FirstOrDefault(l => l.Name.StartsWith(name + ".", StringComparison.Ordinal)) is not { } line)
            {
                continue;
            }

            var difference = answer.Lines?.FirstOrDefault(l => l?.Name == name) is { From: [var x0, var y0], To: [var x1, var y1] }
                ? LineDifference.Of(new OwnLineLaid("", name, new Point(x0, y0), new Point(x1, y1), false), reading)
                : null;
            lines.Add(new(name, [line.Point.X, line.Point.Y], [line.Direction.X, line.Direction.Y], difference?.AngleDegrees, difference?.OfCapitellum));
        }

        var told = new PracticeTruth(lines, truth.ViewErrorDegrees, [.. truth.Injuries.Select(i => i.Replace('-', ' '))], [.. Sentences(truth.ViewErrorDegrees, truth.Injuries.Count > 0, answer)], [.. Carried(reading, answer.Carries)]);
        lock (gate)
        {
            if (!practice.Answered)
            {
                practice.Answered = true;
                store.AddPractice("lines", JsonSerializer.Serialize(
                    new { practice.Wish, Lines = lines, told.ViewErrorDegrees, answer.TrueView, answer.Fracture, told.Carries, Injured = truth.Injuries.Count > 0 }, JsonSerializerOptions.Web));
            }
        }

        return told;
    }

    private static IEnumerable<string> Sentences(double degrees, bool injured, PracticeAnswer answer)
    {
        var turned = string.Create(CultureInfo.InvariantCulture, $"The film is turned {degrees:0}° away from the true view");
        var within = degrees <= TrueViewDegrees;
        yield return answer.TrueView switch
        {
            "yes" => $"{turned}; you called it a true view{(within ? ", as it is within ten degrees" : ", and more than ten degrees is not")}.",
            "no" => $"{turned}; you called it turned{(within ? ", and within ten degrees it still counts as true" : ", as it is")}.",
            _ => $"{turned}.",
        };
        yield return (answer.Fracture, injured) switch
        {
            ("yes", true) => "You saw an injury, and one was simulated.",
            ("yes", false) => "You saw an injury; none was simulated.",
            ("no", true) => "You saw no injury; one was simulated. Look at the film again now that you know.",
            ("no", false) => "You saw no injury, and none was simulated.",
            (_, true) => "An injury was simulated.",
            _ => "No injury was simulated.",
        };
    }

    private FilmReading TrueReading(PracticeCase practice)
    {
        var truth = practice.Film.Truth;
        return new ReadingAssembler(desk.Limits, RedrawOptions.Default).Assemble(new ReadingInput
        {
            Tool = desk.Tool,
            Image = new ImageFacts("simulated", practice.Film.Width, practice.Film.Height, practice.Film.PixelMm, practice.Film.PixelMm, "simulated", ""),
            View = new ViewFinding(truth.View, new Dictionary<string, double>(StringComparer.Ordinal), truth.ViewErrorDegrees),
            Side = truth.Side,
            Patient = new Patient(truth.AgeMonths, truth.Sex),
            Context = practice.Film.Context,
            Landmarks = [.. truth.Landmarks.Select(l => new Landmark(l.Name, l.Kind, l.Position, l.Position is null ? null : Covariance.Isotropic(0.3), l.Position is null ? 0 : 1, LandmarkSource.Reader))],
        });
    }
}
