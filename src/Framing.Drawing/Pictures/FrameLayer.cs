namespace Framing.Drawing;

/// <summary>Frames that were taken: dashed edges, and a flag on the edge that is up in the picture.</summary>
internal sealed class FrameLayer(SkyComposer composer)
{
    /// <summary>The flag's size as a part of the upper edge.</summary>
    private const double FlagPart = 0.035;

    private readonly List<Lines> edges =
    [
        .. composer.Scene.Frames.Select(frame => ChartLines.Of(composer.Chart, frame.Corners)),
    ];

    public static Stroke Edge(Palette palette, double unit) =>
        new(palette.Frame, Math.Max(1.3, 2.2 * unit), [9.0 * unit, 5.0 * unit]);

    public void Avoid() => edges.ForEach(composer.Placer.Avoid);

    public void Draw()
    {
        if (edges.Count == 0)
        {
            return;
        }

        var palette = composer.Palette;
        var edge = Edge(palette, composer.Unit);
        var ground = new Stroke(palette.ChartOutside.At(0.55), edge.Width + (2.4 * composer.Unit));
        composer.Sheet.Group(
            "frames",
            null,
            () =>
            {
                edges.ForEach(lines => composer.Sheet.Draw(lines, ground));
                edges.ForEach(lines => composer.Sheet.Draw(lines, edge));
                foreach (var lines in edges)
                {
                    if (Flag(lines) is { } flag)
                    {
                        composer.Sheet.Fill(flag, palette.Frame);
                    }
                }
            }
        );
    }

    /// <summary>A triangle that stands on the upper edge and points out of the picture; null where the edge is not seen whole.</summary>
    private static Lines? Flag(Lines frame)
    {
        if (frame.Runs is not [{ Closed: true, Points: [var left, var right, _, var below] }])
        {
            return null;
        }

        var middle = (left + right) * 0.5;
        var along = right - left;
        if (along.Length <= 0.0)
        {
            return null;
        }

        // At right angles to the edge, away from the picture.
        var size = FlagPart * along.Length;
        along *= 1.0 / along.Length;
        var up = new PicturePoint(along.Y, -along.X);
        var inwards = below - left;
        if ((up.X * inwards.X) + (up.Y * inwards.Y) > 0.0)
        {
            up *= -1.0;
        }

        return Lines.Closed([
            middle - (along * (size / 2.0)),
            middle + (up * size),
            middle + (along * (size / 2.0)),
        ]);
    }
}
