using Microsoft.AspNetCore.Http;

namespace ElbowAssist.Web.Problems;

/// <summary>Refusals of the service as problem details (RFC 9457): a stable type, a title, one sentence.</summary>
internal static class Problem
{
    private const string Types = "urn:elbowassist:problem:";

    public static IResult NotFound(string what) => Of(StatusCodes.Status404NotFound, "not-found", "Not found", $"There is no such {what}; it may have been deleted.");

    public static IResult BadRequest(string sentence) => Of(StatusCodes.Status400BadRequest, "bad-request", "The request cannot be used", sentence);

    public static IResult Unreadable(string sentence) => Of(StatusCodes.Status422UnprocessableEntity, "unreadable-film", "The film cannot be read", sentence);

    /// <summary>The reader's own answer or line comes first, or something else must come before.</summary>
    public static IResult NotYet(string code, string sentence) => Of(StatusCodes.Status409Conflict, code, "Not yet", sentence);

    public static IResult Of(int status, string code, string title, string sentence) =>
        Results.Problem(sentence, statusCode: status, title: title, type: Types + code, extensions: new Dictionary<string, object?> { ["code"] = code });

    /// <summary>Writes a problem where no endpoint has run.</summary>
    public static Task WriteAsync(HttpContext context, int status, string code, string title, string sentence) => Of(status, code, title, sentence).ExecuteAsync(context);
}
