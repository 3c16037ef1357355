using System.Collections.ObjectModel;
using ElbowAssist.Geometry;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models.Merging;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>How the bone about the proposed landmarks is exposed.</summary>
internal static class ExposureFigures
{
    /// <summary>Share of W about each landmark that counts as bone with its edge.</summary>
    private const double Reach = 0.4;

    /// <summary>A landmark that is less likely seen says nothing of where bone is.</summary>
    private const double LeastVisibility = 0.5;

    private const string Noise = "exposure.noise";
    private const string BurnedOut = "exposure.burned-out";
    private const string Blur = "exposure.blur";

    /// <summary>Figures, named as their limits without the view, and the reason where one lies beyond its limit.</summary>
    public static IReadOnlyList<(string Figure, string Reason)> Reasons { get; } =
        [(Noise, FilmReasons.ExposureNoisy), (BurnedOut, FilmReasons.ExposureBurnedOut), (Blur, FilmReasons.ImageBlurred)];

    /// <summary>The figures; empty where too little bone lies on the film.</summary>
    /// <param name="film">The film.</param>
    /// <param name="pose">The pose in which the elbow was looked at.</param>
    /// <param name="landmarks">What was proposed on it.</param>
    /// <param name="unitW">The anatomical unit W in film pixels.</param>
    public static IReadOnlyDictionary<string, double> Of(NormalisedFilm film, Similarity pose, IReadOnlyList<MergedProposal> landmarks, double unitW)
    {
        var places = landmarks.Where(l => l.Visibility >= LeastVisibility && l.Position.IsFinite && !l.Name.StartsWith("fatpad.", StringComparison.Ordinal))
            .Select(l => l.Position).ToList();
        return film.ExposureOfBone(pose, places, Reach * unitW) is { } exposure
            ? new Dictionary<string, double>(StringComparer.Ordinal) { [Noise] = exposure.Noise, [BurnedOut] = exposure.BurnedOut, [Blur] = exposure.Blur }
            : ReadOnlyDictionary<string, double>.Empty;
    }
}
