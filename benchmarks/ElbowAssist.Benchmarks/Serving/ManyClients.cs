using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;

namespace ElbowAssist.Benchmarks.Serving;

/// <summary>What many clients met at the service.</summary>
/// <param name="FilmsPerSecond">Readings answered, over the whole time.</param>
/// <param name="Answers">Answers by status.</param>
/// <param name="WithoutWaitTold">Refusals that did not say when to come again, or were no problem details.</param>
/// <param name="LargestMemoryMiB">Largest resident memory of the service seen.</param>
/// <param name="MedianSeconds">Median time of a reading as a client meets it.</param>
internal sealed record ClientsMet(double FilmsPerSecond, IReadOnlyDictionary<int, int> Answers, int WithoutWaitTold, long LargestMemoryMiB, double MedianSeconds);

/// <summary>Clients that each send one film after the other and come again when they are told to.</summary>
internal static class ManyClients
{
    public static async Task<ClientsMet> SendAsync(Uri address, IReadOnlyList<byte[]> films, int clients, TimeSpan time, Process service)
    {
        using var http = new HttpClient(new SocketsHttpHandler { MaxConnectionsPerServer = clients }) { BaseAddress = address, Timeout = TimeSpan.FromMinutes(2) };
        ConcurrentDictionary<int, int> answers = [];
        ConcurrentBag<double> times = [];
        var (sent, dishonest, largest, watch) = (0, 0, 0L, Stopwatch.StartNew());
        using var end = new CancellationTokenSource();
        var memory = Task.Run(async () =>
        {
            while (!end.IsCancellationRequested)
            {
                service.Refresh();
                largest = Math.Max(largest, service.WorkingSet64 >> 20);
                await Task.Delay(250).ConfigureAwait(false);
            }
        });
        await Task.WhenAll(Enumerable.Range(0, clients).Select(async client =>
        {
            while (watch.Elapsed < time)
            {
                // Another name is another request: nothing comes from the readings made before.
                var number = Interlocked.Increment(ref sent);
                var began = watch.Elapsed;
                using var film = new ByteArrayContent(films[number % films.Count]);
                using var answer = await http.PostAsync(new Uri(FormattableString.Invariant($"api/readings?view=lateral&name={number}.png"), UriKind.Relative), film).ConfigureAwait(false);
                _ = await answer.Content.ReadAsByteArrayAsync().ConfigureAwait(false);
                answers.AddOrUpdate((int)answer.StatusCode, 1, (_, count) => count + 1);
                if (answer.IsSuccessStatusCode)
                {
                    times.Add((watch.Elapsed - began).TotalSeconds);
                    continue;
                }

                var wait = answer.Headers.RetryAfter?.Delta;
                if (answer.StatusCode is not (HttpStatusCode.TooManyRequests or HttpStatusCode.ServiceUnavailable) || wait is null || answer.Content.Headers.ContentType?.MediaType != "application/problem+json")
                {
                    Interlocked.Increment(ref dishonest);
                }

                await Task.Delay(wait ?? TimeSpan.FromSeconds(1)).ConfigureAwait(false);
            }
        })).ConfigureAwait(false);
        var took = watch.Elapsed.TotalSeconds;
        await end.CancelAsync().ConfigureAwait(false);
        await memory.ConfigureAwait(false);
        double[] sorted = [.. times.Order()];
        return new(sorted.Length / took, answers, dishonest, largest, sorted.Length == 0 ? double.NaN : sorted[sorted.Length / 2]);
    }

    public static string Told(ClientsMet met) => string.Create(CultureInfo.InvariantCulture,
        $"{met.FilmsPerSecond:0.00} films a second, median {met.MedianSeconds:0.0} s; answers {string.Join(", ", met.Answers.OrderBy(a => a.Key).Select(a => FormattableString.Invariant($"{a.Value} × {a.Key}")))}; refusals without a time to come again: {met.WithoutWaitTold}; memory at most {met.LargestMemoryMiB} MiB");
}
