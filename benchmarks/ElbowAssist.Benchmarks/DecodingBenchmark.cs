using BenchmarkDotNet.Attributes;
using ElbowAssist.Models.Decoding;

namespace ElbowAssist.Benchmarks;

/// <summary>The heatmaps of one pass of the lateral model.</summary>
[MemoryDiagnoser]
public class DecodingBenchmark
{
    private const int Side = 128;
    private const int Count = 53;
    private readonly float[] source = new float[Count * Side * Side];
    private readonly float[] maps = new float[Count * Side * Side];

    [GlobalSetup]
    public void Setup()
    {
        var random = new Random(1);
        for (var i = 0; i < source.Length; i++)
        {
            source[i] = (float)((10 * random.NextDouble()) - 5);
        }
    }

    [Benchmark]
    public double AllHeatmaps()
    {
        source.CopyTo(maps, 0);
        double sum = 0;
        for (var i = 0; i < Count; i++)
        {
            sum += HeatmapDecoder.Decode(maps.AsSpan(i * Side * Side, Side * Side), Side, Side, 2).Position.X;
        }

        return sum;
    }
}
