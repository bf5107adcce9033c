using System.Globalization;
using Framing.Planning;
using Framing.Rehearsal;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Makes the frames that a night with a plan would give, with hidden errors and the truth beside them.</summary>
/// <remarks>
/// Without an evening each panel's coordinates are typed once, and a frame is taken. An evening goes on from call to call:
/// its file keeps what is wrong and how the mount stands, and each call says what was done at the mount before its frame.
/// </remarks>
public static class RehearseJob
{
    private const double ReadoutSeconds = 4.0;

    /// <summary>How long before the site's midnight an evening begins.</summary>
    private const double HoursBeforeMidnight = 4.0;

    /// <summary>Does the job.</summary>
    /// <param name="order">What is wanted.</param>
    /// <param name="shelf">The strategies there are.</param>
    /// <param name="time">Tells what day it is when neither plan nor order does.</param>
    /// <returns>Where the frames lie.</returns>
    /// <exception cref="InputException">The plan, the evening or a place for files cannot be used.</exception>
    public static RehearsalDelivery Run(RehearsalOrder order, PluginShelf shelf, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(shelf);
        ArgumentNullException.ThrowIfNull(time);
        var file = order.PlanPath is null
            ? PlanFileReader.ReadBuiltIn()
            : PlanFileReader.Read(order.PlanPath);
        var speeds = SpeedsOf(order, file);
        CheckCamera(order, file.Rig);
        var messages = new List<string>();
        using var framing = PlanFraming.Open(file, shelf, time, order.Date, messages);
        var plan = framing.Frame(framing.Request);
        if (plan.Impossible is { } why)
        {
            throw new InputException($"{file.Path}: {why}");
        }

        if (order.Panel is { } number && (number < 1 || number > plan.Panels.Count))
        {
            throw new InputException(
                FormattableString.Invariant(
                    $"--panel: {number} is no panel of this plan; it has 1 to {plan.Panels.Count}"
                )
            );
        }

        var evening = order.ErrorPath is { } path ? EveningFile.Read(path) : null;
        var errors =
            evening?.Errors ?? HiddenErrors.Draw(order.Seed, RehearsalRig.Usual(file, plan));
        var start =
            evening?.State
            ?? new MountState { Time = plan.Request.At.AddHours(-HoursBeforeMidnight) };
        var mount = new RehearsedMount(RehearsalRig.SiteOf(file), errors, start);
        var folder = FolderOf(order, file, plan.Request.Evening);
        var frames = new List<DeliveredFrame>();
        if (order.ErrorPath is not { } errorPath)
        {
            if (order.Acts)
            {
                throw new InputException(
                    "keys, turns and typed coordinates need an evening that they belong to: add --error FILE"
                );
            }

            foreach (var panel in plan.Panels)
            {
                if (order.Panel is null || order.Panel == panel.Number)
                {
                    mount = mount.GoTo(panel.OfDate, FinishNorth(file));
                    var name = string.Create(CultureInfo.InvariantCulture, $"panel-{panel.Number}");
                    frames.Add(Take(order, file, plan, ref mount, folder, name, panel.Number));
                }
            }

            return new(frames, null, false, messages);
        }

        var taken = evening?.Frames ?? 0;
        mount = Act(order, file, plan, mount, speeds, evening is null, messages, out var typed);
        var next = string.Create(CultureInfo.InvariantCulture, $"frame-{taken + 1:000}");
        frames.Add(Take(order, file, plan, ref mount, folder, next, typed));
        new EveningFile(errors, mount.State, taken + 1).Write(errorPath);
        return new(frames, errorPath, evening is null, messages);
    }

