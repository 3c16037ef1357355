using ElbowAssist.Exchange;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Films;

/// <summary>Where readings come from: a model's proposals or landmarks laid beforehand. Thread-safe.</summary>
internal interface IReadingSource : IDisposable
{
    /// <summary>The reading of a film.</summary>
    /// <exception cref="ExchangeFormatException">What is said of the film does not fit it; the message is one sentence.</exception>
    FilmReading Read(LoadedFilm film, CancellationToken cancellation);
}
