using System.Text;
using ElbowAssist.Batch.Films;
using ElbowAssist.Batch.Queue;
using ElbowAssist.Batch.Results;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Fuzzing.Service;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Store.Entries;
using ElbowAssist.Testing;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using DicomSample = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.Fuzzing;

/// <summary>Good inputs to start from, small so that many can be tried.</summary>
internal static class Seeds
{
    public static void Write(string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (var (target, name, content) in All())
        {
            var place = Targets.All.Select(t => t.Name).ToList().IndexOf(target);
            File.WriteAllBytes(Path.Combine(folder, $"{target}-{name}"), [(byte)place, .. content]);
        }
    }

    private static IEnumerable<(string Target, string Name, byte[] Content)> All()
    {
        using var picture = new Image<L8>(16, 12);
        picture.ProcessPixelRows(rows =>
        {
            for (var y = 0; y < rows.Height; y++)
            {
                for (var x = 0; x < rows.Width; x++)
                {
                    rows.GetRowSpan(y)[x] = new L8((byte)(16 * x));
                }
            }
        });
        yield return ("image", "png8", Saved(s => picture.SaveAsPng(s)));
        yield return ("image", "png16", PlainPng.Grey16(9, 7, (x, y) => (ushort)(5000 * (x + y))));
        yield return ("image", "jpeg", Saved(s => picture.SaveAsJpeg(s)));
        yield return ("image", "tiff", Saved(s => picture.SaveAsTiff(s)));
        var film = new DicomSample { Width = 9, Height = 7 };
        yield return ("dicom", "plain16", film.File());
        yield return ("dicom", "plain8", (film with { BitsAllocated = 8, BitsStored = 8, Photometric = "MONOCHROME1" }).File());
        var source = new DicomFilmReader(null).Read(film.File()).Source;
        var whole = SampleReadings.Lateral();
        var few = whole with { Landmarks = [.. whole.Landmarks.Take(2)], Measurements = [], Lines = [], Circles = [], Evidence = [], Adequacy = whole.Adequacy with { Checks = [], CanCarry = [], CannotCarry = [] } };
        yield return ("report", "lateral", StructuredReport.Write(few, source, new ReportOptions(new DateTimeOffset(2026, 4, 1, 10, 0, 0, TimeSpan.Zero))));
        yield return ("sidecar", "full", Text("""{"rowSpacingMm": 0.15, "columnSpacingMm": 0.14, "ageMonths": 84, "sex": "F", "side": "left", "context": "acute", "view": "lateral"}"""));
        var coco = BenchFiles.Labels;
        yield return ("coco", "two", coco);
        yield return ("coco-set", "two", coco);
        yield return ("measurements-body", "coco", Text(Encoding.UTF8.GetString(coco).Replace("\"width\": 100, \"height\": 120", "\"width\": 800, \"height\": 1000", StringComparison.Ordinal)));
        var reading = ReadingJson.Write(SampleReadings.Lateral());
        yield return ("measurements-body", "reading", reading);
        yield return ("reading", "lateral", reading);
        yield return ("reading", "refused", ReadingJson.Write(SampleReadings.Refused()));
        yield return ("truth", "lateral", Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(reading).Replace("elbowassist/reading/1", "elbowassist/truth/1", StringComparison.Ordinal)));
        yield return ("study", "one", File.ReadAllBytes(Path.Combine(Repository.Root, "src", "ElbowAssist.Cli", "Demo", "child-supracondylar", "study.json")));
        yield return ("proposals", "head", Text("""{"schema": "elbowassist/proposals/1"}"""));
        var proposals = ProposedFilmJson.Write(SampleProposals.Film(whole));
        yield return ("proposals", "lateral", proposals);
        yield return ("bench-answer", "lateral", proposals);
        yield return ("limits", "one", Text("""{"limits": [{"name": "image.blur", "value": 1.5, "unit": "", "origin": "x"}]}"""));
        using var models = new TemporaryFolder();
        yield return ("manifest", "points", File.ReadAllBytes(Path.Combine(ModelFolders.Points(models), "model.json")));
        yield return ("network", "points", File.ReadAllBytes(Path.Combine(Repository.Root, "tests", "ElbowAssist.Testing", "Onnx", "points.onnx")));
        yield return ("surface", "ascii", Text("solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendloop\nendfacet\nendsolid a\n"));
        foreach (var happened in SampleEvents.All)
        {
            yield return ("event", happened.GetType().Name, Text(EventJson.Write(happened)));
        }

        var sent = new FilmBytes("a.png", "pixels"u8.ToArray(), null);
        yield return ("work-message", "small", new WorkMessage(ContentHash.Of(sent, "{}"u8.ToArray()), "a.png", "{}"u8.ToArray(), "{}"u8.ToArray(), "pixels"u8.ToArray(), null).Write());
        var result = FilmResult.Unreadable("a.png is no film.");
        yield return ("stored-result", "unreadable", PackedResult.Pack(result));
        yield return ("result-line", "unreadable", ResultLine.Write(new string('0', 64), new Recipe(new string('1', 64), "0.1.0-x"), "a.png", result));
        yield return ("archive-answer", "series", Text("""[{"0020000D": {"vr": "UI", "Value": ["1.2"]}, "0020000E": {"vr": "UI", "Value": ["1.2.3"]}, "00080016": {"Value": ["1.2.840.10008.5.1.4.1.1.1.1"]}, "00080018": {"Value": ["1.2.3.4"]}, "00180015": {"Value": ["ELBOW"]}}]"""));
        yield return ("archive-film", "one", Text("multipart/related; boundary=b\n--b\r\nContent-Type: application/dicom\r\n\r\nDICM\r\n--b--\r\n"));
        yield return ("predictions", "results", Text("""[{"image_id": 1, "category_id": 1, "keypoints": [10, 20, 2, 30, 40, 1], "score": 0.5, "covariances": [1, 0, 1, 2, 0.5, 2]}]"""));
        yield return ("readers", "coco", Text(Encoding.UTF8.GetString(coco).Replace("\"category_id\"", "\"annotator\": \"A\", \"withProposals\": true, \"category_id\"", StringComparison.Ordinal)));
        yield return ("readers", "store", SampleEvents.Store(models.File("studies.db")));
        yield return ("run-identity", "same", Text("""{"program": "x"}"""));
        yield return ("golden", "points", Text("""{"tolerance": {"pixels": 0.5, "relative": 0.01}, "points": [{"name": "humerus.waist", "x": 1, "y": 2, "share": 1}], "covariance": [[1, 0, 1]], "visibility": [0.5], "viewError": {"mean": 1, "sd": 1}}"""));
        yield return ("bones", "manifest", Text("""{"schema": "elbowassist/bones/1", "unit": "mm", "side": "right"}"""));
        foreach (var (name, request) in SampleRequests.All())
        {
            yield return (name, "good", request);
        }
    }

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);

    private static byte[] Saved(Action<Stream> save)
    {
        using var stream = new MemoryStream();
        save(stream);
        return stream.ToArray();
    }
}
