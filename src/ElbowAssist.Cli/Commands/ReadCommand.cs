using System.CommandLine;
using ElbowAssist.Cli.Films;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>read FILE|DIR…</c>: each film its own reading.</summary>
internal static class ReadCommand
{
    public static Command Create()
    {
        var films = new Argument<string[]>("films")
        {
            Description = "Films, or folders of films; own outputs in a folder are skipped.",
            Arity = ArgumentArity.OneOrMore,
        };
        films.Validators.Add(result =>
        {
            // The parser takes an option it does not know for one more film.
            if (result.Tokens.FirstOrDefault(t => t.Value.StartsWith('-')) is { } unknown)
            {
                result.AddError($"{unknown.Value} is no option of read; write ./{unknown.Value} if a film is named so.");
            }
        });
        var output = new Option<string>("--out") { Description = "Folder for the readings and overlays.", DefaultValueFactory = _ => ".", HelpName = "DIR" };
        var facts = new FactOptions();
        var model = new Option<string?>("--model") { Description = "Model folder to use in place of the default.", HelpName = "NAME" };
        var landmarks = new Option<string?>("--landmarks")
        {
            Description = "Landmarks to measure on in place of a model's: the landmarks block of a reading, or COCO keypoints.",
            HelpName = "FILE",
        };
        var dicom = new Option<bool>("--dicom") { Description = "Write a structured report and a presentation state of each DICOM film." };
        var only = new Option<ReadOutput>("--only")
        {
            Description = "Write only the reading of each film, or only what the models propose on it, for models calibrate.",
            HelpName = "reading|proposals",
        };
        var command = new Command("read", "Read films: lay the lines, measure, say what each film can carry.") { films, output, model, landmarks, dicom, only };
        command.Validators.Add(result =>
        {
            if (!result.Errors.Any() && result.GetValue(only) == ReadOutput.Proposals && result.GetValue(landmarks) is not null)
            {
                result.AddError("Give --only proposals or --landmarks, not both: landmarks laid beforehand are no proposals of a model.");
            }
        });
        facts.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.Run(
            () => (int)ReadRun.Run(
                new ReadRequest(
                    parsed.GetValue(films)!,
                    parsed.GetValue(output)!,
                    facts.Read(parsed),
                    parsed.GetValue(model),
                    parsed.GetValue(landmarks),
                    parsed.GetValue(dicom),
                    parsed.GetValue(only)),
                cancellation),
            cancellation));
        return command;
    }
}
