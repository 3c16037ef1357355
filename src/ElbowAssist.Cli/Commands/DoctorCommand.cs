using System.CommandLine;
using ElbowAssist.Cli.Batches;
using ElbowAssist.Drawing;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Imaging.Native;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models.Checking;
using ElbowAssist.Models.Folders;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>doctor</c>: runs each native part once and says what is missing, or asks a running worker.</summary>
internal static class DoctorCommand
{
    // What OpenCV's Linux build asks for beyond a bare Debian.
    private const string OpenCvRemedy = "install it with: apt-get install -y --no-install-recommends libgtk-3-0 libdrm2 libatomic1";

    public static Command Create()
    {
        var monitor = QueueOptionSet.Monitor("Ask the worker watched there whether it takes films, and check nothing else; for engines that look from within a container.");
        var command = new Command("doctor", "Check the installation.") { monitor };
        command.SetAction(async (parsed, cancellation) => (int)(parsed.GetValue(monitor) is { } worker
            ? await WorkerMonitor.AskAsync(worker, cancellation).ConfigureAwait(false)
            : Run()));
        return command;
    }

    private static ExitCode Run()
    {
        var checks = new (string Name, Func<string> Check, string Remedy)[]
        {
            ("Image decoding (OpenCV)", OpenCv, OpenCvRemedy),
            ("Models (ONNX Runtime)", Models, "reinstall the program, or see: elbowassist models check"),
            ("Drawing (Skia)", Skia, "reinstall the program; its drawing library is missing"),
        };
        var worst = ExitCode.Done;
        foreach (var (name, check, remedy) in checks)
        {
            worst = worst.Worse(Report(name, check, remedy));
        }

        Console.Out.WriteLine(worst == ExitCode.Done ? "The installation works." : "The installation is not complete.");
        return worst;
    }

    private static ExitCode Report(string name, Func<string> check, string remedy)
    {
        try
        {
            Console.Out.WriteLine($"{name}: {check()}");
            return ExitCode.Done;
        }
        catch (Exception e) when (e is DllNotFoundException or TypeInitializationException or EntryPointNotFoundException or InvalidOperationException or ModelFolderException)
        {
            Console.Out.WriteLine($"{name}: does not load; {remedy}.");
            return ExitCode.Failed;
        }
    }

    private static string OpenCv()
    {
        var stood = NativeLibraries.EnsureLoadable();
        var film = Radiograph.FromPixels(new ushort[64 * 64], 64, 64, new RadiographFacts
        {
            FileName = "check",
            Sha256 = new string('0', 64),
            Format = FilmFormat.Png,
            BitDepth = 16,
        });
        _ = DisplayImage.Of(NormalisedFilm.Of(film));
        return stood.Count == 0 ? "works" : $"works; the system lacks {string.Join(", ", stood)}, which it does without";
    }

    private static string Models()
    {
        var findings = ModelFolder.Find(ModelsFolder.Path).SelectMany(ModelCheck.Run).ToList();
        return findings.Count == 0 ? "works, every golden case holds" : throw new InvalidOperationException(findings[0]);
    }

    private static string Skia() => OverlayPng.WriteSpecimen().Length > 0 ? "works" : throw new InvalidOperationException("Nothing was drawn.");
}
