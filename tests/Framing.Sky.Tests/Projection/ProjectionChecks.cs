using System.Text.Json;

namespace Framing.Sky.Tests;

/// <summary>The check values of topic "2 projection"; each names its source in the file.</summary>
internal static class ProjectionChecks
{
    public static Dictionary<string, Action<CheckValue>> Handlers { get; } =
        new(StringComparer.Ordinal)
        {
            ["wcs-sofa-tpsts"] = check =>
            {
                var direction = new TangentPlane(Radians(check, "ra0_rad", "dec0_rad")).Unproject(
                    Point(check)
                );
                check.Close("ra_rad", direction.RightAscension.Radians);
                check.Close("dec_rad", direction.Declination.Radians);
            },
            ["wcs-sofa-tpxes"] = check =>
            {
                var plane = new TangentPlane(Radians(check, "ra0_rad", "dec0_rad"));
                Assert.True(plane.TryProject(Radians(check, "ra_rad", "dec_rad"), out var point));
                Assert.Equal(0, check.Expect("status").GetInt32());
                check.Close("xi_rad", point.Xi);
                check.Close("eta_rad", point.Eta);
            },
            ["wcs-sofa-tpors"] = check =>
            {
                var found = TangentPoints.Find(Radians(check, "ra_rad", "dec_rad"), Point(check));
                Assert.Equal(check.Expect("n").GetInt32(), found.Count);
                check.Close("ra01_rad", found[0].RightAscension.Radians);
                check.Close("dec01_rad", found[0].Declination.Radians);
                check.Close("ra02_rad", found[1].RightAscension.Radians);
                check.Close("dec02_rad", found[1].Declination.Radians);
            },
            ["wcs-sofa-seps"] = check =>
                check.Close(
                    "sep_rad",
                    FromLongitude(check.Input("lon1"), check.Input("lat1"))
                        .SeparationTo(FromLongitude(check.Input("lon2"), check.Input("lat2")))
                        .Radians
                ),
            ["wcs-paper2-se"] = Paper2,
            ["wcs-paper2-ne"] = Paper2,
            ["wcs-cd-from-pa+0"] = MatrixOfAngle,
            ["wcs-cd-from-pa+30"] = MatrixOfAngle,
            ["wcs-cd-from-pa+30m"] = MatrixOfAngle,
            ["wcs-cd-from-pa-45m"] = MatrixOfAngle,
            ["wcs-corners-dec0"] = Corners,
            ["wcs-corners-dec45"] = Corners,
            ["wcs-corners-dec85"] = Corners,
            ["wcs-corners-dec-60"] = Corners,
            ["wcs-corners-pole"] = Corners,
            ["wcs-corners-ra0"] = Corners,
            ["wcs-row-flip"] = RowFlip,
            ["wcs-behind"] = check =>
            {
                var centre = Degrees(check, "ra0", "dec0");
                var direction = Degrees(check, "ra", "dec");
                Assert.Equal(
                    check.Expect("projectable").GetBoolean(),
                    new TangentPlane(centre).TryProject(direction, out _)
                );
                check.Close("cos_theta", centre.Vector.Dot(direction.Vector));
            },
            ["wcs-meeus-17a"] = check =>
                check.Close(
                    "sep_deg",
                    Degrees(check, "ra1", "dec1")
                        .SeparationTo(Degrees(check, "ra2", "dec2"))
                        .Degrees
                ),
            ["wcs-winding"] = check =>
            {
                var pose = new CameraPose(
                    Degrees(check, "ra", "dec"),
                    PositionAngle.FromDegrees(check.Input("pa"))
                );
                var field = OpticsChecks.FieldBetween(check.Input("W"), check.Input("H"));
                var polygon = new SkyPolygon([.. field.Corners(pose, mirrored: false).Reverse()]);
                check.Close(
                    "signed_area_sr_positive_ccw_seen_from_outside",
                    polygon.SignedArea.Steradians
                );
            },
            ["wcs-deproject--60"] = Deproject,
            ["wcs-deproject-0"] = Deproject,
        };

    private static void Paper2(CheckValue check)
    {
        var sky = World(check).PixelToSky(Pixel(check.Inputs.GetProperty("pixel")));
        check.Close("ra", sky.RightAscension.Degrees);
        check.Close("dec", sky.Declination.Degrees);
    }

    private static void MatrixOfAngle(CheckValue check)
    {
        var up = PositionAngle.FromDegrees(check.Input("pa_up_deg"));
        var scale = Angle.FromDegrees(check.Input("scale_deg_px"));
        var mirrored = check.Inputs.GetProperty("mirrored").GetBoolean();
        var matrix = PixelMatrix.FromPositionAngle(up, scale, mirrored);
        var tolerance = check.Tolerance("cd");
        Close(Matrix(check.Expect("cd")), matrix, tolerance);
        Assert.Equal(check.Expect("det_sign").GetInt32(), Math.Sign(matrix.Determinant));
        Assert.Equal(mirrored, matrix.IsMirrored);
        check.Close("pa_right_deg", matrix.PositionAngleOfX.Degrees);

        // The older form with the file's CDELT1 sign and CROTA2 is the same matrix.
        var older = PixelMatrix.FromRotation(
            check.Expect("cdelt1_sign").GetInt32() * scale.Degrees,
            scale.Degrees,
            Angle.FromDegrees(check.Expect("crota2_deg").GetDouble())
        );
        Close(matrix, older, tolerance);
    }

