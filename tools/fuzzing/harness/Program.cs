using ElbowAssist.Fuzzing;
using ElbowAssist.Fuzzing.Service;
using SharpFuzz;

// elbowassist-fuzz afl            under afl-fuzz
// elbowassist-fuzz seeds DIR      writes an input for each parser
// elbowassist-fuzz replay DIR     sends every file of a folder, and says which are finds
switch (args)
{
    case ["afl"]:
        Fuzzer.OutOfProcess.Run(stream =>
        {
            using var input = new MemoryStream();
            stream.CopyTo(input);
            Targets.Send(input.GetBuffer().AsSpan(0, (int)input.Length));
        });
        return 0;
    case ["seeds", var folder]:
        Seeds.Write(folder);
        return 0;
    case ["replay", var folder]:
        return Replay(folder);
    default:
        Console.Error.WriteLine("Give afl, seeds DIR or replay DIR.");
        return 1;
}

static int Replay(string folder)
{
    const long MostBytes = 256L << 20;
    var hang = TimeSpan.FromSeconds(2);
    var finds = 0;
    var files = Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToList();
    foreach (var file in files)
    {
        var input = File.ReadAllBytes(file);
        string? find = null;
        for (var attempt = 0; attempt < 2; attempt++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            var started = Environment.CpuUsage.TotalTime; // of the processor: a busy machine makes no find
            try
            {
                Targets.Send(input);
                var bytes = GC.GetAllocatedBytesForCurrentThread() - before;
                var took = Environment.CpuUsage.TotalTime - started;
                find = took > hang ? $"took {took.TotalSeconds:0.0} s" : bytes > MostBytes ? $"took {bytes >> 20} MiB" : null;
            }
            catch (Exception e)
            {
                find = e.ToString();
            }

            if (find is null)
            {
                break; // what is slow once may be compiling
            }
        }

        if (find is not null)
        {
            finds++;
            Console.Out.WriteLine($"{Path.GetFileName(file)} ({Targets.All[input[0] % Targets.All.Count].Name}): {find}");
        }
    }

    foreach (var route in Routes.Missing())
    {
        finds++;
        Console.Out.WriteLine($"{route} takes a body or a query and is no target");
    }

    Console.Out.WriteLine($"{files.Count} inputs, {finds} finds");
    return finds == 0 && files.Count > 0 ? 0 : 1;
}
