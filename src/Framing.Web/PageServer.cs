using System.Net;
using Framing.Workshop;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Framing.Web;

/// <summary>The page on the user's own machine.</summary>
/// <remarks>
/// It answers on this machine alone unless told otherwise. On another address everybody first enters a one-time code that
/// stands in the terminal. Nothing is ever asked of another machine.
/// </remarks>
public sealed class PageServer : IAsyncDisposable
{
    /// <summary>The most bytes a request may bring.</summary>
    private const long MostBytes = 2_000_000;

    private readonly WebApplication app;
    private readonly EntryCode code;

    private PageServer(WebApplication app, EntryCode code, PageSettings settings)
    {
        this.app = app;
        this.code = code;
        var bound = app
            .Services.GetRequiredService<IServer>()
            .Features.Get<IServerAddressesFeature>()!
            .Addresses.First();
        Address = new(bound);
        IsLocal = settings.IsLocal;
    }

    /// <summary>Where the page is.</summary>
    public Uri Address { get; }

    /// <summary>True when it answers on this machine alone.</summary>
    public bool IsLocal { get; }

    /// <summary>The code that a telephone has to enter; it changes each time it has been used.</summary>
    public string Code => code.Current;

    /// <summary>The address that carries the code where no server and no log sees it: behind the hash.</summary>
    public Uri AddressWithCode => new(Address, "/enter#" + Code);

    /// <summary>Told when a code has been used and a new one holds.</summary>
    public event EventHandler CodeRenewed
    {
        add => code.Renewed += value;
        remove => code.Renewed -= value;
    }

    /// <summary>Starts the page.</summary>
    /// <param name="settings">What it serves, and where.</param>
    /// <param name="cancel">Gives up starting.</param>
    /// <returns>The page, answering.</returns>
    /// <exception cref="InputException">The address or the port cannot be had.</exception>
    public static async Task<PageServer> Start(
        PageSettings settings,
        CancellationToken cancel = default
    )
    {
        ArgumentNullException.ThrowIfNull(settings);
        var entry = new EntryCode(TimeProvider.System);
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.Services.AddRoutingCore();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MostBytes;
            kestrel.Limits.MaxRequestHeadersTotalSize = 16_384;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
            kestrel.Limits.KeepAliveTimeout = TimeSpan.FromMinutes(2);
            kestrel.Limits.MaxConcurrentConnections = 1_000;
            kestrel.Limits.MinRequestBodyDataRate = new(240, TimeSpan.FromSeconds(5));
            kestrel.Limits.MinResponseDataRate = new(240, TimeSpan.FromSeconds(10));
            kestrel.Listen(settings.Address, settings.Port);
        });
        var web = builder.Build();
        var door = new Doorkeeper(settings, entry);
        web.Use((context, next) => door.Pass(context, next));
        Map(web, settings, entry);
        try
        {
            await web.StartAsync(cancel);
        }
        catch (Exception fault) when (fault is IOException or System.Net.Sockets.SocketException)
        {
            await web.DisposeAsync();
            throw new InputException(
                FormattableString.Invariant(
                    $"The page cannot answer on {settings.Address} port {settings.Port}: the address is not this machine's or the port is taken. Give another --port, or leave it out for a free one."
                ),
                fault
            );
        }

        return new(web, entry, settings);
    }

    /// <summary>Waits until the page is told to stop.</summary>
    /// <param name="cancel">Stops it.</param>
    /// <returns>Ends when every answer under way is given.</returns>
    public async Task Run(CancellationToken cancel)
    {
        var stopped = new TaskCompletionSource();
        await using var told = cancel.Register(stopped.SetResult);
        await stopped.Task;
        await app.StopAsync(new CancellationTokenSource(TimeSpan.FromSeconds(3)).Token);
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => app.DisposeAsync();

    private static void Map(WebApplication app, PageSettings settings, EntryCode code)
    {
        var files = new PageFiles();
        foreach (var path in files.Paths)
        {
            Get(path, context => files.Send(context, path));
        }

        var answers = new PageAnswers(settings);
        Get("/health", context => Answer.Json(context, new { healthy = true }));
        Get("/api/plan", answers.Plan);
        Get("/api/sky", answers.Sky);
        Get("/api/find", PageAnswers.Find);
        Get("/api/strategies", answers.Strategies);
        Get("/sky.png", answers.SkyPicture);
        Get("/night.svg", answers.NightPicture);
        Get(
            "/files/{name}",
            context => answers.Download(context, (string)context.Request.RouteValues["name"]!)
        );
        Post("/api/edit", answers.Edit);
        Post("/api/put", answers.Put);
        Post("/api/save", answers.Save);
        Post("/api/tick", answers.Tick);
        Post("/api/sketch", answers.Sketch);
        Post("/api/enter", context => Enter(context, code));
        app.MapFallback(context =>
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            return Answer.Problem(context, "There is nothing here.");
        });

        void Get(string path, Func<HttpContext, Task> work) =>
            app.MapGet(path, context => Answer.Guarded(context, () => work(context)));

        void Post(string path, Func<HttpContext, Task> work) =>
            app.MapPost(path, context => Answer.Guarded(context, () => work(context)));
    }

    private static async Task Enter(HttpContext context, EntryCode code)
    {
        var asked = await Answer.Read<EnterRequest>(context);
        if (code.TryEnter(asked.Code, out var cookie, out var isShut))
        {
            context.Response.Cookies.Append(
                Doorkeeper.CookieName,
                cookie,
                new()
                {
                    HttpOnly = true,
                    SameSite = SameSiteMode.Strict,
                    Path = "/",
                }
            );
            await Answer.Json(context, new { entered = true });
            return;
        }

        context.Response.StatusCode = isShut
            ? StatusCodes.Status429TooManyRequests
            : StatusCodes.Status403Forbidden;
        await Answer.Problem(
            context,
            isShut
                ? "Too many wrong codes; try again in a minute."
                : "This is not the code that the terminal shows now."
        );
    }

    internal sealed record EnterRequest(string Code);
}
