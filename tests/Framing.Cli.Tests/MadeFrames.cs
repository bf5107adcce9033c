using System.Globalization;
using Framing.Fits;
using Framing.Sky;

namespace Framing.Cli.Tests;

/// <summary>Makes plans and frames of a small rig: 250 mm, 207 x 141 pixels of 92.6 µm, 4.4° x 3.0° of sky.</summary>
internal static class MadeFrames
{
    public const int Width = 207;

    public const int Height = 141;

    public const string Rig = """
        [rig]
        focal_length_mm = 250
        sensor_px = [207, 141]
        pixel_um = 92.6
        """;

    /// <summary>The evening of the plans.</summary>
    public static readonly DateTime Evening = new(2026, 12, 5, 21, 0, 0, DateTimeKind.Utc);

    public static OfDateFrame Time { get; } = OfDateFrame.At(TerrestrialTime.FromUtc(Evening));

    /// <summary>Sky in one pixel.</summary>
    public static Angle Scale { get; } = Angle.FromRadians(92.6e-6 / 0.25);

    /// <summary>A plan of one panel about a place, the camera at an angle.</summary>
    public static string Plan(
        SkyDirection centre,
        double angle,
        string more = "",
        string rig = Rig
    ) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"""
            title = "One panel"

            {rig}

            [target]
            centre = "{centre.RightAscension.Degrees:F11}, {centre.Declination.Degrees:F11}"
            size_arcmin = [60, 40]

            [rotation]
            strategy = "keep-camera-angle"
            camera_angle_deg = {angle}

            [mosaic]
            grid = [1, 1]

            [night]
            date = 2026-12-05

            {more}

            """
        );

    /// <summary>Writes a frame with its solution.</summary>
    public static string Frame(
        Session session,
        string name,
        SkyDirection centre,
        double angle,
        DateTime? at = null,
        bool mirrored = false,
        bool topDown = false,
        double scale = 1.0,
        bool solved = true
    )
    {
        var world = new TanWorldCoordinates(
            new((Width + 1) / 2.0, (Height + 1) / 2.0),
            centre,
            PixelMatrix.FromPositionAngle(PositionAngle.FromDegrees(angle), Scale * scale, mirrored)
        );
        var cards = new FitsHeaderBuilder()
            .Add("IMAGETYP", "light")
            .Add(
                "DATE-OBS",
                (at ?? Evening).ToString("yyyy-MM-dd'T'HH:mm:ss.fff", CultureInfo.InvariantCulture)
            );
        if (topDown)
        {
            world = world.WithRowsReversed(Height);
            cards.Add("ROWORDER", "TOP-DOWN");
        }

        if (solved)
        {
            cards.AddSolution(world);
        }

        var path = Path.Combine(session.Folder, name);
        FitsWriter.WriteImage<ushort>(path, Width, Height, 1, new ushort[Width * Height], cards);
        return path;
    }
}
