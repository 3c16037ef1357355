using System.CommandLine;
using ElbowAssist.Cli.Benching;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>bench</c>: scores models, predictions and readers on labelled films, or readings made before.</summary>
internal static class BenchCommand
{
    private static readonly Argument<string?> Films = new("DATASET")
    {
        Description = "labelled films: a folder with .truth.json files or coco.json, or a COCO keypoints file; with --not-elbows alone that of the pictures, or nothing",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private static readonly Option<string[]> Models = Many("--models", "MODEL", "models to score: model folders, folders of them, names of installed models; all installed ones if nothing is named");

    private static readonly Option<string[]> Predictions = Many("--predictions", "FILE", "landmarks that other programs laid on these films, as COCO keypoints or COCO results");

    private static readonly Option<string[]> Readers = Many(
        "--readers", "FILE", "landmarks that readers laid, to be held against each other and the models: COCO keypoints with annotator and withProposals, or a store of studies");

    private static readonly Option<bool> StateView = new("--state-view") { Description = "tell the models the view of each film instead of having them recognise it" };

    private static readonly Option<string> Output = new("--out")
    {
        Description = "folder for the report and for what the models said; a run that was ended goes on there",
        HelpName = "DIR",
        DefaultValueFactory = _ => "bench",
    };

    private static readonly Option<DirectoryInfo?> Readings = new("--readings") { Description = "folder that read wrote its readings to", HelpName = "DIR" };

    private static readonly Option<DirectoryInfo?> Proposals = new("--proposals")
    {
        Description = "folder that read --only proposals wrote to: readings are made of them under the limits and calibrations in use",
        HelpName = "DIR",
    };

    private static readonly Option<DirectoryInfo?> Tables = new("--tables")
    {
        Description = "folder for the tables of coverage, states, refusals and risk of --readings or --proposals, as CSV and JSON",
        HelpName = "DIR",
    };

    private static readonly Option<DirectoryInfo?> NotElbows = new("--not-elbows")
    {
        Description = "folder with readings of pictures that show no elbow, or with proposals on them: how many were refused, "
            + "taken for an elbow and measured, by what .truth.json files in it or in DATASET say they show",
        HelpName = "DIR",
    };

    public static Command Create()
    {
        var command = new Command("bench", "Score landmark models, predictions and readers on labelled films, or readings made before.")
        {
            Films, Models, Predictions, Readers, StateView, Output, Readings, Proposals, Tables, NotElbows,
        };
        command.Validators.Add(result =>
        {
            if (result.Errors.Any())
            {
                return;
            }

            var made = new[] { Readings, Proposals }.Count(o => result.GetValue(o) is not null);
            if (made > 1 || (made > 0 && new[] { Models, Predictions, Readers }.Any(o => result.GetValue(o) is { Length: > 0 })))
            {
                result.AddError("Give only one of --readings, --proposals and models with predictions and readers.");
            }
            else if (result.GetValue(Films) is null && (made > 0 || result.GetValue(NotElbows) is null))
            {
                result.AddError("Give the labelled films before the options.");
            }
        });
        command.SetAction((result, cancellation) => Task.Run(() => (int)(IsContest(result) ? ContestRun.Run(Contest(result), cancellation) : BenchRun.Run(Made(result))), cancellation));
        return command;
    }

    private static bool IsContest(ParseResult result) =>
        result.GetValue(Readings) is null && result.GetValue(Proposals) is null && (result.GetValue(NotElbows) is null || Named(result));

    private static ContestRequest Contest(ParseResult result) => new(
        result.GetRequiredValue(Films)!,
        Named(result) ? result.GetValue(Models)! : [OpenModels.Installed],
        result.GetValue(Predictions)!,
        result.GetValue(Readers)!,
        result.GetValue(StateView),
        result.GetValue(Output)!);

    private static BenchRequest Made(ParseResult result) => new(
        result.GetValue(Films) is { } films ? new DirectoryInfo(films) : null,
        result.GetValue(Readings),
        result.GetValue(Proposals),
        result.GetValue(Tables),
        result.GetValue(NotElbows));

    private static bool Named(ParseResult result) => new[] { Models, Predictions, Readers }.Any(o => result.GetValue(o) is { Length: > 0 });

    private static Option<string[]> Many(string name, string help, string description) => new(name)
    {
        Description = description,
        HelpName = help,
        AllowMultipleArgumentsPerToken = true,
        DefaultValueFactory = _ => [],
    };
}
