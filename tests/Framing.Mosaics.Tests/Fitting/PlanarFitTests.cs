using System.Text.Json;
using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class PlanarFitTests
{
    [Fact]
    public void LargestMargin_CheckValues_AreMetAtTheReportedAngle()
    {
        var entries = CheckValues.Starting("fit-margin-");
        Assert.Equal(7, entries.Count);
        foreach (var entry in entries)
        {
            var (w, h) = (entry.Input("w"), entry.Input("h"));
            var points = Points(entry);
            var frame = PlanarFit.LargestMargin(points, w, h);
            entry.Meets("max_margin", frame.Margin);

            // "Any angle that reaches it within 1e-9": ours does by its own extents, theirs by ours.
            var (width, height) = Extents(points, frame.Angle.Radians);
            Assert.Equal(frame.Margin, Math.Min(w - width, h - height) / 2.0, 1e-12);
            var theirs = PlanarFit.AtAngle(
                points,
                w,
                h,
                Angle.FromDegrees(entry.Expected("angle_deg"))
            );
            Assert.Equal(frame.Margin, theirs.Margin, 1e-9);
        }
    }

    [Fact]
    public void SmallestScale_CheckValues_AreMetAtTheReportedAngle()
    {
        var entries = CheckValues.Starting("fit-scale-");
        Assert.Equal(7, entries.Count);
        foreach (var entry in entries)
        {
            var (w, h) = (entry.Input("w"), entry.Input("h"));
            var points = Points(entry);
            var frame = PlanarFit.SmallestScale(points, w, h);
            entry.Meets("min_scale", frame.Scale);
            var (width, height) = Extents(points, frame.Angle.Radians);
            Assert.Equal(frame.Scale, Math.Max(width / w, height / h), 1e-12);
            var theirs = PlanarFit.AtAngle(
                points,
                w,
                h,
                Angle.FromDegrees(entry.Expected("angle_deg"))
            );
            Assert.Equal(frame.Scale, theirs.Scale, 1e-9);
        }
    }

    [Fact]
    public void BothFits_TableOfShapes_IsReproduced()
    {
        var rows = CheckValues.Table("fit");
        Assert.Equal(7, rows.Count);
        foreach (var row in rows)
        {
            var points = Points(CheckValues.One("fit-scale-" + row[0].Replace(' ', '_')));
            var scale = PlanarFit.SmallestScale(points, 4.5, 3.0).Scale;
            Assert.Equal(CheckValues.Number(row[1]), scale, 5.1e-6);
            var margin = PlanarFit.LargestMargin(points, 4.5, 3.0).Margin;
            Assert.Equal(CheckValues.Number(row[4]), margin, 5.1e-6);
        }
    }

    [Fact]
    public void LargestMargin_SinglePoint_TakesThePresentAngle()
    {
        var frame = PlanarFit.LargestMargin([new(0.1, 0.2)], 4.5, 3.0, Angle.FromDegrees(77.0));

        Assert.Equal(77.0, frame.Angle.Degrees, 1e-12);
        Assert.Equal(1.5, frame.Margin, 1e-15);
        Assert.Equal(new PlanePoint(0.1, 0.2).Xi, frame.Centre.Xi, 1e-15);
    }

    [Theory]
    [InlineData(20.0, 33.690067525980)]
    [InlineData(-20.0, 146.309932474020)]
    [InlineData(200.0, 33.690067525980)]
    [InlineData(0.0, 33.690067525980)]
    public void SmallestScale_Segment_TakesTheNearerOfTwoEqualAngles(double near, double expected)
    {
        // A segment lies best along a diagonal, atan2(h, w) either way.
        var frame = PlanarFit.SmallestScale(
            [new(-2.4, 0), new(2.4, 0)],
            4.5,
            3.0,
            Angle.FromDegrees(near)
        );

        Assert.Equal(4.8 / double.Hypot(4.5, 3.0), frame.Scale, 1e-14);
        Assert.Equal(expected, frame.Angle.Degrees, 1e-10);
    }

    [Theory]
    [InlineData(10.0, 0.0)]
    [InlineData(50.0, 90.0)]
    [InlineData(100.0, 90.0)]
    [InlineData(136.0, 0.0)]
    public void LargestMargin_Square_TakesTheSideNearestToThePresentAngle(
        double near,
        double expected
    )
    {
        PlanePoint[] square = [new(-1, -1), new(1, -1), new(1, 1), new(-1, 1)];

        var frame = PlanarFit.LargestMargin(square, 4.5, 3.0, Angle.FromDegrees(near));

        Assert.Equal(expected, frame.Angle.Degrees, 1e-10);
        Assert.Equal(0.5, frame.Margin, 1e-14);
    }

    [Fact]
    public void AtAngle_AnyPoints_StandInTheMiddleBothWays()
    {
        PlanePoint[] points = [new(0, 0), new(4, 0.5), new(1.5, 2.2)];

        var frame = PlanarFit.AtAngle(points, 4.5, 3.0, Angle.FromDegrees(190.0));

        Assert.Equal(10.0, frame.Angle.Degrees, 1e-12);
        var (sin, cos) = Math.SinCos(Angle.FromDegrees(10.0).Radians);
        var u = points
            .Select(p => ((p - frame.Centre).Xi * cos) + ((p - frame.Centre).Eta * sin))
            .ToArray();
        var v = points
            .Select(p => ((p - frame.Centre).Eta * cos) - ((p - frame.Centre).Xi * sin))
            .ToArray();
        Assert.Equal(0.0, u.Max() + u.Min(), 1e-14);
        Assert.Equal(0.0, v.Max() + v.Min(), 1e-14);
        Assert.Equal(frame.NeededWidth, u.Max() - u.Min(), 1e-14);
        Assert.Equal(frame.NeededHeight, v.Max() - v.Min(), 1e-14);
    }

    [Theory]
    [InlineData(0.0, 3.0)]
    [InlineData(4.5, -3.0)]
    [InlineData(double.NaN, 3.0)]
    [InlineData(4.5, double.PositiveInfinity)]
    public void LargestMargin_FrameWithoutArea_Throws(double width, double height) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            PlanarFit.LargestMargin([new(0, 0)], width, height)
        );

    [Fact]
    public void BothFits_RandomPoints_AreNeverBeatenByADenseSearch()
    {
        var random = new Random(20260104);
        for (var run = 0; run < 1000; run++)
        {
            var points = RandomOutlines.PlanePoints(random);
            var (w, h) = (0.5 + (2.0 * random.NextDouble()), 0.5 + (2.0 * random.NextDouble()));
            var margin = PlanarFit.LargestMargin(points, w, h);
            var scale = PlanarFit.SmallestScale(points, w, h);
            for (var i = 0; i < 360; i++)
            {
                var (width, height) = Extents(points, Math.PI * i / 360.0);
                Assert.True(Math.Min(w - width, h - height) / 2.0 <= margin.Margin + 1e-12);
                Assert.True(Math.Max(width / w, height / h) >= scale.Scale - 1e-12);
            }
        }
    }

    private static PlanePoint[] Points(JsonElement entry) =>
        [
            .. entry
                .GetProperty("inputs")
                .GetProperty("points")
                .EnumerateArray()
                .Select(p => new PlanePoint(p[0].GetDouble(), p[1].GetDouble())),
        ];

    private static (double Width, double Height) Extents(PlanePoint[] points, double theta)
    {
        double c = Math.Cos(theta),
            s = Math.Sin(theta);
        double left = 1e9,
            right = -1e9,
            bottom = 1e9,
            top = -1e9;
        foreach (var p in points)
        {
            double u = (p.Xi * c) + (p.Eta * s),
                v = (p.Eta * c) - (p.Xi * s);
            (left, right) = (Math.Min(left, u), Math.Max(right, u));
            (bottom, top) = (Math.Min(bottom, v), Math.Max(top, v));
        }

        return (right - left, top - bottom);
    }
}
