using System.CommandLine;
using ElbowAssist.Models.Checking;
using ElbowAssist.Models.Folders;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>models list|show|check</c>: the installed model folders.</summary>
internal static class ModelsCommand
{
    public static Command Create() => new("models", $"The installed models; {ModelsFolder.Variable} names another folder of them.")
    {
        List(),
        Show(),
        Check(),
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
        var folder = Folders().FirstOrDefault(f => FolderName(f) == name || ModelFolder.Open(f).Manifest.Name == name) ??
            throw new UserErrorException($"There is no model named {name}; see: elbowassist models list");
        var card = Path.Combine(folder, "CARD.md");
        Console.Out.WriteLine(File.Exists(card) ? File.ReadAllText(card) : $"Model folder {name} has no card.");
        return ExitCode.Done;
    }

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