    private static void Corners(CheckValue check)
    {
        var rig = new Rig(
            check.Input("focal_mm"),
            new Sensor((int)check.Input("nx"), (int)check.Input("ny"), check.Input("pixel_um"))
        );
        var pose = new CameraPose(
            Degrees(check, "ra", "dec"),
            PositionAngle.FromDegrees(check.Input("pa_up_deg"))
        );

        // The file goes bottom-left, bottom-right, top-right, top-left: ours backwards.
        var corners = rig.Field.Corners(pose, rig.Mirrored).Reverse().ToList();
        var expected = check.Expect("corners");
        Assert.Equal(4, expected.GetArrayLength());
        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(
                expected[i][0].GetDouble(),
                corners[i].RightAscension.Degrees,
                check.Tolerance("corners")
            );
            Assert.Equal(
                expected[i][1].GetDouble(),
                corners[i].Declination.Degrees,
                check.Tolerance("corners")
            );
        }

        Assert.Equal(
            check.Expect("contains_pole").GetBoolean(),
            new SkyPolygon(corners).Contains(SkyDirection.NorthPole)
        );
    }

    private static void RowFlip(CheckValue check)
    {
        var rows = (int)check.Input("ny");
        var pixel = Pixel(check.Inputs.GetProperty("pixel"));
        var world = World(check);
        var flipped = world.WithRowsReversed(rows);
        var tolerance = check.Tolerance("sky");
        var flippedPixel = Pixel(check.Expect("flipped_pixel"));
        Assert.Equal(rows + 1 - pixel.Y, flippedPixel.Y, tolerance);
        var flippedReference = Pixel(check.Expect("flipped_crpix"));
        Assert.Equal(flippedReference.X, flipped.ReferencePixel.X, tolerance);
        Assert.Equal(flippedReference.Y, flipped.ReferencePixel.Y, tolerance);
        Close(Matrix(check.Expect("flipped_cd")), flipped.Matrix, 1e-15);
        var expected = check.Expect("sky");
        foreach (var sky in new[] { world.PixelToSky(pixel), flipped.PixelToSky(flippedPixel) })
        {
            Assert.Equal(expected[0].GetDouble(), sky.RightAscension.Degrees, tolerance);
            Assert.Equal(expected[1].GetDouble(), sky.Declination.Degrees, tolerance);
        }
    }

    private static void Deproject(CheckValue check)
    {
        var sky = new TangentPlane(Degrees(check, "ra0", "dec0")).Unproject(Point(check));
        check.Close("ra", sky.RightAscension.Degrees);
        check.Close("dec", sky.Declination.Degrees);
    }

    private static TanWorldCoordinates World(CheckValue check)
    {
        var crval = check.Inputs.GetProperty("crval");
        return new(
            Pixel(check.Inputs.GetProperty("crpix")),
            SkyDirection.FromDegrees(crval[0].GetDouble(), crval[1].GetDouble()),
            Matrix(check.Inputs.GetProperty("cd"))
        );
    }

    private static PixelPosition Pixel(JsonElement pair) =>
        new(pair[0].GetDouble(), pair[1].GetDouble());

    private static PixelMatrix Matrix(JsonElement rows) =>
        new(
            rows[0][0].GetDouble(),
            rows[0][1].GetDouble(),
            rows[1][0].GetDouble(),
            rows[1][1].GetDouble()
        );

    private static PlanePoint Point(CheckValue check) =>
        new(check.Input("xi_rad"), check.Input("eta_rad"));

    private static SkyDirection Radians(CheckValue check, string ra, string dec) =>
        SkyDirection.FromRaDec(
            Angle.FromRadians(check.Input(ra)),
            Angle.FromRadians(check.Input(dec))
        );

    private static SkyDirection Degrees(CheckValue check, string ra, string dec) =>
        SkyDirection.FromDegrees(check.Input(ra), check.Input(dec));

    /// <summary>SOFA's validation takes a latitude of -3 rad, beyond the pole: the vector is what is meant.</summary>
    private static SkyDirection FromLongitude(double longitude, double latitude)
    {
        var (sinLongitude, cosLongitude) = Math.SinCos(longitude);
        var (sinLatitude, cosLatitude) = Math.SinCos(latitude);
        return SkyDirection.FromVector(
            new(cosLatitude * cosLongitude, cosLatitude * sinLongitude, sinLatitude)
        );
    }

    private static void Close(PixelMatrix expected, PixelMatrix actual, double tolerance)
    {
        Assert.Equal(expected.Cd11, actual.Cd11, tolerance);
        Assert.Equal(expected.Cd12, actual.Cd12, tolerance);
        Assert.Equal(expected.Cd21, actual.Cd21, tolerance);
        Assert.Equal(expected.Cd22, actual.Cd22, tolerance);
    }
}
