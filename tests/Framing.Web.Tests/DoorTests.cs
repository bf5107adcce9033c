using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;

namespace Framing.Web.Tests;

/// <summary>Who may ask, and what.</summary>
public sealed partial class DoorTests
{
    [Theory]
    [InlineData("evil.example")]
    [InlineData("framing.localhost.evil.example")]
    [InlineData("192.168.1.5")]
    [InlineData("127.0.0.1.nip.example")]
    public async Task AnyPath_ForAnotherHost_IsTurnedAway(string host)
    {
        await using var page = await PageFixture.Open();
        foreach (var path in (string[])["/", "/api/plan", "/files/plan.toml", "/health"])
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, path);
            request.Headers.Host = FormattableString.Invariant($"{host}:{page.Page.Address.Port}");
            using var response = await page.Client.SendAsync(request);
            Assert.Equal(HttpStatusCode.MisdirectedRequest, response.StatusCode);
            Assert.DoesNotContain(
                "IC 1805",
                await response.Content.ReadAsStringAsync(),
                StringComparison.Ordinal
            );
        }
    }

    [Theory]
    [InlineData("https://evil.example")]
    [InlineData("http://127.0.0.1:1")]
    [InlineData("null")]
    [InlineData(null)]
    public async Task Changes_FromAnotherOrigin_AreTurnedAway(string? origin)
    {
        await using var page = await PageFixture.Open();
        var mark = page.Desk.Current.Mark;
        page.Client.DefaultRequestHeaders.Remove("Origin");
        if (origin is not null)
        {
            page.Client.DefaultRequestHeaders.Add("Origin", origin);
        }

        var (status, _) = await page.Post(
            "/api/edit",
            new { mark, edits = new[] { new { key = "title", value = "\"Taken\"" } } }
        );

        Assert.Equal(HttpStatusCode.Forbidden, status);
        Assert.Equal(mark, page.Desk.Current.Mark);
    }

    [Fact]
    public async Task Changes_AsAFormWouldSendThem_AreTurnedAway()
    {
        await using var page = await PageFixture.Open();
        using var form = new StringContent("{\"mark\":\"\"}", Encoding.UTF8, "text/plain");
        using var response = await page.Client.PostAsync("/api/save", form);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, response.StatusCode);
    }

    [Theory]
    [InlineData("/files/..%2fplan.toml")]
    [InlineData("/files/%2e%2e%2f%2e%2e%2fetc%2fpasswd")]
    [InlineData("/files/../../etc/passwd")]
    [InlineData("/files/..%5c..%5cwindows")]
    [InlineData("/../plan.toml")]
    [InlineData("/files/plan.toml.unsaved")]
    [InlineData("/files/")]
    [InlineData("/page/index.html")]
    public async Task Paths_ThatLeadOut_LeadNowhere(string path)
    {
        await using var page = await PageFixture.Open();

        // Written by hand: clients tidy such paths before they send them.
        var answer = await Raw(
            page,
            $"GET {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n"
        );
        Assert.Matches(Refusal(), answer.Split('\n')[0]);
        Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("my plan", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AnyAnswer_ForbidsABrowserEverythingForeign()
    {
        await using var page = await PageFixture.Open();
        foreach (
            var path in (string[])["/", "/mount", "/enter", "/app.js", "/api/plan", "/nowhere"]
        )
        {
            using var response = await page.Client.GetAsync(path);
            var policy = Assert.Single(response.Headers.GetValues("Content-Security-Policy"));
            Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
            Assert.Equal(
                "nosniff",
                Assert.Single(response.Headers.GetValues("X-Content-Type-Options"))
            );
            Assert.False(response.Headers.Contains("Server"));
        }
    }

    [Fact]
    public async Task ThePage_NamesNothingOfAnotherMachineAndHoldsNoScriptOfItsOwn()
    {
        await using var page = await PageFixture.Open();
        var all = 0L;
        foreach (
            var path in (string[])
                [
                    "/",
                    "/page.css",
                    "/app.js",
                    "/ask.js",
                    "/sky.js",
                    "/editors.js",
                    "/palette.js",
                    "/mark.svg",
                ]
        )
        {
            var text = await page.Client.GetStringAsync(path);
            all += text.Length;
            Assert.DoesNotMatch(
                Foreign(),
                text.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal)
            );
            Assert.DoesNotContain("style=", text, StringComparison.Ordinal);
            Assert.DoesNotMatch(InnerScript(), text);
        }

        Assert.True(all < 400_000, FormattableString.Invariant($"{all} bytes"));
    }

    [Fact]
    public async Task AFile_ThatTheBrowserHas_IsNotSentAgain()
    {
        await using var page = await PageFixture.Open();
        using var first = await page.Client.GetAsync("/app.js");
        using var request = new HttpRequestMessage(HttpMethod.Get, "/app.js");
        request.Headers.TryAddWithoutValidation("If-None-Match", first.Headers.ETag!.ToString());
        using var second = await page.Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.NotModified, second.StatusCode);
    }

    [Fact]
    public async Task TooMuch_IsTurnedAwayUnread()
    {
        await using var page = await PageFixture.Open();
        using var body = new StringContent(
            "{\"mark\":\"" + new string('x', 3_000_000) + "\"}",
            Encoding.UTF8,
            "application/json"
        );
        using var response = await page.Client.PostAsync("/api/save", body);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, response.StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await page.Client.GetAsync("/health")).StatusCode);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("{\"mark\":3}")]
    [InlineData("{\"mark\":\"a\",\"more\":1}")]
    public async Task ABrokenRequest_IsOneLine(string text)
    {
        await using var page = await PageFixture.Open();
        foreach (
            var path in (string[])["/api/save", "/api/edit", "/api/put", "/api/sketch", "/api/tick"]
        )
        {
            using var body = new StringContent(text, Encoding.UTF8, "application/json");
            using var response = await page.Client.PostAsync(path, body);
            Assert.Contains(
                response.StatusCode,
                (HttpStatusCode[])[HttpStatusCode.BadRequest, HttpStatusCode.Conflict]
            );
            var line = await response.Content.ReadAsStringAsync();
            Assert.DoesNotContain("Exception", line, StringComparison.Ordinal);
            Assert.DoesNotContain(" at ", line, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task AThousandAtOnce_AreAllAnswered()
    {
        await using var page = await PageFixture.Open();
        var answers = await Task.WhenAll(
            Enumerable
                .Range(0, 1000)
                .Select(async i =>
                {
                    using var response = await page.Client.GetAsync(
                        i % 2 == 0 ? "/health" : "/app.js"
                    );
                    return response.StatusCode;
                })
        );
        Assert.All(answers, status => Assert.Equal(HttpStatusCode.OK, status));
    }

    [Fact]
    public async Task OnANetwork_NobodyIsLetInWithoutTheCode()
    {
        await using var page = await PageFixture.Open(address: IPAddress.Any);
        var port = page.Page.Address.Port;
        using var client = new HttpClient(new HttpClientHandler { UseCookies = false })
        {
            BaseAddress = new(FormattableString.Invariant($"http://127.0.0.1:{port}")),
        };
        client.DefaultRequestHeaders.Add(
            "Origin",
            FormattableString.Invariant($"http://127.0.0.1:{port}")
        );
        foreach (
            var path in (string[])
                ["/", "/mount", "/api/plan", "/app.js", "/files/plan.toml", "/sky.png", "/health"]
        )
        {
            Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync(path)).StatusCode);
        }

        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/enter")).StatusCode);
        Assert.Equal(
            HttpStatusCode.Forbidden,
            (await client.PostAsJsonAsync("/api/enter", new { code = "AAAAAAAA" })).StatusCode
        );

        var code = page.Page.Code;
        using var entered = await client.PostAsJsonAsync("/api/enter", new { code });
        Assert.Equal(HttpStatusCode.OK, entered.StatusCode);
        var cookie = Assert.Single(entered.Headers.GetValues("Set-Cookie"));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.NotEqual(code, page.Page.Code);

        client.DefaultRequestHeaders.Add("Cookie", cookie.Split(';')[0]);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/api/plan")).StatusCode);

        // Used up: the same code lets nobody else in.
        Assert.Equal(
            HttpStatusCode.Forbidden,
            (await client.PostAsJsonAsync("/api/enter", new { code })).StatusCode
        );
    }

    [Fact]
    public async Task OnANetwork_GuessingShutsTheDoor()
    {
        await using var page = await PageFixture.Open(address: IPAddress.Any);
        var port = page.Page.Address.Port;
        using var client = new HttpClient
        {
            BaseAddress = new(FormattableString.Invariant($"http://127.0.0.1:{port}")),
        };
        client.DefaultRequestHeaders.Add(
            "Origin",
            FormattableString.Invariant($"http://127.0.0.1:{port}")
        );
        for (var i = 0; i < 10; i++)
        {
            await client.PostAsJsonAsync(
                "/api/enter",
                new { code = FormattableString.Invariant($"WRONG{i}AA") }
            );
        }

        using var right = await client.PostAsJsonAsync("/api/enter", new { code = page.Page.Code });
        Assert.Equal(HttpStatusCode.TooManyRequests, right.StatusCode);
    }

    [Fact]
    public void TheCode_AsAPicture_IsBlocksAlone()
    {
        var drawn = QrText.Of(new("http://192.168.4.1:5000/enter#ABCDEFGH"));
        Assert.All(drawn.Where(sign => sign != '\n'), sign => Assert.Contains(sign, " ▀▄█"));
        Assert.True(drawn.Split('\n').Length is > 10 and < 40);
    }

    private static async Task<string> Raw(PageFixture page, string request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, page.Page.Address.Port);
        await using var stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request));
        using var reader = new StreamReader(stream);
        return await reader.ReadToEndAsync();
    }

    [GeneratedRegex("^HTTP/1.1 4\\d\\d")]
    private static partial Regex Refusal();

    [GeneratedRegex("https?://|//[a-z]+\\.")]
    private static partial Regex Foreign();

    [GeneratedRegex("<script(?![^>]*src=)|\\son[a-z]+=\"")]
    private static partial Regex InnerScript();
}
