using System.Net;
using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace Framing.Web;

/// <summary>Stands before every answer of the page: who may ask, from where, and what a browser may do with the answer.</summary>
/// <remarks>
/// The Host header must be an address of this machine: a name that some other site lets point here is turned away (DNS
/// rebinding). What changes anything must come from the page itself: the Origin header has to be that of the Host.
/// </remarks>
internal sealed class Doorkeeper(PageSettings settings, EntryCode code)
{
    public const string CookieName = "framing-entry";

    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; connect-src 'self'; manifest-src 'self'; form-action 'none'; frame-ancestors 'none'; base-uri 'none'";

    public async Task Pass(HttpContext context, RequestDelegate next)
    {
        var headers = context.Response.Headers;
        headers[HeaderNames.ContentSecurityPolicy] = Policy;
        headers[HeaderNames.XContentTypeOptions] = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers[HeaderNames.CacheControl] = "no-store";
        var request = context.Request;
        if (!IsOurHost(request.Host, context.Connection.LocalIpAddress))
        {
            await Refuse(
                context,
                StatusCodes.Status421MisdirectedRequest,
                "This page answers to its own address alone."
            );
            return;
        }

        var changes = !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method);
        if (changes && !IsOurOrigin(request))
        {
            await Refuse(
                context,
                StatusCodes.Status403Forbidden,
                "Changes are taken from the page itself alone."
            );
            return;
        }

        if (!MayEnter(request))
        {
            await Refuse(
                context,
                StatusCodes.Status401Unauthorized,
                "Enter the code that the terminal shows."
            );
            return;
        }

        await next(context);
    }

    private static async Task Refuse(HttpContext context, int status, string line)
    {
        context.Response.StatusCode = status;
        await Answer.Problem(context, line);
    }

    private bool IsOurHost(HostString host, IPAddress? local)
    {
        var name = host.Host.Trim('[', ']');
        if (settings.IsLocal)
        {
            return string.Equals(name, "localhost", StringComparison.OrdinalIgnoreCase)
                || (IPAddress.TryParse(name, out var asked) && IPAddress.IsLoopback(asked));
        }

        // On a network: the very address that was reached, never a name.
        return IPAddress.TryParse(name, out var named)
            && local is not null
            && Plain(named).Equals(Plain(local));
    }

    private static IPAddress Plain(IPAddress address) =>
        address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;

    private static bool IsOurOrigin(HttpRequest request) =>
        request.Headers.Origin is [{ } origin]
        && string.Equals(
            origin,
            $"{request.Scheme}://{request.Host.Value}",
            StringComparison.OrdinalIgnoreCase
        );

    private bool MayEnter(HttpRequest request) =>
        settings.IsLocal
        || code.Knows(request.Cookies[CookieName])
        || PageFiles.IsForTheDoor(request.Path)
        || request.Path == "/api/enter";
}
