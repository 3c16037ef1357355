using ElbowAssist.Reading;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace ElbowAssist.Web;

/// <summary>The description of the service as OpenAPI 3.1.</summary>
internal static class ServiceDescription
{
    public static void Configure(OpenApiOptions options)
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new OpenApiInfo
            {
                Title = "ElbowAssist",
                Version = "1",
                Description = "Lays alignment lines on elbow radiographs for a second look. Refusals are problem details (RFC 9457). " +
                    "Readings follow elbowassist/reading/1, whose JSON Schema is shipped with the packages. Changes of a study are kept with the word in the header Reader, percent-encoded, at most 40 characters. " + Caution.Text,
            };
            document.Servers = [];
            return Task.CompletedTask;
        });
        // Who may call, how large and how slow a request may be, is decided before any route: such refusals are the same for all.
        options.AddOperationTransformer((operation, _, _) =>
        {
            operation.Responses ??= [];
            operation.Responses.TryAdd("default", new OpenApiResponse
            {
                Description = "Refused before the route: 400, 401, 403, 405, 408, 413, 415, 421, 500 or 503, as a problem with one sentence",
                Content = new Dictionary<string, OpenApiMediaType>(StringComparer.Ordinal)
                {
                    ["application/problem+json"] = new() { Schema = new OpenApiSchemaReference("ProblemDetails") },
                },
            });
            return Task.CompletedTask;
        });
    }
}
