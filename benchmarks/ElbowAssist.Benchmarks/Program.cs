using BenchmarkDotNet.Running;
using ElbowAssist.Benchmarks.Serving;

if (args is ["service", .. var more])
{
    await ServiceRate.RunAsync(more);
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
}
