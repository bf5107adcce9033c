using System.Security.Cryptography;
using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace Framing.Web;

/// <summary>The page's own files, carried in the program.</summary>
internal sealed class PageFiles
{
    private static readonly Dictionary<string, string> Types = new(StringComparer.Ordinal)
    {
        [".html"] = "text/html; charset=utf-8",
        [".css"] = "text/css; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".svg"] = "image/svg+xml",
    };

    // What a telephone sees before it has entered the code.
    private static readonly HashSet<string> ForTheDoor = new(StringComparer.Ordinal)
    {
        "/enter",
        "/enter.js",
        "/ask.js",
        "/page.css",
        "/mark.svg",
    };

    private readonly Dictionary<string, Entry> entries = new(StringComparer.Ordinal);

    public PageFiles()
    {
        var assembly = typeof(PageFiles).Assembly;
        foreach (var name in assembly.GetManifestResourceNames())
        {
            if (!name.StartsWith("page/", StringComparison.Ordinal))
            {
                continue;
            }

            using var stream = assembly.GetManifestResourceStream(name)!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            var file = name["page/".Length..].Replace('\\', '/');
            var path = file switch
            {
                "index.html" => "/",
                _ when file.EndsWith(".html", StringComparison.Ordinal) => "/"
                    + file[..^".html".Length],
                _ => "/" + file,
            };
            entries[path] = new(
                bytes,
                Types[Path.GetExtension(file)],
                $"\"{Convert.ToHexStringLower(SHA256.HashData(bytes).AsSpan(0, 8))}\""
            );
        }
    }

    public IEnumerable<string> Paths => entries.Keys;

    public static bool IsForTheDoor(PathString path) => ForTheDoor.Contains(path.Value ?? "");

    public async Task Send(HttpContext context, string path)
    {
        var entry = entries[path];
        var response = context.Response;
        response.Headers.ETag = entry.Mark;
        response.Headers.CacheControl = "no-cache";
        if (context.Request.Headers.IfNoneMatch == entry.Mark)
        {
            response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        response.ContentType = entry.Type;
        response.ContentLength = entry.Bytes.Length;
        await response.Body.WriteAsync(entry.Bytes, context.RequestAborted);
    }

    private sealed record Entry(byte[] Bytes, string Type, string Mark);
}
