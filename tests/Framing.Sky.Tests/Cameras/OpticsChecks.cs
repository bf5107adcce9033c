namespace Framing.Sky.Tests;

/// <summary>The check values of topic "1 optics"; each names its source in the file.</summary>
internal static class OpticsChecks
{
    public static Dictionary<string, Action<CheckValue>> Handlers { get; } =
        new(StringComparer.Ordinal)
        {
            ["optics-scale-300"] = check =>
                check.Close(
                    "scale_arcsec_px",
                    RigOf(check.Input("focal_mm"), check.Input("pixel_um"), 1).Scale.Arcseconds
                ),
            ["optics-scale-bin2-reducer"] = check =>
                check.Close(
                    "scale_arcsec_px",
                    RigOf(
                        check.Input("focal_mm") * check.Input("reducer"),
                        check.Input("pixel_um"),
                        (int)check.Input("bin")
                    ).Scale.Arcseconds
                ),
            ["optics-field-300"] = check =>
            {
                Field(check);
                check.Close("diag_deg", FieldOf(check).Diagonal.Degrees);
            },
            ["optics-field-135-fullframe"] = check =>
            {
                Field(check);
                check.Close(
                    "small_angle_W_deg",
                    Angle.FromRadians(FieldOf(check).TangentWidth).Degrees
                );
            },
            ["optics-smallangle-error"] = check =>
            {
                var field = new FieldShape(check.Input("width_mm") / check.Input("focal_mm"), 0.1);
                var small = Angle.FromRadians(field.TangentWidth);
                check.Close("W_exact_deg", field.Width.Degrees);
                check.Close("W_small_deg", small.Degrees);
                check.Close("difference_arcmin", (small - field.Width).Arcminutes);
            },
            ["optics-corner-scale"] = check =>
            {
                var rig = RigOf(check.Input("focal_mm"), check.Input("pixel_um"), 1);
                var theta = Angle.FromRadians(
                    Math.Atan(check.Input("radius_mm") / check.Input("focal_mm"))
                );
                var (radial, tangential) = rig.ScaleAt(theta);
                check.Close("theta_deg", theta.Degrees);
                check.Close("radial_arcsec_px", radial.Arcseconds);
                check.Close("tangential_arcsec_px", tangential.Arcseconds);
                check.Close("pixel_area_factor", radial / rig.Scale * (tangential / rig.Scale));
            },
            ["optics-focal-from-scale"] = check =>
                check.Close(
                    "focal_mm",
                    Rig.FocalLengthFromScale(
                        Angle.FromArcseconds(check.Input("solved_scale_arcsec_px")),
                        check.Input("pixel_um")
                    )
                ),
            ["optics-focal-from-width"] = check =>
            {
                var between = Angle.FromDegrees(check.Input("measured_width_deg"));
                var width = check.Input("width_mm");
                check.Close("focal_mm", Rig.FocalLengthFromWidth(between, width));
                check.Close("naive_w_over_W_mm", width / between.Radians);
            },
            ["optics-binning-crpix"] = check =>
            {
                var crpix = check.Inputs.GetProperty("crpix");
                var scale = check.Input("cd11");
                var binned = new TanWorldCoordinates(
                    new PixelPosition(crpix[0].GetDouble(), crpix[1].GetDouble()),
                    SkyDirection.FromDegrees(10.0, 20.0),
                    new PixelMatrix(scale, 0.0, 0.0, -scale)
                ).Binned(check.Input("bin"));
                var expected = check.Expect("crpix");
                var tolerance = check.Tolerance("crpix");
                Assert.Equal(expected[0].GetDouble(), binned.ReferencePixel.X, tolerance);
                Assert.Equal(expected[1].GetDouble(), binned.ReferencePixel.Y, tolerance);
                check.Close("cd11", binned.Matrix.Cd11);
            },
            ["optics-solid-angle"] = check =>
            {
                var (w, h) = (check.Input("W_deg"), check.Input("H_deg"));
                check.Close("area_sq_deg", FieldBetween(w, h).Area.SquareDegrees);
                check.Close("naive_WxH", w * h);
            },
        };

    /// <summary>The shape whose edges stand at given angles.</summary>
    internal static FieldShape FieldBetween(double widthDegrees, double heightDegrees) =>
        new(
            2.0 * Math.Tan(Angle.FromDegrees(widthDegrees / 2.0).Radians),
            2.0 * Math.Tan(Angle.FromDegrees(heightDegrees / 2.0).Radians)
        );

    private static Rig RigOf(double focal, double pixel, int binning) =>
        new(focal, new Sensor(6248, 4176, pixel), binning);

    private static FieldShape FieldOf(CheckValue check) =>
        new(
            check.Input("width_mm") / check.Input("focal_mm"),
            check.Input("height_mm") / check.Input("focal_mm")
        );

    private static void Field(CheckValue check)
    {
        check.Close("W_deg", FieldOf(check).Width.Degrees);
        check.Close("H_deg", FieldOf(check).Height.Degrees);
    }
}
