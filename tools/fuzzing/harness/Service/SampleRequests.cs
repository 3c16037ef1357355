using System.Text;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Testing;

namespace ElbowAssist.Fuzzing.Service;

/// <summary>A good request for each route that is a target.</summary>
internal static class SampleRequests
{
    private const string Said = "?name=film.png&view=lateral&side=left&sex=F&context=acute&ageMonths=84&rowSpacingMm=0.15&columnSpacingMm=0.14&format=json&patient=Patient/1";
    private const string Line = """{"name": "anterior-humeral-line", "from": [38, 20], "to": [37, 60]}""";

    public static IEnumerable<(string Target, byte[] Request)> All() =>
    [
        ("http-reading", Text(Said + "\n\nD")),
        ("http-study-reading", Text(Said + "\nContent-Type: multipart/form-data; boundary=b\n\n--b\r\nContent-Disposition: form-data; name=f; filename=f.png\r\n\r\nP\r\n--b\r\nContent-Disposition: form-data; name=g; filename=f.png.info.json\r\n\r\n{\"side\": \"left\"}\r\n--b--\r\n")),
        ("http-measurements", [.. Text(Said + "&width=800&height=1000\n\n"), .. ReadingJson.Write(SampleReadings.Lateral())]),
        ("http-reading-again", Text("key?format=fhir&patient=Patient/1\n\n")),
        ("http-study-reading-again", Text("key?format=text&patient=Patient/1\n\n")),
        ("http-study", Text("?\nReader: A\n\n{\"title\": \"Elbow\", \"demo\": null}")),
        ("http-film", Text("?name=film.png&stated={\"side\":\"left\"}\nReader: A\n\nD")),
        ("http-question", Text("?\nReader: A\n\n{\"ageMonths\": 84, \"sex\": \"F\", \"injuredSide\": \"left\", \"maturity\": \"child\", \"proposalsVisible\": false}")),
        ("http-words", Text("?\nReader: A\n\n{\"side\": \"left\", \"view\": \"lateral\", \"context\": \"acute\", \"fullExtensionAndSupination\": true}")),
        ("http-answers", Text("?\nReader: A\n\n[{\"itemId\": \"views.identity\", \"choices\": [\"yes\"], \"note\": \"a note\"}]")),
        ("http-shown", Text("?\nReader: A\n\n{\"topic\": \"alignment\"}")),
        ("http-prompt", Text("trace-radial-head?\nReader: A\n\n{\"text\": \"a note\"}")),
        ("http-outcome", Text("?\nReader: A\n\n{\"text\": \"a note\"}")),
        ("http-line", Text("?\nReader: A\n\n" + Line)),
        ("http-landmark-tried", Text("humerus.waist?\n\n{\"x\": 41, \"y\": 58}")),
        ("http-landmark", Text("humerus.waist?\nReader: A\n\n{\"x\": 41, \"y\": 58}")),
        ("http-case", Text($$"""
            ?

            {"schema": "elbowassist/case/1", "title": "Elbow", "films": [{"name": "film.png", "content": "UA==", "stated": "{}"}], "lines": [{{Brought("5c62e091b8c0565f1bafad0dad5934276143ae2ccef7a5381e8ada5b1a8d26d2")}}]}
            """)),
        ("http-lines", Text($$"""
            ?

            {"schema": "elbowassist/lines/1", "lines": [{{Brought("4bf5122f344554c53bde2ebb8cd2b7e3d1600ad631c385a5d7cce23c7785459a")}}]}
            """)),
        ("http-archive-query", Text("?from=2026-04-01&to=2026-04-02&accession=A1\n\n")),
        ("http-archive-film", Text("?\n\n{\"study\": \"1.2\", \"series\": \"1.2.3\", \"instance\": \"1.2.3.4\"}")),
        ("http-practice", Text("?\n\n{\"patient\": \"child\", \"view\": \"ap\", \"level\": 2}")),
        ("http-practice-answer", Text("?\n\n{\"lines\": [" + Line + "], \"trueView\": \"yes\", \"fracture\": \"no\", \"carries\": [\"shaft-condylar-angle\"]}")),
        ("http-hand-answer", Text("?\n\n" + Line)),
    ];

    // The SHA-256 of the film's file, one byte: P in the case, 1 in the read under way.
    private static string Brought(string sha256) => $$"""{"sha256": "{{sha256}}", "name": "anterior-humeral-line", "from": [38, 20], "to": [37, 60]}""";

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);
}
