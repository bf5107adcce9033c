using System.Text.Json;
using System.Text.Json.Serialization;
using Framing.Workshop;
using Microsoft.AspNetCore.Http;

namespace Framing.Web;

/// <summary>Writes answers as JSON.</summary>
internal static class Answer
{
    public static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        MaxDepth = 16,
    };

    public static Task Json<T>(HttpContext context, T value)
    {
        context.Response.ContentType = "application/json; charset=utf-8";
        return JsonSerializer.SerializeAsync(
            context.Response.Body,
            value,
            Options,
            context.RequestAborted
        );
    }

    /// <summary>One line that says what is wrong.</summary>
    public static Task Problem(HttpContext context, string line) =>
        Json(context, new Wrong(line.ReplaceLineEndings(" ")));

    /// <summary>Runs what was asked; a wrong input becomes one line and a status.</summary>
    public static async Task Guarded(HttpContext context, Func<Task> work)
    {
        try
        {
            await work();
        }
        catch (StalePlanException stale)
        {
            context.Response.StatusCode = StatusCodes.Status409Conflict;
            await Problem(context, stale.Message);
        }
        catch (InputException wrong)
        {
            context.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            await Problem(context, wrong.Message);
        }
        catch (BadHttpRequestException wrong)
        {
            context.Response.StatusCode = wrong.StatusCode;
            await Problem(context, wrong.Message);
        }
        catch (JsonException)
        {
            context.Response.StatusCode = StatusCodes.Status400BadRequest;
            await Problem(
                context,
                "The request is no JSON document of the kind that is wanted here."
            );
        }
    }

    /// <summary>Reads a small JSON document.</summary>
    public static async Task<T> Read<T>(HttpContext context)
    {
        if (!context.Request.HasJsonContentType())
        {
            throw new BadHttpRequestException(
                "Send a JSON document.",
                StatusCodes.Status415UnsupportedMediaType
            );
        }

        return await JsonSerializer.DeserializeAsync<T>(
                context.Request.Body,
                Options,
                context.RequestAborted
            ) ?? throw new JsonException();
    }

    private sealed record Wrong(string Problem);
}
