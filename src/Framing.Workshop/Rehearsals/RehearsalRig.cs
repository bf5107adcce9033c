using Framing.Planning;
using Framing.Rehearsal;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Makes of a plan what the frame maker needs: site, usual errors, and the recipe of a frame.</summary>
internal static class RehearsalRig
{
    /// <summary>The place of a plan that names none.</summary>
    private static readonly MountSite Anywhere = new(Angle.FromDegrees(45.0), Angle.Zero);

    /// <summary>Where the mount stands.</summary>
    public static MountSite SiteOf(PlanFile file) =>
        file.Site is { } site
            ? new(site.Latitude, site.Longitude, site.PressureHectopascals, site.TemperatureCelsius)
            : Anywhere;

    /// <summary>How large the plan expects the evening's errors to be.</summary>
    public static UsualErrors Usual(PlanFile file, FramedPlan plan) =>
        new()
        {
            Latitude = SiteOf(file).Latitude,
            PolarError = file.Mount.PolarError,
            Pointing = file.Mount.GotoSigma,
            Scatter = Angle.Min(file.Mount.CentredSigma * 0.5, Angle.FromArcminutes(1.5)),
            CameraAngle = file.Rotation.CameraAngle ?? plan.Pose.PositionAngle,
            TurnSigma = Angle.Min(file.Rotation.CameraAngleSigma * 0.5, Angle.FromDegrees(0.5)),
            RightAscensionBacklash = file.Mount.BacklashRightAscension,
            DeclinationBacklash = file.Mount.BacklashDeclination,
            KeyAddsToTracking = file.Mount.KeyAddsToTracking,
        };

    /// <summary>The recipe of the frame that is taken now.</summary>
    public static FrameRecipe RecipeOf(
        RehearsalOrder order,
        PlanFile file,
        FramedPlan plan,
        RehearsedMount mount,
        CameraPose pose
    )
    {
        var rig = file.Rig;
        var focal = rig.FocalLengthMillimetres * mount.Errors.FocalLengthFactor;
        var binning = order.Binning ?? rig.Binning;
        return new()
        {
            Kind = order.Kind,
            Pose = pose,
            Camera = new()
            {
                Sensor = rig.Sensor,
                Binning = binning,
                ColourPattern = order.ColourPattern,
                RowsTopDown = order.RowsTopDown,
                SerialNumber = 20,
            },
            Lens = new()
            {
                FocalLengthMillimetres = focal,
                NominalFocalLengthMillimetres = rig.FocalLengthMillimetres,
                ApertureMillimetres = focal / (focal < 500.0 ? 5.0 : 7.0),
                Mirrored = rig.Mirrored,
                ComaPx = 1.2,
                CurvaturePx = 1.0,
                DistortionPx = focal < 500.0 ? 3.0 : 0.8,
                TiltPx = 0.4,
                DefocusPx = order.DefocusPx,
            },
            Sky = new()
            {
                SeeingArcsec = file.Sky.Seeing.Arcseconds,
                BrightnessMagArcsec2 = file.Sky.MagnitudePerArcsec2,
                Clouds = order.Clouds,
                Satellites = order.Satellites,
                Nebulae =
                [
                    .. plan.Request.Target.Parts.Select(part => new NebulaGlow(
                        part.Outline.Middle,
                        Angle.Max(part.Outline.Radius * 0.7, Angle.FromArcminutes(2.0)),
                        0.8
                    )),
                ],
            },
            Exposure = new() { Start = mount.State.Time, Seconds = order.ExposureSeconds },
            Seed = order.Seed + (ulong)mount.State.Moves + (ulong)mount.State.Time.Ticks,
            ObjectName = order.Kind == FrameKind.Light ? plan.Request.Target.Name : null,
        };
    }
}
