using System.Security.Cryptography;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Store;
using ElbowAssist.Store.Entries;

namespace ElbowAssist.Cli.Benching;

/// <summary>
/// Where readers put landmarks and lines, from a store of studies. A film of the store is a film of the set if its content is
/// the same. What was laid after any of the tool's proposals came into view in the same read counts as laid with them.
/// </summary>
internal static class StoredPlacements
{
    /// <summary>Whether a file is a store: an SQLite file begins with its own name.</summary>
    public static bool IsStore(string path)
    {
        using var file = File.OpenRead(path);
        Span<byte> head = stackalloc byte[16];
        return file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false) == head.Length && head.StartsWith("SQLite format 3"u8);
    }

    /// <summary>Placements by the file name of the film in the set; each reader's last place of a landmark or line counts.</summary>
    /// <exception cref="ExchangeFormatException">The store cannot be read.</exception>
    public static ILookup<string, Placement> Of(string path, FilmDataset dataset)
    {
        try
        {
            // The store may be in use, and opening it writes to it.
            var copy = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
            File.Copy(path, copy);
            try
            {
                using var store = StudyStore.Open(copy);
                return Read(store, dataset);
            }
            finally
            {
                foreach (var file in new[] { copy, copy + "-wal", copy + "-shm" })
                {
                    File.Delete(file);
                }
            }
        }
        catch (StoreException e)
        {
            throw new ExchangeFormatException($"{Path.GetFileName(path)} cannot be used: {e.Message}", e);
        }
    }

    private static ILookup<string, Placement> Read(StudyStore store, FilmDataset dataset)
    {
        var bySha = dataset.Films.Where(f => File.Exists(f.Path)).GroupBy(f => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(f.Path))))
            .ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var places = new Dictionary<(string File, string Who, bool Shown), Laid>();
        foreach (var study in store.List())
        {
            var films = study.Films.Where(f => bySha.ContainsKey(f.Sha256)).ToDictionary(f => f.Id, f => bySha[f.Sha256], StringComparer.Ordinal);
            var shown = false;
            foreach (var entry in store.Entries(study.Id))
            {
                shown = entry.Event is ProposalsShown || (shown && entry.Event is not WalkBegun);
                Follow(entry, films, shown, places);
            }
        }

        return places.ToLookup(
            p => p.Key.File,
            p => new Placement(p.Key.Who, p.Key.Shown, [.. p.Value.Places.Select(l => new TrueLandmark(l.Key, KindOf(dataset, p.Key.File, l.Key), l.Value, null, 1))])
            {
                Lines = [.. p.Value.Lines.Select(l => new NamedLine(l.Key, l.Value.Point, l.Value.Direction.Unit))],
            },
            StringComparer.Ordinal);
    }

    private static void Follow(StudyEntry entry, Dictionary<string, LabelledFilm> films, bool shown, Dictionary<(string File, string Who, bool Shown), Laid> laid)
    {
        Laid By(LabelledFilm film, bool withTool)
        {
            var key = (film.File, entry.Who, withTool);
            return laid.TryGetValue(key, out var before) ? before : laid[key] = new Laid([], []);
        }

        switch (entry.Event)
        {
            case LandmarkLaid { Move: var move } when films.TryGetValue(move.FilmId, out var film) && LandmarkSet.Of(film.Truth.View.Name)?.IndexOf(move.Landmark) >= 0:
                By(film, shown).Places[move.Landmark] = move.To;
                break;
            case LandmarkGivenBack back when films.TryGetValue(back.FilmId, out var film):
                foreach (var own in laid.Where(p => p.Key.File == film.File && p.Key.Who == entry.Who))
                {
                    own.Value.Places.Remove(back.Landmark);
                }

                break;
            case OwnLineLaid line when films.TryGetValue(line.FilmId, out var film) && line.From != line.To:
                By(film, shown || line.ToolWasVisible).Lines[line.Name] = Line.Through(line.From, line.To);
                break;
        }
    }

    private static LandmarkKind KindOf(FilmDataset dataset, string file, string landmark)
    {
        var set = LandmarkSet.Of(dataset.Films.First(f => f.File == file).Truth.View.Name)!;
        return set.Landmarks[set.IndexOf(landmark)].Kind;
    }

    private sealed record Laid(Dictionary<string, Point> Places, Dictionary<string, Line> Lines);
}
