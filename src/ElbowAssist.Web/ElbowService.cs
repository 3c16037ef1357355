using ElbowAssist.Store;
using ElbowAssist.Web.Archive;
using ElbowAssist.Web.Cases;
using ElbowAssist.Web.Films;
using ElbowAssist.Web.Guard;
using ElbowAssist.Web.Practice;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Readings;
using ElbowAssist.Web.Studies;
using ElbowAssist.Web.Turning;
using ElbowAssist.Web.Watching;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace ElbowAssist.Web;

/// <summary>The page and the service in one web application.</summary>
public static class ElbowService
{
    /// <summary>Where the description of the service lies, as OpenAPI 3.1.</summary>
    public const string OpenApiPath = "/api/openapi.json";

    /// <summary>Puts the application together; the caller starts and disposes it.</summary>
    /// <param name="options">How it runs.</param>
    /// <param name="desk">Opens and reads films.</param>
    /// <param name="store">Studies; stays the caller's to dispose.</param>
    /// <param name="clock">Clock; the machine's if null.</param>
    /// <exception cref="ArgumentException">An address other than loopback without a token.</exception>
    public static WebApplication Create(ServiceOptions options, IFilmDesk desk, StudyStore store, TimeProvider? clock = null)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (!System.Net.IPAddress.IsLoopback(options.Address) && string.IsNullOrEmpty(options.Token))
        {
            throw new ArgumentException("Off loopback the service needs a token.", nameof(options));
        }

        // Slim: no configuration files, no environment, nothing that could change what was asked for.
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ApplicationName = typeof(ElbowService).Assembly.GetName().Name });
        builder.Logging.ClearProviders();
        builder.WebHost.UseSetting(WebHostDefaults.PreventHostingStartupKey, "true");
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.Listen(options.Address, options.Port);
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = options.MaxRequestBytes;
            kestrel.Limits.MaxConcurrentConnections = 256;
            kestrel.Limits.RequestHeadersTimeout = 2 * options.SlowGrace;
            kestrel.Limits.MinRequestBodyDataRate = new(options.MinBytesPerSecond, options.SlowGrace);
        });
        builder.Services.AddSingleton(options);
        builder.Services.AddSingleton(desk);
        builder.Services.AddSingleton(_ => store);
        builder.Services.AddSingleton(clock ?? TimeProvider.System);
        builder.Services.AddSingleton<Workers>();
        builder.Services.AddSingleton<OpenStudies>();
        builder.Services.AddSingleton<DemoStudies>();
        builder.Services.AddSingleton<ArchiveDoor>();
        builder.Services.AddSingleton(_ => new Shelf<ReadFilm>(32, f => f.Weight));
        builder.Services.AddSingleton(_ => new Shelf<ReadStudy>(8, s => s.Films.Sum(f => f.Weight)));
        builder.Services.AddSingleton<Submission>();
        builder.Services.AddSingleton<ReadingJobs>();
        builder.Services.AddSingleton<PracticeRoom>();
        builder.Services.AddSingleton<KnownHand>();
        builder.Services.AddHostedService<ArrivingFilms>();
        builder.Services.AddOpenApi(ServiceDescription.Configure);
        if (options.TelemetryEndpoint is { } collector)
        {
            TelemetryExport.Add(builder.Services, collector, desk.Tool);
        }

        var app = builder.Build();
        app.UseMiddleware<RequestTrace>();
        app.UseMiddleware<AnswerHeaders>();
        app.UseExceptionHandler(new ExceptionHandlerOptions { ExceptionHandler = Unexpected });
        app.UseMiddleware<CallerGuard>();
        app.UseStatusCodePages(context => context.HttpContext.Response.StatusCode switch
        {
            404 => Problem.WriteAsync(context.HttpContext, 404, "not-found", "Not found", "There is nothing at this address."),
            405 => Problem.WriteAsync(context.HttpContext, 405, "method", "Not possible here", "This address does not take that method."),
            415 => Problem.WriteAsync(context.HttpContext, 415, "media-type", "Wrong kind of content", "Send JSON as application/json, and films as they are."),
            var other => Problem.WriteAsync(context.HttpContext, other, "bad-request", "The request cannot be used", "Check the request against the description of the service."),
        });
        PageFiles.Map(app);
        app.MapGet("/api/health", () => Results.Ok(new { status = "up", tool = desk.Tool.Name, version = desk.Tool.Version, caution = Reading.Caution.Text }))
            .WithTags("Service").WithSummary("Whether the service is up");
        ReadingEndpoints.Map(app);
        StudyReadingEndpoints.Map(app);
        StudyEndpoints.Map(app);
        WalkEndpoints.Map(app);
        LineEndpoints.Map(app);
        ReportEndpoints.Map(app);
        TurnEndpoints.Map(app);
        CaseEndpoints.Map(app);
        ArchiveEndpoints.Map(app);
        PracticeEndpoints.Map(app);
        app.MapOpenApi(OpenApiPath);
        return app;
    }

    private static Task Unexpected(HttpContext context)
    {
        var error = context.Features.Get<IExceptionHandlerFeature>()?.Error;
        return error switch
        {
            BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge } =>
                Problem.WriteAsync(context, 413, "too-large", "Too large", "The request is larger than the service takes; send a single film."),
            BadHttpRequestException { StatusCode: StatusCodes.Status408RequestTimeout } =>
                Problem.WriteAsync(context, 408, "too-slow", "Too slow", "The request arrived more slowly than the service waits."),
            BadHttpRequestException =>
                Problem.WriteAsync(context, 400, "bad-request", "The request cannot be used", "Check the request against the description of the service."),
            StoreException store => Problem.WriteAsync(context, 503, "store", "The store cannot be used", store.Message),
            OperationCanceledException => Problem.WriteAsync(context, 503, "stopped", "Stopped", "The work was stopped before it was done; try again."),
            _ => Problem.WriteAsync(context, 500, "unexpected", "Something went wrong", $"Something went wrong inside the program ({error?.GetType().Name}); please report it with what you did."),
        };
    }
}
