using ElbowAssist.Batch.Films;
using ElbowAssist.Batch.Results;

namespace ElbowAssist.Batch.Running;

/// <summary>Reads films for a batch. Thread-safe.</summary>
public interface IFilmReading
{
    /// <summary>What makes the readings.</summary>
    Recipe Recipe { get; }

    /// <summary>The result of a film; the same film and options give the same bytes. Null where something went wrong that another try may mend.</summary>
    /// <param name="film">The film.</param>
    /// <param name="options">Facts given as options, as a sidecar.</param>
    FilmResult? Read(FilmBytes film, ReadOnlyMemory<byte> options);
}
