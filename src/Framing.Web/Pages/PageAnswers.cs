using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.Json.Nodes;
using Framing.Catalogue;
using Framing.Drawing;
using Framing.Export;
using Framing.Planning;
using Framing.Sky;
using Framing.Strategies;
using Framing.Workshop;
using Microsoft.AspNetCore.Http;

namespace Framing.Web;

/// <summary>What the page can ask for.</summary>
internal sealed class PageAnswers(PageSettings settings)
{
    private readonly Lock gate = new();
    private (string Mark, DeskSky Sky)? lastSky;
    private (string Key, byte[] Bytes)? lastPicture;

    private PlanDesk Desk => settings.Desk;

    public Task Plan(HttpContext context) => Answer.Json(context, Now(Desk.Current));

    public async Task Edit(HttpContext context)
    {
        var asked = await Answer.Read<EditRequest>(context);
        await Answer.Json(context, Now(Desk.Edit(asked.Mark, asked.Edits)));
    }

    public async Task Put(HttpContext context)
    {
        var asked = await Answer.Read<PutRequest>(context);
        await Answer.Json(context, Now(Desk.Put(asked.Mark, asked.Text)));
    }

    public async Task Save(HttpContext context)
    {
        var asked = await Answer.Read<SaveRequest>(context);
        Desk.Save(asked.Mark);
        await Answer.Json(context, Now(Desk.Current));
    }

    public async Task Tick(HttpContext context)
    {
        var asked = await Answer.Read<TickRequest>(context);
        DonePanels.Tick(Desk.Path, Desk.Current.Plan.Panels.Count, asked.Number, asked.IsDone);
        await Answer.Json(context, Now(Desk.Current));
    }

    /// <summary>The panels of the plan as it is, in a picture of a size.</summary>
    public Task Sky(HttpContext context)
    {
        var plan = Desk.Current;
        var ground = SkyOf(plan, SizeIn(context.Request.Query));
        return Answer.Json(
            context,
            new SkyAnswer(
                plan.Mark,
                ground.Chart.Left,
                ground.Chart.Top,
                ground.Chart.Width,
                ground.Chart.Height,
                ground.Chart.Scale.Arcseconds,
                SketchAnswer.Of(plan.Plan, ground.Chart)
            )
        );
    }

    /// <summary>The panels where the hand has moved them.</summary>
    public async Task Sketch(HttpContext context)
    {
        var asked = await Answer.Read<SketchRequest>(context);
        var plan = Desk.Current;
        if (!string.Equals(plan.Mark, asked.Mark, StringComparison.Ordinal))
        {
            throw new StalePlanException();
        }

        if (
            plan.Plan.Panels.Count == 0
            || !double.IsFinite(asked.X)
            || !double.IsFinite(asked.Y)
            || !double.IsFinite(asked.TurnDeg)
            || Math.Abs(asked.X) > 1e5
            || Math.Abs(asked.Y) > 1e5
        )
        {
            throw new InputException("There is nothing to move there.");
        }

        var ground = SkyOf(plan, SizeOf(asked.Width, asked.Height));
        var centre = ground.Chart.PictureToSky(new(asked.X, asked.Y));
        var pose = new CameraPose(
            centre,
            plan.Plan.Pose.PositionAngle.TurnedBy(Angle.FromDegrees(asked.TurnDeg))
        );
        await Answer.Json(
            context,
            SketchAnswer.Of(FramingSketch.At(plan.Plan, pose), ground.Chart)
        );
    }

    public async Task SkyPicture(HttpContext context)
    {
        var query = context.Request.Query;
        var plan = Desk.Current;
        if (query["mark"] != plan.Mark)
        {
            throw new StalePlanException();
        }

        var ground = SkyOf(plan, SizeIn(query));
        var palette = query["palette"] == "night" ? PicturePalette.Night : PicturePalette.Day;
        var key = $"{plan.Mark} {ground.Size} {palette}";
        byte[] bytes;
        lock (gate)
        {
            bytes = lastPicture is { } last && last.Key == key ? last.Bytes : ground.ToPng(palette);
            lastPicture = (key, bytes);
        }

        context.Response.Headers.CacheControl = "private, max-age=3600, immutable";
        await Send(context, bytes, "image/png");
    }

    /// <summary>The band of the nights; nothing where the plan names no site.</summary>
    public async Task NightPicture(HttpContext context)
    {
        var query = context.Request.Query;
        var plan = Desk.Current;
        if (query["mark"] != plan.Mark)
        {
            throw new StalePlanException();
        }

        var palette = query["palette"] == "night" ? PicturePalette.Night : PicturePalette.Day;
        if (DeskPictures.Nights(plan, palette) is not { } band)
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            await Answer.Problem(context, "The plan names no site: it has no nights.");
            return;
        }

