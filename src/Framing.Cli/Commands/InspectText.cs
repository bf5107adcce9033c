using System.Globalization;
using Framing.Fits;
using Framing.Imaging;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>What <c>inspect</c> prints for a person.</summary>
internal static class InspectText
{
    public static void Write(
        TextWriter output,
        PictureFacts facts,
        PixelAnswer? pixel,
        SkyAnswer? sky
    )
    {
        output.WriteLine(Path.GetFileName(facts.Name));
        Line(
            output,
            "size",
            FormattableString.Invariant(
                $"{facts.Width} × {facts.Height} px, {Planes(facts.Planes)}{(facts.HasAlpha ? " and transparency" : string.Empty)}, {facts.SampleFormatName}"
            )
        );
        Line(
            output,
            "file",
            facts.Format.ToString().ToUpperInvariant()
                + (facts.Packing is { } packing ? $", packed with {packing}" : string.Empty)
        );
        Taken(output, facts.Rig);
        if (facts.Sky is { } place)
        {
            Place(output, facts, place);
        }
        else
        {
            Line(
                output,
                "sky",
                "not known: "
                    + (facts.Solution.WhyNone?.TrimEnd('.') ?? "the file has no solution")
                    + "."
            );
        }

        if (pixel is not null)
        {
            Line(output, "pixel", PixelLine(facts, pixel));
        }

        if (sky is not null)
        {
            Line(output, "place", SkyLine(sky));
        }

        foreach (var warning in facts.Warnings.Where(warning => warning != facts.Solution.WhyNone))
        {
            output.WriteLine("! " + warning);
        }
    }

    private static void Taken(TextWriter output, RigFacts rig)
    {
        var parts = new List<string>();
        if (rig.Kind is { } kind)
        {
            parts.Add(kind);
        }

        if (rig.Object is { } name)
        {
            parts.Add(name);
        }

        if (rig.Start is { } start)
        {
            parts.Add(
                start.UtcDateTime.ToString("d MMM yyyy HH:mm:ss", CultureInfo.InvariantCulture)
                    + " UTC"
            );
        }

        if (rig.ExposureSeconds is { } seconds)
        {
            parts.Add(FormattableString.Invariant($"{seconds:0.###} s"));
        }

        if (rig.Filter is { } filter)
        {
            parts.Add(filter);
        }

        if (parts.Count > 0)
        {
            Line(output, "taken", string.Join(", ", parts));
        }

        var with = new List<string>();
        if (rig.Telescope is { } telescope)
        {
            with.Add(telescope);
        }

        if (rig.Instrument is { } camera)
        {
            with.Add(camera);
        }

        if (rig.FocalLengthMillimetres is { } focal)
        {
            with.Add(FormattableString.Invariant($"{focal:0.##} mm"));
        }

        if (rig.PixelMicrometres is { } size)
        {
            with.Add(FormattableString.Invariant($"{size:0.###} µm pixels"));
        }

        if (rig.Binning is > 1 and { } joined)
        {
            with.Add(FormattableString.Invariant($"binned {joined} × {joined}"));
        }

        if (rig.SensorCelsius is { } celsius)
        {
            with.Add(FormattableString.Invariant($"sensor at {celsius:0.#} °C").Replace('-', '−'));
        }

        if (with.Count > 0)
        {
            Line(output, "with", string.Join(", ", with));
        }
    }

    private static void Place(TextWriter output, PictureFacts facts, SkyFacts place)
    {
        Line(output, "centre", PlaceText.Of(place.Centre) + "  (J2000)");
        Line(
            output,
            "field",
            FormattableString.Invariant(
                $"{Wide(place.FieldWidth)} × {Wide(place.FieldHeight)}, {place.ScaleX.Arcseconds:0.00}″ a pixel"
            )
        );
        Line(
            output,
            "camera",
            $"{Degrees(place.DisplayedPositionAngle)}: the way up in the picture, from north through east; {Parity(place.DisplayedMirrored)}"
        );
        Line(
            output,
            "axes",
            facts.RowsTopDown
                ? $"the file's y runs downwards: +y at {Degrees(place.PositionAngle)}, {Parity(place.Mirrored)} as x and y run"
                : "the file's y runs upwards, as shown"
        );
        Projection(output, facts.Solution);
        if (facts.SolutionFile is { } beside)
        {
            Line(output, "from", Path.GetFileName(beside));
        }
    }

    private static void Projection(TextWriter output, HeaderSolution solution)
    {
        var parts = new List<string>();
        if (solution.Projection is { } code)
        {
            parts.Add(code);
        }

        if (solution.Distortion != DistortionKind.None)
        {
            var name =
                solution.Distortion == DistortionKind.Other
                    ? "a lens distortion of another kind"
                    : $"lens distortion {solution.Distortion.ToString().ToUpperInvariant()}";
            parts.Add($"{name}, {(solution.DistortionUsed ? "used" : "not used")}");
        }

        if (!solution.Frame.IsLikeIcrs)
        {
            parts.Add($"written in {solution.Frame}");
        }

        if (parts.Count > 0)
        {
            Line(output, "map", string.Join("; ", parts));
        }
    }

    private static string Degrees(PositionAngle angle) =>
        FormattableString.Invariant($"{Math.Round(angle.Degrees, 2) % 360.0:0.##}°");

    private static string Parity(bool mirrored) => mirrored ? "mirrored" : "not mirrored";

    private static string Wide(Angle? field) =>
        field is { } angle
            ? FormattableString.Invariant($"{angle.Degrees:0.00}°")
            : "beyond the edge of the map";

    private static string PixelLine(PictureFacts facts, PixelAnswer pixel)
    {
        var place =
            pixel.Direction is { } direction ? PlaceText.Of(direction)
            : facts.Coordinates is null ? "no place on the sky is known"
            : "no sky: off the map of the projection";
        var value =
            pixel.Values.Count == 0
                ? "outside the picture"
                : "value "
                    + string.Join(
                        ", ",
                        pixel.Values.Select(sample =>
                            sample is { } number
                                ? number.ToString("G9", CultureInfo.InvariantCulture)
                                : "not defined"
                        )
                    );
        return FormattableString.Invariant(
            $"{pixel.Pixel.X:0.###}, {pixel.Pixel.Y:0.###}: {place}; {value}"
        );
    }

    private static string SkyLine(SkyAnswer sky) =>
        sky.Pixel is { } pixel
            ? FormattableString.Invariant(
                $"{PlaceText.Of(sky.Direction)}: pixel {pixel.X:0.00}, {pixel.Y:0.00}{(sky.Inside ? string.Empty : ", outside the picture")}"
            )
            : $"{PlaceText.Of(sky.Direction)}: {Why(sky.Failure)}";

    private static string Why(MapFailure failure) =>
        failure switch
        {
            MapFailure.BehindThePlane =>
                "behind the picture, 90° or more from the point on which its map is centred",
            MapFailure.NotConverged =>
                "so far outside the picture that its lens distortion has no meaning there; no pixel",
            _ => "nowhere on the map of its projection",
        };

    private static string Planes(int planes) =>
        planes == 1 ? "one plane" : FormattableString.Invariant($"{planes} planes (colours)");

    private static void Line(TextWriter output, string head, string text) =>
        output.WriteLine($"  {head, -8} {text}");
}
