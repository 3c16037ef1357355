using System.CommandLine;
using ElbowAssist.Feed;

var device = new Option<string>("--device") { Description = "gpu or cpu", DefaultValueFactory = _ => "gpu" };
var views = new Option<string>("--views") { Description = "shares of lateral, ap, oblique, near-miss", DefaultValueFactory = _ => "lateral=1" };
var framing = new Option<string>("--framing") { Description = "film or crop", DefaultValueFactory = _ => "crop" };
var size = new Option<int>("--size") { Description = "pixels along each side, a multiple of 8", DefaultValueFactory = _ => 256 };
var batch = new Option<int>("--batch") { Description = "films per frame", DefaultValueFactory = _ => 128 };
var firstSeed = new Option<ulong>("--first-seed") { Description = "seed of the first film", DefaultValueFactory = _ => 1_000_000 };
var step = new Option<ulong>("--step") { Description = "step from seed to seed", DefaultValueFactory = _ => 1 };
var count = new Option<long?>("--count") { Description = "films in all; without it there is no end" };
var threads = new Option<int>("--threads") { Description = "threads that prepare films", DefaultValueFactory = _ => Math.Max(1, Environment.ProcessorCount - 2) };
var bones = new Option<string>("--bones") { Description = "structured or solid", DefaultValueFactory = _ => "structured" };
bones.AcceptOnlyFromAmong("structured", "solid");
var root = new RootCommand("Writes simulated films with exact truth to standard output, for training.")
{
    device, views, framing, size, batch, firstSeed, step, count, threads, bones,
};
root.SetAction(parsed =>
{
    try
    {
        var options = new FeedOptions(
            string.Equals(parsed.GetValue(device), "gpu", StringComparison.Ordinal),
            FeedOptions.ParseViews(parsed.GetValue(views)!),
            string.Equals(parsed.GetValue(framing), "crop", StringComparison.Ordinal),
            parsed.GetValue(size),
            parsed.GetValue(batch),
            parsed.GetValue(firstSeed),
            parsed.GetValue(step),
            parsed.GetValue(count),
            parsed.GetValue(threads),
            string.Equals(parsed.GetValue(bones), "solid", StringComparison.Ordinal));
        using var output = Console.OpenStandardOutput();
        FilmSource.Run(options, output);
        return 0;
    }
    catch (Exception e) when (e is FormatException or NotSupportedException or IOException)
    {
        Console.Error.WriteLine(e.Message);
        return 1;
    }
});
return root.Parse(args).Invoke();
