using System.CommandLine;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Commands;

/// <summary>The whole command line.</summary>
internal static class Root
{
    public static RootCommand Create() => new($"Lays lines on elbow radiographs and says how far each would move if laid again. {Caution.Text}")
    {
        ReadCommand.Create(),
        StudyCommand.Create(),
        WatchCommand.Create(),
        BatchCommand.Create(),
        WorkerCommand.Create(),
        ServeCommand.Create(),
        SimulateCommand.Create(),
        BenchCommand.Create(),
        ModelsCommand.Create(),
        DoctorCommand.Create(),
    };
}