    /// <summary>Does at the mount what was ordered: wedge, typing, keys, camera, in this order.</summary>
    private static RehearsedMount Act(
        RehearsalOrder order,
        PlanFile file,
        FramedPlan plan,
        RehearsedMount mount,
        List<double> speeds,
        bool isNew,
        List<string> messages,
        out int? panel
    )
    {
        if (order.Raise != Angle.Zero || order.SwingEast != Angle.Zero)
        {
            // Seen from above, towards east is clockwise of a northern pole and counter-clockwise of a southern one.
            var south = RehearsalRig.SiteOf(file).Latitude < Angle.Zero;
            mount = mount.MoveAxis(order.Raise, south ? -order.SwingEast : order.SwingEast);
        }

        panel = order.Panel;
        if (panel is null && order.Typed is null && isNew)
        {
            panel = 1;
            messages.Add("A new evening: the coordinates of panel 1 were typed.");
        }

        if (order.Typed is { } typed)
        {
            panel = null;
            var ofDate =
                file.Mount.GotoFrame == GotoFrame.J2000
                    ? OfDateFrame.At(TerrestrialTime.FromUtc(mount.State.Time)).ToOfDate(typed)
                    : typed;
            mount = mount.GoTo(ofDate, FinishNorth(file));
        }
        else if (panel is { } number)
        {
            mount = mount.GoTo(plan.Panels[number - 1].OfDate, FinishNorth(file));
        }

        for (var i = 0; i < order.Presses.Count; i++)
        {
            mount = mount.Hold(order.Presses[i].Key, speeds[i], order.Presses[i].Seconds);
        }

        return order.Turn == Angle.Zero
            ? mount
            : mount.TurnCamera(file.Rig.Mirrored ? -order.Turn : order.Turn);
    }

    private static DeliveredFrame Take(
        RehearsalOrder order,
        PlanFile file,
        FramedPlan plan,
        ref RehearsedMount mount,
        string folder,
        string name,
        int? panel
    )
    {
        var start = mount.State.Time;
        var middle = mount.Wait(order.ExposureSeconds / 2.0);
        var recipe = RehearsalRig.RecipeOf(order, file, plan, mount, middle.Pose);
        var frame = FrameMaker.Make(recipe);
        WriteFaults.Guard(folder, () => Directory.CreateDirectory(folder));
        var path = Path.Combine(folder, name + ".fits");
        var truth = Path.Combine(folder, name + ".truth.json");
        WriteFaults.Guard(path, () => FrameFile.Write(path, frame));
        TruthDocument.Write(truth, frame, name + ".fits");
        mount = mount.Wait(order.ExposureSeconds + ReadoutSeconds);
        return new(path, truth, panel, start);
    }

    private static void CheckCamera(RehearsalOrder order, Rig rig)
    {
        var binning = order.Binning ?? rig.Binning;
        if (order.ColourPattern is not null && binning != 1)
        {
            throw new InputException(
                FormattableString.Invariant(
                    $"--colour: a colour filter needs every pixel for itself, but the binning is {binning}; add --binning 1"
                )
            );
        }

        if (binning > Math.Min(rig.Sensor.WidthPx, rig.Sensor.HeightPx))
        {
            throw new InputException(
                FormattableString.Invariant(
                    $"--binning: the sensor has fewer than {binning} pixels"
                )
            );
        }
    }

    private static bool FinishNorth(PlanFile file) =>
        file.Mount.FinishDeclination == MountDirection.North;

    private static List<double> SpeedsOf(RehearsalOrder order, PlanFile file)
    {
        var found = new List<double>();
        foreach (var press in order.Presses)
        {
            var speed = file.Mount.Speeds.FirstOrDefault(known =>
                string.Equals(known.Label, press.Speed, StringComparison.Ordinal)
            );
            found.Add(
                speed?.Sidereal
                    ?? throw new InputException(
                        $"--press: \"{press.Speed}\" is no speed of the mount; its speeds are {string.Join(", ", file.Mount.Speeds.Select(known => known.Label))}"
                    )
            );
        }

        return found;
    }

    private static string FolderOf(RehearsalOrder order, PlanFile file, DateOnly? date)
    {
        if (order.OutputFolder is { } folder)
        {
            return folder;
        }

        return order.ErrorPath is { } path
            ? Path.GetDirectoryName(Path.GetFullPath(path, order.WorkingFolder))!
            : Path.Combine(order.WorkingFolder, OutputFolder.Name(file.Title, date) + "-rehearsal");
    }
}
