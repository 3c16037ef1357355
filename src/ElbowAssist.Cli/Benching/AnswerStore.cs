using System.Text;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Bench.Comparing;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Models.Merging;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Benching;

/// <summary>
/// What the models of one name said of each film, a file each, written whole or not at all: what a run that was ended has
/// finished, the next one does not do again.
/// </summary>
/// <param name="folder">Folder of the answers.</param>
internal sealed class AnswerStore(string folder)
{
    private const string Unread = ".unread.txt";

    /// <summary>Takes away what a run that was ended left half written.</summary>
    public void Tidy()
    {
        if (Directory.Exists(folder))
        {
            foreach (var half in Directory.EnumerateFiles(folder, ".*.part"))
            {
                File.Delete(half);
            }
        }
    }

    /// <summary>Whether a film was answered, or found unreadable, before.</summary>
    public bool Has(LabelledFilm film) => File.Exists(PathOf(film, OutputNames.Reading)) || File.Exists(PathOf(film, Unread));

    public void Keep(LabelledFilm film, ProposedFilm proposed, FilmReading reading, CancellationToken cancellation) => OutputFiles.Write(
        folder,
        // The reading comes last: where it is, all is.
        [(NameOf(film) + ProposedFilm.FileSuffix, ProposedFilmJson.Write(proposed)), (NameOf(film) + OutputNames.Reading, ReadingJson.Write(reading))],
        cancellation);

    public void KeepUnread(LabelledFilm film, string sentence, CancellationToken cancellation) =>
        OutputFiles.Write(folder, [(NameOf(film) + Unread, Encoding.UTF8.GetBytes(sentence))], cancellation);

    /// <summary>What the models proposed, or null for a film that could not be read.</summary>
    public ProposedFilm? Proposed(LabelledFilm film) =>
        File.Exists(PathOf(film, OutputNames.Reading)) ? ProposedFilmJson.Read(File.ReadAllBytes(PathOf(film, ProposedFilm.FileSuffix))) : null;

    /// <summary>The answer, or null for a film that could not be read.</summary>
    public FilmAnswer? Answer(LabelledFilm film)
    {
        if (Proposed(film) is not { } proposed)
        {
            return null;
        }

        var landmarks = proposed.Proposals.Landmarks is { } laid && laid.View == film.Truth.View.Name ? laid.Landmarks : [];
        var set = LandmarkSet.Of(film.Truth.View.Name);
        return new FilmAnswer(
            ReadingJson.Read(File.ReadAllBytes(PathOf(film, OutputNames.Reading))),
            [.. landmarks.Select(l => set?.IndexOf(l.Name) is >= 0 and var place
                ? Landmark(l, set.Landmarks[place].Kind)
                : throw new FormatException($"{NameOf(film)}{ProposedFilm.FileSuffix} names a landmark that is none of its view."))]);
    }

    /// <summary>Why a film could not be read, or null.</summary>
    public string? WhyUnread(LabelledFilm film) => File.Exists(PathOf(film, Unread)) ? File.ReadAllText(PathOf(film, Unread)) : null;

    private static Landmark Landmark(MergedProposal l, LandmarkKind kind) =>
        new(l.Name, kind, l.Position.IsFinite ? l.Position : null, l.Position.IsFinite ? l.Spread : null, l.Visibility, LandmarkSource.Model);

    // File names of a data set may hold folders.
    private static string NameOf(LabelledFilm film) => film.File.Replace('/', '~').Replace('\\', '~');

    private string PathOf(LabelledFilm film, string suffix) => Path.Combine(folder, NameOf(film) + suffix);
}