        context.Response.Headers.CacheControl = "private, max-age=3600, immutable";
        await Send(context, Encoding.UTF8.GetBytes(band.ToSvg()), "image/svg+xml");
    }

    public static Task Find(HttpContext context)
    {
        var words = context.Request.Query["words"].ToString();
        var found = ObjectCatalogue.Embedded.Find(words.Length > 200 ? words[..200] : words);
        return Answer.Json(
            context,
            new FindAnswer(
                found.Entry?.Label,
                found.Entry is null ? UnknownName.Problem(found) : null
            )
        );
    }

    public Task Strategies(HttpContext context) =>
        Answer.Json(
            context,
            settings.Shelf.Strategies.Select(found => new StrategyAnswer(
                found.Kind == StrategyKind.Rotation ? "rotation" : "overlap",
                found.Name,
                found.Summary,
                [
                    .. found.Settings.Select(setting => new SettingAnswer(
                        setting.Name,
                        setting.Kind.ToString().ToLowerInvariant(),
                        setting.Summary,
                        setting.Default
                    )),
                ]
            ))
        );

    /// <summary>A file of the plan, by its name; all of them as one.</summary>
    public async Task Download(HttpContext context, string name)
    {
        var plan = Desk.Current;
        if (string.Equals(name, "everything.zip", StringComparison.Ordinal))
        {
            using var zip = new MemoryStream();
            using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
            {
                foreach (var file in FileNames(plan))
                {
                    using var entry = archive.CreateEntry(file, CompressionLevel.Fastest).Open();
                    entry.Write(FileOf(plan, file)!);
                }
            }

            Attach(context, "everything.zip");
            await Send(context, zip.ToArray(), "application/zip");
            return;
        }

        if (FileOf(plan, name) is not { } bytes)
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            await Answer.Problem(
                context,
                $"There is no file of this name; there are {string.Join(", ", FileNames(plan))} and everything.zip."
            );
            return;
        }

        Attach(context, name);
        await Send(
            context,
            bytes,
            Path.GetExtension(name) switch
            {
                ".json" => "application/json; charset=utf-8",
                ".csv" => "text/csv; charset=utf-8",
                ".toml" => "application/toml; charset=utf-8",
                ".svg" => "image/svg+xml",
                _ => "image/png",
            }
        );
    }

    private static readonly string[] FilesOfAnyPlan =
    [
        "plan.toml",
        "report.json",
        "panels.csv",
        "sky.png",
        "sky.svg",
    ];

    private static readonly string[] FilesOfNights = ["blocks.csv", "night.png", "night.svg"];

    private static IEnumerable<string> FileNames(DeskPlan plan) =>
        plan.Nights is null ? FilesOfAnyPlan : FilesOfAnyPlan.Concat(FilesOfNights);

    private static byte[]? FileOf(DeskPlan plan, string name) =>
        name switch
        {
            "plan.toml" => Encoding.UTF8.GetBytes(plan.Text),
            "report.json" => Encoding.UTF8.GetBytes(plan.Report),
            "panels.csv" => PanelTable.Write(plan.Plan, plan.Nights),
            "sky.png" => DeskPictures.Sky(plan).ToPng(),
            "sky.svg" => Encoding.UTF8.GetBytes(DeskPictures.Sky(plan).ToSvg()),
            "blocks.csv" when plan.Nights is { } nights => BlockTable.Write(nights),
            "night.png" => DeskPictures.Nights(plan)?.ToPng(),
            "night.svg" when DeskPictures.Nights(plan) is { } band => Encoding.UTF8.GetBytes(
                band.ToSvg()
            ),
            _ => null,
        };

    private PlanAnswer Now(DeskPlan plan) =>
        new()
        {
            Mark = plan.Mark,
            FileName = Path.GetFileName(Desk.Path),
            IsSaved = Desk.IsSaved,
            WasRecovered = Desk.WasRecovered,
            Text = plan.Text,
            Sentence = PlanSentence.Of(plan),
            Report = JsonNode.Parse(plan.Report)!,
            Form = FormAnswer.Of(plan),
            HasNights = plan.Nights is not null,
            Messages = plan.Messages,
            Done = DonePanels.Read(Desk.Path, plan.Plan.Panels.Count),
        };

    private DeskSky SkyOf(DeskPlan plan, PictureSize size)
    {
        lock (gate)
        {
            if (lastSky is not { } last || last.Mark != plan.Mark || last.Sky.Size != size)
            {
                lastSky = last = (plan.Mark, DeskSky.Of(plan, size));
            }

            return last.Sky;
        }
    }

    private static PictureSize SizeIn(IQueryCollection query) =>
        SizeOf(Whole(query["width"]), Whole(query["height"]));

    private static PictureSize SizeOf(int width, int height) =>
        new(Math.Clamp(width, 320, 4000), Math.Clamp(height, 200, 4000));

    private static int Whole(string? text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw new InputException("Give width and height of the picture in pixels.");

    private static void Attach(HttpContext context, string name) =>
        context.Response.Headers.ContentDisposition = $"attachment; filename=\"{name}\"";

    private static async Task Send(HttpContext context, byte[] bytes, string type)
    {
        context.Response.ContentType = type;
        context.Response.ContentLength = bytes.Length;
        await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
    }

    internal sealed record EditRequest(string Mark, IReadOnlyList<PlanEdit> Edits);

    internal sealed record PutRequest(string Mark, string Text);

    internal sealed record SaveRequest(string Mark);

    internal sealed record TickRequest(int Number, bool IsDone);

    internal sealed record SketchRequest(
        string Mark,
        int Width,
        int Height,
        double X,
        double Y,
        double TurnDeg
    );

    private sealed record SkyAnswer(
        string Mark,
        int Left,
        int Top,
        int Width,
        int Height,
        double ArcsecPerPx,
        SketchAnswer Panels
    );

    private sealed record FindAnswer(string? Label, string? Problem);

    private sealed record StrategyAnswer(
        string Decides,
        string Name,
        string Summary,
        IReadOnlyList<SettingAnswer> Settings
    );

    private sealed record SettingAnswer(string Name, string Kind, string Summary, object? Default);
}
