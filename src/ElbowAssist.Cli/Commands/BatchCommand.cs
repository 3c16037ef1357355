using System.CommandLine;
using System.Globalization;
using ElbowAssist.Cli.Batches;
using ElbowAssist.Exchange.Dicom.Web;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>batch SOURCE</c>: many films into one file of results.</summary>
internal static class BatchCommand
{
    public static Command Create()
    {
        var source = new Argument<string>("source")
        {
            Description = "Folder of films (with all folders below), COCO file that lists films, or address of a DICOMweb service.",
            HelpName = "SOURCE",
        };
        var output = new Option<string>("--out")
        {
            Description = "File for the results, one JSON object a line; if it is there, the batch goes on where it ended.",
            DefaultValueFactory = _ => "results.jsonl",
            HelpName = "FILE",
        };
        var facts = new FactOptions();
        var model = new Option<string?>("--model") { Description = "Model folder to use in place of the default.", HelpName = "NAME" };
        var threads = QueueOptionSet.Threads();
        var server = QueueOptionSet.Server();
        var credentials = QueueOptionSet.Credentials();
        var replicas = QueueOptionSet.Number("--replicas", "Servers that keep each film, message and result; 3 survives the loss of one of three.", 1, 5, 1);
        var patience = QueueOptionSet.Number("--patience", "Seconds after which a film that a worker has taken and not finished is given to another.", 5, 3600, 60);
        var inPlace = new Option<bool>("--in-place") { Description = "Workers open the films themselves, below the folder given to them with --films." };
        var study = new Option<string?>("--study-uid") { Description = "Study of an archive to read.", HelpName = "UID" };
        var from = Date("--from", "First study date to read from an archive.");
        var to = Date("--to", "Last study date to read from an archive.");
        var command = new Command("batch", "Read many films into one file of results, on all cores of this machine or by workers on many machines.")
        {
            source, output, model, threads, server, credentials, replicas, patience, inPlace, study, from, to,
        };
        facts.AddTo(command);
        command.Validators.Add(result =>
        {
            if (!result.Errors.Any() && result.GetValue(inPlace) && result.GetValue(server) is null)
            {
                result.AddError("--in-place is for workers; give --server too, or leave it out.");
            }
        });
        command.SetAction(async (parsed, cancellation) => (int)await BatchRun.RunAsync(
            new BatchRequest(
                parsed.GetValue(source)!,
                new FilmQuery { StudyInstanceUid = parsed.GetValue(study), From = parsed.GetValue(from), To = parsed.GetValue(to) },
                parsed.GetValue(output)!,
                facts.Read(parsed),
                parsed.GetValue(model),
                parsed.GetValue(threads),
                QueueOptionSet.Of(parsed, server, credentials) is { } queue
                    ? queue with { Replicas = parsed.GetValue(replicas), Patience = TimeSpan.FromSeconds(parsed.GetValue(patience)), InPlace = parsed.GetValue(inPlace) }
                    : null),
            cancellation).ConfigureAwait(false));
        return command;
    }

    private static Option<DateOnly?> Date(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "YYYY-MM-DD",
        CustomParser = result =>
        {
            if (DateOnly.TryParseExact(result.Tokens[0].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
            {
                return date;
            }

            result.AddError($"{name} takes a date such as 2024-03-31.");
            return null;
        },
    };
}
