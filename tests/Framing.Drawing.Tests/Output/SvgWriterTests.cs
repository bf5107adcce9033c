using System.Diagnostics;
using System.Globalization;
using System.Xml.Linq;
using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class SvgWriterTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void ToSvg_Scene_IsWellFormedWithoutTextElements()
    {
        var picture = SkyPicture.Compose(InventedSky.Scene(40.4, 60.9));
        var root = XDocument.Parse(picture.ToSvg()).Root!;
        Assert.Equal(Svg + "svg", root.Name);
        Assert.Equal("1600", root.Attribute("width")?.Value);
        Assert.Empty(root.Descendants(Svg + "text"));

        // Every label stands there as outlines that carry their text.
        var written = root.Descendants(Svg + "path")
            .Select(path => path.Attribute("aria-label")?.Value)
            .OfType<string>()
            .Order(StringComparer.Ordinal);
        Assert.Equal(
            picture.Labels.Select(label => label.Text).Order(StringComparer.Ordinal),
            written,
            StringComparer.Ordinal
        );
    }

    [Fact]
    public void ToSvg_OtherCulture_SameText()
    {
        var picture = SkyPicture.Compose(InventedSky.Scene(40.4, 60.9));
        var expected = picture.ToSvg();
        var before = CultureInfo.CurrentCulture;
        try
        {
            var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            culture.NumberFormat.NumberDecimalSeparator = ",";
            culture.NumberFormat.NegativeSign = "~";
            CultureInfo.CurrentCulture = culture;
            Assert.Equal(expected, picture.ToSvg());
            Assert.DoesNotContain('\r', expected);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void ToSvg_TitleWithMarkup_IsEscaped()
    {
        var scene = InventedSky.Scene(40.4, 60.9) with { Title = "M 8 < M 20 & \"co\"\u0007" };
        var root = XDocument.Parse(SkyPicture.Compose(scene).ToSvg()).Root!;
        Assert.Equal("M 8 < M 20 & \"co\" ", root.Element(Svg + "title")?.Value);
    }

    [Fact]
    public void ToSvg_Stars_StandWhereTheMappingHasThem()
    {
        var scene = InventedSky.Scene(40.4, 60.9, stars: 50);
        var picture = SkyPicture.Compose(scene);
        var circles = XDocument
            .Parse(picture.ToSvg())
            .Root!.Descendants(Svg + "circle")
            .Select(circle => (Place(circle, "cx"), Place(circle, "cy")))
            .ToList();
        var checkedStars = 0;
        foreach (var star in scene.Stars)
        {
            if (
                star.Magnitude < picture.FaintestMagnitude
                && picture.Chart.TrySkyToPicture(star.Direction, out var place)
                && picture.Chart.Holds(place)
            )
            {
                Assert.Contains(
                    circles,
                    circle => double.Hypot(circle.Item1 - place.X, circle.Item2 - place.Y) < 0.01
                );
                checkedStars++;
            }
        }

        Assert.True(checkedStars > 15);
    }

    [Theory]
    [InlineData(PicturePalette.Day)]
    [InlineData(PicturePalette.Night)]
    public void ToSvg_OtherRenderer_DrawsTheSamePicture(PicturePalette palette)
    {
        const string program = "/usr/bin/rsvg-convert";
        Assert.SkipUnless(
            File.Exists(program),
            "needs rsvg-convert of the Debian package librsvg2-bin"
        );
        var scene = InventedSky.Scene(40.4, 60.9) with { Backdrop = new Wedge() };
        var picture = SkyPicture.Compose(scene, new(800, 500), palette);
        var expected = new Pixels(picture.ToPng());
        var folder = Directory.CreateTempSubdirectory("framing-svg-");
        try
        {
            var svg = Path.Combine(folder.FullName, "sky.svg");
            var png = Path.Combine(folder.FullName, "sky.png");
            File.WriteAllText(svg, picture.ToSvg());
            using (var process = Process.Start(program, [svg, "-o", png]))
            {
                process.WaitForExit();
                Assert.Equal(0, process.ExitCode);
            }

            var found = new Pixels(File.ReadAllBytes(png));
            Assert.Equal((expected.Width, expected.Height), (found.Width, found.Height));

            // Edges are softened a little differently; measured: mean 1.3 of 255, 0.9 % of pixels off by more than 40.
            var (sum, off) = (0L, 0);
            for (var i = 0; i < found.All.Count; i++)
            {
                var (a, b) = (expected.All[i], found.All[i]);
                var most = Math.Max(
                    Math.Abs(a.Red - b.Red),
                    Math.Max(Math.Abs(a.Green - b.Green), Math.Abs(a.Blue - b.Blue))
                );
                sum += most;
                off += most > 40 ? 1 : 0;
            }

            var mean = (double)sum / found.All.Count;
            Assert.True(mean < 2.0, FormattableString.Invariant($"mean difference {mean:0.00}"));
            Assert.True(
                off < found.All.Count * 0.02,
                FormattableString.Invariant($"{off} pixels are off")
            );
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static double Place(XElement circle, string name) =>
        double.Parse(circle.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    /// <summary>A backdrop of grey steps that covers half of the chart.</summary>
    private sealed class Wedge : IBackdrop
    {
        public void Fill(TanWorldCoordinates chart, int width, int height, Span<byte> pixels)
        {
            for (var row = 0; row < height; row++)
            {
                for (var column = 0; column < width / 2; column++)
                {
                    var grey = (byte)(40 + (80 * row / height / 8 * 8));
                    pixels.Slice(4 * ((row * width) + column), 4).Fill(grey);
                    pixels[(4 * ((row * width) + column)) + 3] = 255;
                }
            }
        }
    }
}
