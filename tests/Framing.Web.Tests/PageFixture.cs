using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Framing.Workshop;

namespace Framing.Web.Tests;

/// <summary>A page that answers on a free port, over a plan in a folder of its own.</summary>
internal sealed class PageFixture : IAsyncDisposable
{
    public const string Plan = """
        # my plan
        title = "Page"

        [rig]
        focal_length_mm = 250
        sensor_px = [4144, 2822]
        pixel_um = 4.63

        [target]
        names = ["IC 1805", "IC 1848", "HB 3"] # all three

        [night]
        date = 2026-12-05

        """;

    private readonly HttpClientHandler handler = new()
    {
        UseCookies = false,
        AllowAutoRedirect = false,
    };

    private PageFixture(string folder, PlanDesk desk, PageServer page)
    {
        Folder = folder;
        Desk = desk;
        Page = page;
        Client = new(handler) { BaseAddress = page.Address };
        Client.DefaultRequestHeaders.Add("Origin", page.Address.GetLeftPart(UriPartial.Authority));
    }

    public string Folder { get; }

    public PlanDesk Desk { get; }

    public PageServer Page { get; }

    public HttpClient Client { get; }

    public string PlanPath => Desk.Path;

    public static async Task<PageFixture> Open(string plan = Plan, IPAddress? address = null)
    {
        var folder = Directory.CreateTempSubdirectory("page-").FullName;
        var path = Path.Combine(folder, "plan.toml");
        await File.WriteAllTextAsync(path, plan);
        var shelf = PluginShelf.Open(PluginShelf.FolderBesideProgram);
        var desk = PlanDesk.Open(path, shelf, TimeProvider.System);
        return new(
            folder,
            desk,
            await PageServer.Start(
                new()
                {
                    Desk = desk,
                    Shelf = shelf,
                    Address = address ?? IPAddress.Loopback,
                }
            )
        );
    }

    public async Task<JsonElement> Get(string path)
    {
        using var response = await Client.GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return await response.Content.ReadFromJsonAsync<JsonElement>();
    }

    public async Task<(HttpStatusCode Status, JsonElement Document)> Post(string path, object body)
    {
        using var response = await Client.PostAsJsonAsync(path, body);
        return (response.StatusCode, await response.Content.ReadFromJsonAsync<JsonElement>());
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        handler.Dispose();
        await Page.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }
}
