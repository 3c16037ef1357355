using System.Globalization;
using BenchmarkDotNet.Running;
using ElbowAssist.Benchmarks;
using ElbowAssist.Benchmarks.Benching;
using ElbowAssist.Benchmarks.Serving;

switch (args)
{
    case ["service", .. var more]:
        await ServiceRate.RunAsync(more);
        break;
    case ["chain", .. var more]:
        Chain.Run(Rounds(more));
        break;
    case ["peer", .. var more]:
        Peer.Run(Rounds(more));
        break;
    case ["floor", var dataset, var threads, var folder, .. var models]:
        BenchFloor.Run(dataset, int.Parse(threads, CultureInfo.InvariantCulture), folder, models);
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        break;
}

static int Rounds(string[] arguments) => arguments.Length > 0 ? int.Parse(arguments[0], CultureInfo.InvariantCulture) : 15;
