using System.Security.Cryptography;
using System.Text;
using ElbowAssist.Exchange;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Web.Films;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Watching;
using Microsoft.AspNetCore.Http;

namespace ElbowAssist.Web.Readings;

/// <summary>
/// The one way that films and studies of programs take: found on the shelf by their content, else read by the workers, and
/// answered at once or as a job.
/// </summary>
internal sealed class Submission(Workers workers, ReadingJobs jobs, ServiceOptions options, TimeProvider clock)
{
    /// <summary>Whether one more may come in; asked before the body is taken in, so that what cannot be served takes no memory.</summary>
    public bool HasRoom => workers.HasRoom;

    public static IResult Busy(HttpResponse response)
    {
        Telemetry.TurnedAway.Add(1);
        response.Headers.RetryAfter = "2";
        return Problem.Of(429, "too-many", "Too many at once", "As many films are being read as this machine can; try again in a moment.");
    }

    /// <summary>What names a submission: the bytes sent and what was said of them.</summary>
    public static string Key(IEnumerable<byte[]> contents, string said) =>
        Convert.ToHexStringLower(SHA256.HashData([.. contents.SelectMany(SHA256.HashData), .. Encoding.UTF8.GetBytes(said)]))[..32];

    /// <summary>Answers with what was asked for, or with the job that makes it.</summary>
    /// <param name="context">The request.</param>
    /// <param name="key">Names it on the shelf.</param>
    /// <param name="address">Where it can be asked for again.</param>
    /// <param name="shelf">What was made last.</param>
    /// <param name="films">Reads one film each.</param>
    /// <param name="whole">Puts the films together.</param>
    /// <param name="answer">The format asked for.</param>
    public async Task<IResult> AnswerAsync<T>(
        HttpContext context, string key, string address, Shelf<T> shelf, IReadOnlyList<Func<CancellationToken, ReadFilm>> films, Func<IReadOnlyList<ReadFilm>, T> whole, Func<T, IResult> answer)
        where T : class
    {
        if (context.Request.Headers["Prefer"].ToString().Contains("respond-async", StringComparison.OrdinalIgnoreCase))
        {
            var job = jobs.Begin(films.Count, async (read, cancellation) =>
            {
                if (shelf.Find(key) is null)
                {
                    shelf.Put(key, whole(await ReadAsync(films, read, cancellation).ConfigureAwait(false)));
                }

                return address;
            });
            return Results.Accepted($"/api/readings/jobs/{job.Id}", job);
        }

        if (shelf.Find(key) is not { } found)
        {
            if (!HasRoom)
            {
                return Busy(context.Response);
            }

            using var limit = new CancellationTokenSource(options.Patience, clock);
            using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, context.RequestAborted);
            try
            {
                found = whole(await ReadAsync(films, _ => { }, either.Token).ConfigureAwait(false));
                shelf.Put(key, found);
            }
            catch (OperationCanceledException) when (limit.IsCancellationRequested)
            {
                context.Response.Headers.RetryAfter = "10";
                return Problem.Of(503, "too-slow", "Took too long", "The reading took longer than a request may; ask for it as a job, or try again later.");
            }
            catch (Exception e) when (e is UnreadableFilmException or ExchangeFormatException)
            {
                return Problem.Unreadable(e.Message);
            }
        }

        context.Response.Headers.ContentLocation = address;
        return answer(found);
    }

    // Side by side as far as workers are free. A study with a film missing could hide the view that matters, so one that
    // cannot be read stops them all.
    private async Task<IReadOnlyList<ReadFilm>> ReadAsync(IReadOnlyList<Func<CancellationToken, ReadFilm>> films, Action<int> read, CancellationToken cancellation)
    {
        var done = 0;
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        return await Task.WhenAll(films.Select(async film =>
        {
            try
            {
                var one = await workers.RunAsync(
                    c =>
                    {
                        read(Volatile.Read(ref done));
                        return film(c);
                    },
                    stop.Token).ConfigureAwait(false);
                read(Interlocked.Increment(ref done));
                return one;
            }
            catch (Exception e) when (e is UnreadableFilmException or ExchangeFormatException)
            {
                await stop.CancelAsync().ConfigureAwait(false);
                throw;
            }
        })).ConfigureAwait(false);
    }
}
