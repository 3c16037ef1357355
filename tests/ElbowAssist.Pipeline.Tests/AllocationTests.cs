using ElbowAssist.Anatomy;
using ElbowAssist.Testing;

namespace ElbowAssist.Pipeline.Tests;

/// <summary>What a warm reading leaves behind does not grow with the film.</summary>
public sealed class AllocationTests
{
    private const long MostBytes = 1 << 20;

    [Theory]
    [InlineData(400)]
    [InlineData(1600)]
    public void WarmReading_AllocatesAtMostAMebibyte_WhateverTheFilm(int side)
    {
        using var fixture = new ReaderFixture(passes: PassPlan.Default, threads: 1);
        using var folder = new TemporaryFolder();
        var random = new Random(1);
        var path = folder.Write("film.png", PlainPng.Grey16(side, side, (x, y) => (ushort)(20_000 + (20_000 * Math.Sin(6.0 * x / side) * Math.Cos(5.0 * y / side)) + random.Next(500))));
        var options = new ReadOptions { Patient = new Patient(480, Sex.Female) };
        long least = long.MaxValue;
        for (var i = 0; i < 5; i++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            Assert.NotEmpty(fixture.Reader.Read(path, options).Landmarks);
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.InRange(least, 1, MostBytes);
    }
}
