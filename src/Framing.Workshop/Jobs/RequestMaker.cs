using Framing.Mosaics;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Turns a plan file into a framing request.</summary>
internal static class RequestMaker
{
    public static FramingRequest Of(
        PlanFile file,
        Target target,
        ChosenPlugin<LoadedRotation> rotation,
        ChosenPlugin<LoadedOverlap> overlap,
        DateOnly evening,
        DateTime at
    ) =>
        new()
        {
            Title = file.Title,
            Rig = file.Rig,
            Target = target,
            Margin = file.Target.Margin,
            Rotation = new(rotation.Name, rotation.Loaded, rotation.Settings),
            Overlap = new(overlap.Name, overlap.Loaded, overlap.Settings),
            PresentCameraAngle = file.Rotation.CameraAngle,
            FixedCentre = file.Mosaic.Centre,
            Grid = file.Mosaic.Grid,
            MostPanels = file.Mosaic.MostPanels,
            TurnCameraAtEachPanel = file.Mosaic.TurnCameraAtEachPanel,
            ChanceNoGap = file.Mosaic.ChanceNoGap,
            Errors = ErrorsOf(file),
            SharedErrorPart = file.Mosaic.SharedErrors,
            At = at,
            Evening = evening,
            DeclinationLimit = file.Mount.DeclinationLimit,
            Handling = file.Mount.Handling,
            GotoFrame = file.Mount.GotoFrame,
            EntryFormat = file.Mount.EntryFormat,
            Stars = new CatalogueStarCount(),
        };

    private static PanelErrors ErrorsOf(PlanFile file)
    {
        var mount = file.Mount;

        // A mount whose axis misses the pole by e lets the field creep by at most e times the angle turned (maths: drift e·w·t).
        var turned = Math.Tau * file.Night.GoalPerPanel.TotalDays;
        return new(
            mount.CheckEachPanel ? mount.CentredSigma : mount.GotoSigma,
            file.Rotation.CameraAngleSigma,
            file.Night.Dither,
            Angle.FromRadians(mount.PolarError.Radians * Math.Min(turned, 2.0))
        );
    }
}
