using System.CommandLine;
using ElbowAssist.Cli.Calibrating;
using ElbowAssist.Models.Checking;
using ElbowAssist.Models.Folders;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>models list|show|check|compare|calibrate</c>: the installed model folders.</summary>
internal static class ModelsCommand
{
    public static Command Create() => new("models", $"The installed models; {ModelsFolder.Variable} names another folder of them.")
    {
        List(),
        Show(),
        Check(),
        Compare(),
        Calibrate(),
    };

    private static Command List()
    {
        var command = new Command("list", "List the installed models.");
        command.SetAction(_ => (int)ForEach(Folders(), folder =>
        {
            var manifest = ModelFolder.Open(folder).Manifest;
            Console.Out.WriteLine($"{manifest.Name} {manifest.Version}: {manifest.Task}, {string.Join(", ", manifest.Views)}; {manifest.Licence}");
            return ExitCode.Done;
        }));
        return command;
    }

    private static Command Show()
    {
        var name = new Argument<string>("name") { Description = "Name of a model." };
        var command = new Command("show", "Show a model's card.") { name };
        command.SetAction(parsed => (int)Card(parsed.GetValue(name)!));
        return command;
    }

    private static Command Check()
    {
        var path = new Argument<string?>("folder") { Description = "A model folder; all installed ones if left out.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("check", "Say what does not fit in a model folder, and run its golden case.") { path };
        command.SetAction(parsed => (int)ForEach(parsed.GetValue(path) is { } one ? [one] : Folders(), CheckOne));
        return command;
    }

    private static Command Compare()
    {
        var models = new Argument<string[]>("models") { Description = "Model folders or names of installed models.", Arity = new ArgumentArity(2, 16) };
        var command = new Command("compare", "Set the manifests of models side by side.") { models };
        command.SetAction(parsed =>
        {
            try
            {
                Console.Out.Write(ModelComparison.Of([.. parsed.GetValue(models)!.Select(m => ModelFolder.Open(Directory.Exists(m) ? m : Named(m)))]).ToText());
                return (int)ExitCode.Done;
            }
            catch (ModelFolderException e)
            {
                throw new UserErrorException(e.Message);
            }
        });
        return command;
    }

    private static Command Calibrate()
    {
        var films = new Argument<DirectoryInfo[]>("films")
        {
            Description = "Folders of labelled films: truth files beside them, or COCO keypoints in coco.json.",
            Arity = ArgumentArity.OneOrMore,
        };
        var limits = new Option<DirectoryInfo[]>("--choose-limits")
        {
            Description = "Folders of other labelled films that choose the limits first; without them the limits stay.",
            HelpName = "DIR",
            DefaultValueFactory = _ => [],
        };
        var proposals = new Option<string>("--proposals")
        {
            Description = "Folder of what read --only proposals wrote; films without proposals are read and theirs added.",
            HelpName = "DIR",
            Required = true,
        };
        var model = new Option<string?>("--model") { Description = "Landmark model to calibrate; all installed ones if left out.", HelpName = "NAME" };
        var origin = new Option<string>("--origin")
        {
            Description = "What the films are, in words, for the manifest.",
            HelpName = "TEXT",
            DefaultValueFactory = _ => "films simulated by the phantom; the promise holds for such films only",
        };
        var output = new Option<string>("--out") { Description = "Folder for the new model.json of each model and limits.json.", HelpName = "DIR", Required = true };
        var command = new Command("calibrate", "Fit spread, intervals and zone probabilities on labelled films, and choose limits.") { films, limits, proposals, model, origin, output };
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                var (given, choosing) = (parsed.GetValue(films)!, parsed.GetValue(limits)!);
                if (given.Concat(choosing).FirstOrDefault(f => !f.Exists) is { } absent)
                {
                    throw new UserErrorException($"{absent} is no folder; give folders of labelled films.");
                }

                return (int)CalibrateRun.Run(
                    new CalibrateRequest(
                        [.. given.Select(f => f.FullName)],
                        [.. choosing.Select(f => f.FullName)],
                        parsed.GetValue(proposals)!,
                        parsed.GetValue(model),
                        parsed.GetValue(origin)!,
                        parsed.GetValue(output)!),
                    cancellation);
            },
            cancellation));
        return command;
    }

    private static ExitCode CheckOne(string folder)
    {
        var findings = ModelCheck.Run(folder);
        foreach (var finding in findings)
        {
            Console.Out.WriteLine(finding);
        }

        if (findings.Count > 0)
        {
            return ExitCode.Failed;
        }

        Console.Out.WriteLine($"Model folder {FolderName(folder)} fits, and its golden case gives what it gave when the model was made.");
        return ExitCode.Done;
    }

    private static ExitCode Card(string name)
    {
        var folder = Named(name);
        var card = Path.Combine(folder, "CARD.md");
        Console.Out.WriteLine(File.Exists(card) ? File.ReadAllText(card) : $"Model folder {name} has no card.");
        return ExitCode.Done;
    }

    private static string Named(string name) => Folders().FirstOrDefault(f => FolderName(f) == name || ModelFolder.Open(f).Manifest.Name == name) ??
        throw new UserErrorException($"There is no model named {name}; see: elbowassist models list");

    private static ExitCode ForEach(IReadOnlyList<string> folders, Func<string, ExitCode> act)
    {
        var worst = ExitCode.Done;
        foreach (var folder in folders)
        {
            try
            {
                worst = worst.Worse(act(folder));
            }
            catch (ModelFolderException e)
            {
                Console.Error.WriteLine(e.Message);
                worst = ExitCode.Failed;
            }
        }

        return worst;
    }

    private static IReadOnlyList<string> Folders()
    {
        try
        {
            return ModelFolder.Find(ModelsFolder.Path);
        }
        catch (ModelFolderException e)
        {
            throw new UserErrorException(e.Message);
        }
    }

    private static string FolderName(string folder) => Path.GetFileName(Path.TrimEndingDirectorySeparator(folder));
}
