using System.Collections.Concurrent;
using System.Runtime.InteropServices;
using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Gpu;
using ElbowAssist.Phantom.NearMiss.Rendering;
using ElbowAssist.Phantom.Rendering;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Feed;

/// <summary>Prepares, renders and writes frames, each stage on a thread of its own.</summary>
internal static class FilmSource
{
    private const int Ahead = 3;

    public static void Run(FeedOptions options, Stream output)
    {
        using var prepared = new BlockingCollection<FrameBatch>(Ahead);
        using var gpu = options.Gpu ? GpuFilmRenderer.OnGpu(options.Batch, options.Size) : null;
        using var nearMisses = options.Gpu && options.Views.Any(v => v.View is null && v.Share > 0)
            ? GpuNearMissRenderer.OnGpu(options.Batch, options.Size)
            : null;
        Exception? failure = null;
        var producer = new Thread(() =>
        {
            try
            {
                foreach (var batch in Batches(options))
                {
                    prepared.Add(batch);
                }
            }
            catch (Exception e) when (e is InvalidOperationException or AggregateException or ObjectDisposedException)
            {
                failure = e;
            }
            finally
            {
                prepared.CompleteAdding();
            }
        })
        {
            IsBackground = true,
        };
        producer.Start();
        Write(options, prepared.GetConsumingEnumerable(), gpu, nearMisses, output);
        if (failure is not null)
        {
            throw new InvalidOperationException("Preparing a frame failed.", failure);
        }
    }

    private static void Write(
        FeedOptions options, IEnumerable<FrameBatch> batches, GpuFilmRenderer? gpu, GpuNearMissRenderer? nearMisses, Stream output)
    {
        var writer = new FrameWriter(output, options.Size);
        var area = options.Size * options.Size;
        var writing = Task.CompletedTask;
        foreach (var batch in batches)
        {
            var films = batch.Count;
            var paths = new byte[films * 5 * area * 2];
            var labels = new byte[films * area];
            if (nearMisses is not null && batch.NearMisses.Length > 0)
            {
                nearMisses.Render(batch.NearMisses, paths);
            }
            else if (gpu is not null)
            {
                gpu.Render(batch.Geometries, paths, labels);
            }
            else
            {
                RenderOnProcessor(batch, options.Size, paths, labels);
            }

            writing.GetAwaiter().GetResult();
            writing = Task.Run(() => writer.Write(batch, paths, labels));
        }

        writing.GetAwaiter().GetResult();
    }

    private static void RenderOnProcessor(FrameBatch batch, int size, byte[] paths, byte[] labels)
    {
        var area = size * size;
        for (var i = 0; i < batch.Count; i++)
        {
            var image = batch.NearMisses.Length > 0
                ? NearMissRenderer.Render(batch.NearMisses[i], size, size)
                : FilmRenderer.Render(in batch.Geometries[i], size, size);
            var halves = MemoryMarshal.Cast<byte, Half>(paths.AsSpan());
            float[][] planes = [image.Soft, image.Fat, image.Bone, image.Metal, image.Cast];
            for (var p = 0; p < 5; p++)
            {
                for (var j = 0; j < area; j++)
                {
                    halves[(((i * 5) + p) * area) + j] = (Half)planes[p][j];
                }
            }

            image.Labels.CopyTo(labels, i * area);
        }
    }

    private static IEnumerable<FrameBatch> Batches(FeedOptions options)
    {
        var seed = options.FirstSeed;
        var left = options.Count ?? long.MaxValue;
        var choice = new CounterRandom(options.FirstSeed, 99);
        while (left > 0)
        {
            var films = (int)Math.Min(options.Batch, left);
            yield return FrameBatch.Prepare(options, Pick(options.Views, choice.Uniform()), seed, films);
            seed += (ulong)films * options.Step;
            left -= films;
        }
    }

    private static View? Pick(IReadOnlyList<(View? View, double Share)> views, double at)
    {
        var rest = at * views.Sum(v => v.Share);
        foreach (var (view, share) in views)
        {
            rest -= share;
            if (rest < 0)
            {
                return view;
            }
        }

        return views[^1].View;
    }
}
