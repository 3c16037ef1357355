using System.CommandLine;
using ElbowAssist.Cli.Films;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>watch DIR</c>: reads films as a receiver writes them.</summary>
internal static class WatchCommand
{
    public static Command Create()
    {
        var folder = new Argument<string>("folder") { Description = "Folder into which a DICOM receiver or a router writes films.", HelpName = "DIR" };
        var output = new Option<string?>("--out") { Description = "Folder for the outputs; the watched folder by default.", HelpName = "DIR" };
        var facts = new FactOptions();
        var model = new Option<string?>("--model") { Description = "Model folder to use in place of the default.", HelpName = "NAME" };
        var store = new Option<Uri?>("--store")
        {
            Description = "Address of a DICOMweb service that is sent the report and presentation state of each DICOM film.",
            HelpName = "URL",
            CustomParser = result => Uri.TryCreate(result.Tokens[0].Value, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https"
                ? uri
                : Wrong(result),
        };
        var command = new Command("watch", "Read every film that arrives in a folder, until stopped. DICOM films also get a structured report and a presentation state.")
        {
            folder, output, model, store,
        };
        facts.AddTo(command);
        command.SetAction((parsed, cancellation) =>
        {
            var watched = parsed.GetValue(folder)!;
            return WatchRun.RunAsync(
                watched,
                new ReadRequest([], parsed.GetValue(output) ?? watched, facts.Read(parsed), parsed.GetValue(model), null, Dicom: true),
                parsed.GetValue(store),
                cancellation);
        });
        return command;
    }

    private static Uri? Wrong(System.CommandLine.Parsing.ArgumentResult result)
    {
        result.AddError("--store takes the http or https address of a DICOMweb service.");
        return null;
    }
}
