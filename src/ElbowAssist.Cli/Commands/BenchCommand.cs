using System.CommandLine;
using ElbowAssist.Cli.Benching;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>bench</c>: scores readings against the truth of their films.</summary>
internal static class BenchCommand
{
    public static Command Create()
    {
        var films = new Argument<DirectoryInfo?>("FILMS")
        {
            Description = "folder with films and their .truth.json files; with --not-elbows alone that of the pictures, or nothing",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var readings = new Option<DirectoryInfo?>("--readings") { Description = "folder that read wrote its readings to", HelpName = "DIR" };
        var proposals = new Option<DirectoryInfo?>("--proposals")
        {
            Description = "folder that read --only proposals wrote to: readings are made of them under the limits and calibrations in use",
            HelpName = "DIR",
        };
        var tables = new Option<DirectoryInfo?>("--tables")
        {
            Description = "folder for the tables of coverage, states, refusals and risk, as CSV and JSON",
            HelpName = "DIR",
        };
        var none = new Option<DirectoryInfo?>("--not-elbows")
        {
            Description = "folder with readings of pictures that show no elbow, or with proposals on them: how many were refused, "
                + "taken for an elbow and measured, by what .truth.json files in it or in FILMS say they show",
            HelpName = "DIR",
        };
        var command = new Command("bench", "Score readings against the truth of their films, by view, age and injury.") { films, readings, proposals, tables, none };
        command.Validators.Add(result =>
        {
            if (result.Errors.Any())
            {
                return;
            }

            var sources = new[] { readings, proposals }.Count(o => result.GetValue(o) is not null);
            if (sources > 1 || (sources == 0 && result.GetValue(none) is null))
            {
                result.AddError("Give either --readings or --proposals, or --not-elbows.");
            }
            else if (sources == 1 && result.GetValue(films) is null)
            {
                result.AddError("Give the folder of the films before the options.");
            }
        });
        command.SetAction(result => (int)BenchRun.Run(new BenchRequest(
            result.GetValue(films), result.GetValue(readings), result.GetValue(proposals), result.GetValue(tables), result.GetValue(none))));
        return command;
    }
}
