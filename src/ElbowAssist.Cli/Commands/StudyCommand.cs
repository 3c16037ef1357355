using System.CommandLine;
using ElbowAssist.Cli.Films;
using ElbowAssist.Cli.Studies;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>study FILE…</c>: several films of one patient, with the report.</summary>
internal static class StudyCommand
{
    public static Command Create()
    {
        var films = new Argument<string[]>("films")
        {
            Description = "Films of one patient, or a folder of them.",
            Arity = ArgumentArity.OneOrMore,
        };
        films.Validators.Add(result =>
        {
            // The parser takes an option it does not know for one more film.
            if (result.Tokens.FirstOrDefault(t => t.Value.StartsWith('-')) is { } unknown)
            {
                result.AddError($"{unknown.Value} is no option of study; write ./{unknown.Value} if a film is named so.");
            }
        });
        var output = new Option<string>("--out") { Description = "Folder for study.json, report.html and report.txt.", DefaultValueFactory = _ => ".", HelpName = "DIR" };
        var study = new Option<string?>("--study")
        {
            Description = "The reader's part: side in question, marks, walk and settled sides, as elbowassist/study/1.",
            HelpName = "FILE",
        };
        var facts = new FactOptions();
        var model = new Option<string?>("--model") { Description = "Model folder to use in place of the default.", HelpName = "NAME" };
        var landmarks = new Option<string?>("--landmarks") { Description = "COCO keypoints of the films, in place of a model's.", HelpName = "FILE" };
        var command = new Command("study", "Read several films of one patient together and write the report.") { films, output, study, model, landmarks };
        facts.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.Run(
            () => (int)StudyRun.Run(
                new StudyRequest(
                    parsed.GetValue(films)!,
                    parsed.GetValue(output)!,
                    facts.Read(parsed),
                    parsed.GetValue(model),
                    parsed.GetValue(landmarks),
                    parsed.GetValue(study)),
                cancellation),
            cancellation));
        return command;
    }
}
