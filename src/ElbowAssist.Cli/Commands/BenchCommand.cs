using System.CommandLine;
using ElbowAssist.Bench.Reports;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Exchange;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>bench</c>: scores readings against the truth of their films.</summary>
internal static class BenchCommand
{
    public static Command Create()
    {
        var films = new Argument<DirectoryInfo>("FILMS") { Description = "folder with films and their .truth.json files" };
        var readings = new Option<DirectoryInfo>("--readings")
        {
            Description = "folder that read wrote their readings to",
            Required = true,
        };
        var command = new Command("bench", "Score readings against the truth of their films, by view, age and injury.") { films, readings };
        command.SetAction(result => (int)Run(result.GetRequiredValue(films), result.GetRequiredValue(readings)));
        return command;
    }

    private static ExitCode Run(DirectoryInfo films, DirectoryInfo readings)
    {
        if (new[] { films, readings }.FirstOrDefault(folder => !folder.Exists) is { } absent)
        {
            throw new UserErrorException($"{absent} is no folder; give the folder of the films and, with --readings, that of their readings.");
        }

        try
        {
            var (scores, missing) = LabelledSet.Score(films.FullName, readings.FullName);
            if (scores.Count == 0)
            {
                throw new UserErrorException($"No film in {films} has both a truth file and a reading in {readings}; read the films first.");
            }

            Console.Out.Write(ScoreText.Of(scores));
            Console.Out.WriteLine($"{scores.Count} films scored, {missing.Count} without a reading.");
            return ExitCode.Done;
        }
        catch (ExchangeFormatException e)
        {
            throw new UserErrorException(e.Message, ExitCode.Unreadable);
        }
    }
}
