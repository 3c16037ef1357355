using System.Globalization;
using System.Text;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Testing;

namespace ElbowAssist.EndToEnd;

/// <summary>A film and landmarks laid on it, as files.</summary>
internal static class PlacedFilm
{
    public static string Film(TemporaryFolder folder, string name = "film.png") => folder.Write(name, SampleFilm.Png());

    public static string Landmarks(TemporaryFolder folder, string name = "landmarks.json") =>
        folder.Write(name, Encoding.UTF8.GetBytes(Block(SampleLandmarks.Lateral(LandmarkSource.Reader))));

    private static string Block(IEnumerable<Landmark> landmarks) =>
        $"{{\"view\": {{\"name\": \"lateral\"}}, \"landmarks\": [{string.Join(",\n", landmarks.Where(l => l.Position is not null).Select(One))}]}}";

    private static string One(Landmark l)
    {
        var (p, c) = (l.Position!.Value, l.Covariance!.Value);
        return string.Create(CultureInfo.InvariantCulture,
            $"{{\"name\": \"{l.Name}\", \"x\": {p.X}, \"y\": {p.Y}, \"covariance\": [[{c.XX}, {c.XY}], [{c.XY}, {c.YY}]]}}");
    }
}
