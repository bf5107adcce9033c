using System.Globalization;
using System.Text;
using Framing.Drawing;
using Framing.Export;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Holds test frames against a plan: what to turn, what to press, what to type.</summary>
public static class CheckJob
{
    /// <summary>A focal length that is off by less than this part is within what a header's solution is worth.</summary>
    private const double LeastFocalError = 0.002;

    /// <summary>One that is off by more was another lens.</summary>
    private const double MostFocalError = 0.1;

    /// <summary>Does the job.</summary>
    /// <param name="order">What is wanted.</param>
    /// <param name="shelf">The strategies there are.</param>
    /// <param name="time">Tells what day it is when the plan does not, and how long a frame is waited for.</param>
    /// <returns>The checks.</returns>
    /// <exception cref="InputException">The plan or a frame cannot be used.</exception>
    public static CheckDelivery Run(CheckOrder order, PluginShelf shelf, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(shelf);
        ArgumentNullException.ThrowIfNull(time);
        var messages = new List<string>();
        var file = PlanFileReader.Read(order.PlanPath);
        using var framing = PlanFraming.Open(file, shelf, time, null, messages);
        var plan = framing.Frame(framing.Request);
        if (plan.Impossible is { } impossible)
        {
            return new([], messages, impossible);
        }

        if (order.Panel is { } number && plan.Panels.All(panel => panel.Number != number))
        {
            throw new InputException(
                FormattableString.Invariant($"--panel: the plan has {Panels(plan)}, not {number}.")
            );
        }

        var log = EveningLog.Of(order.PlanPath, messages);
        var names = Names(order, log, time);
        if (names is null)
        {
            return new(
                [],
                messages,
                $"No new frame came into {order.NewestOf} within {order.Wait.TotalMinutes.ToString("0.#", CultureInfo.InvariantCulture)} minutes."
            );
        }

        var sights = names
            .Select(name => Sight(order, file, plan, name))
            .OrderBy(sight => sight.Seen?.At ?? DateTime.MaxValue)
            .ToList();
        var handling = file.Mount.Handling;
        if (order.After is { } earlier)
        {
            handling = Learn(order, file, plan, log, earlier, sights, messages);
        }

        var dialZero = LearnDial(order, file, sights, messages) ?? file.Mount.DialZero;
        var frames = new List<CheckedFrame>();
        foreach (var sight in sights)
        {
            if (sight.Seen is null)
            {
                frames.Add(new(sight.File, null, sight.Reason, null, null, sight.Notes));
                continue;
            }

            var request = Request(order, plan, log, sight, handling) with { DialZero = dialZero };
            var check = FrameChecker.Check(request);
            frames.Add(
                new(
                    sight.File,
                    check,
                    null,
                    sight.FocalLengthMillimetres,
                    sight.Scale,
                    [
                        .. sight.Notes,
                        .. Focal(order, file, sight, messages),
                        .. Typed(request, check),
                    ]
                )
            );
            if (sight.HasTime)
            {
                log.Add(Entry(request, check));
            }
        }

        if (sights.Exists(sight => sight is { Seen: not null, HasTime: true }))
        {
            log.Save(messages);
        }

        if (order.PicturePath is { } picture)
        {
            Draw(order, plan, picture, sights, frames, messages);
        }

        return new(
            frames,
            messages,
            frames.Exists(frame => frame.Check is not null) ? null : "No frame could be checked."
        );
    }

    private static string Panels(FramedPlan plan) =>
        plan.Panels.Count == 1
            ? "one panel"
            : FormattableString.Invariant($"panels 1 to {plan.Panels.Count}");

    private static IReadOnlyList<string>? Names(CheckOrder order, EveningLog log, TimeProvider time)
    {
        if (order.NewestOf is not { } folder)
        {
            return order.Frames;
        }

        var newest = NewestFrame.In(
            Path.GetFullPath(folder, order.WorkingFolder),
            facts =>
                (facts.Rig.Middle ?? facts.Rig.Start)?.UtcDateTime is { } at
                && log.At(at) is not null,
            order.Wait,
            time
        );
        return newest is null ? null : [Path.Combine(folder, Path.GetFileName(newest))];
    }

    private static SightedFrame Sight(
        CheckOrder order,
        PlanFile file,
        FramedPlan plan,
        string name
    ) =>
        FrameSight.Read(
            name,
            Path.GetFullPath(name, order.WorkingFolder),
            file.Rig,
            plan.Request.At,
            PanelCentre(order, plan)
        );

    private static SkyDirection PanelCentre(CheckOrder order, FramedPlan plan) =>
        plan.Panels.FirstOrDefault(panel => panel.Number == order.Panel)?.Centre
        ?? plan.Pose.Centre;

    /// <summary>What is known at a frame, by the checks before it.</summary>
    private static CheckRequest Request(
        CheckOrder order,
        FramedPlan plan,
        EveningLog log,
        SightedFrame sight,
        MountHandling handling
    )
    {
        var request = new CheckRequest
        {
            Plan = plan,
            Frame = sight.Seen!,
            Handling = handling,
            PanelNumber = order.Panel,
        };
        if (sight.HasTime && log.Before(sight.Seen!.At) is { } last)
        {
            request = request with { CarriedOffset = last.Offset };
            var panel = FrameChecker.PanelOf(request).Number;
            if (panel == last.Panel)
            {
                request = last.Step switch
                {
                    CheckStep.Retype => request with { Typed = last.Retype },
                    CheckStep.Move => request with { Typed = last.Typed, MovedByKeys = true },
                    _ => request with { Typed = last.Typed, MovedByKeys = last.MovedByKeys },
                };
            }
        }

        return order.Typed is { } typed
            ? request with
            {
                Typed = typed,
                MovedByKeys = false,
            }
            : request;
    }

    private static EveningEntry Entry(CheckRequest request, FrameCheck check) =>
        new(
            check.Frame.At,
            check.Panel.Number,
            check.Steps.Count > 0 ? check.Steps[0] : null,
            check.Typed,
            check.RetypePlace,
            request.MovedByKeys,
            check.LearnedOffset,
            request.Handling.RightAscension,
            request.Handling.Declination
        );

    private static IEnumerable<string> Typed(CheckRequest request, FrameCheck check)
    {
        if (
            request.CarriedOffset != default
            && check.Steps.Contains(CheckStep.Retype)
            && !request.MovedByKeys
        )
        {
            var format = request.Plan.Request.EntryFormat;
            yield return $"This takes it that {EntryText.RightAscension(check.Typed.RightAscension, format)}, {EntryText.Declination(check.Typed.Declination, format)} was typed last; if it was something else, give that with --typed.";
        }
    }

    /// <summary>The mount with what the move between two frames has taught, kept in the mount's file.</summary>
    private static MountHandling Learn(
        CheckOrder order,
        PlanFile file,
        FramedPlan plan,
        EveningLog log,
        string earlier,
        List<SightedFrame> sights,
        List<string> messages
    )
    {
        var handling = file.Mount.Handling;
        var before = Sight(order, file, plan, earlier);
        var after = sights.Find(sight => sight.Seen is not null);
        if (before.Seen is null || after?.Seen is null)
        {
            messages.Add(
                $"Nothing was learned from the move: {(before.Seen is null ? $"{earlier}: {before.Reason}" : "the new frame has no place on the sky")}."
            );
            return handling;
        }

        // As it was known when the keys were named: a check that is run twice learns the same twice.
        var then = log.At(before.Seen.At) is { } entry
            ? handling with
            {
                RightAscension = entry.RightAscension,
                Declination = entry.Declination,
            }
            : handling;
        var check = FrameChecker.Check(Request(order, plan, log, before, then));
        if (check.Steps is not [CheckStep.Move])
        {
            messages.Add(
                $"Nothing was learned from the move: the check of {earlier} did not ask for keys."
            );
            return handling;
        }

        var learned = KeyLearning.AfterMove(then, check, after.Seen);
        return MountFile.Keep(order.PlanPath, handling, learned, messages);
    }

    private static Angle? LearnDial(
        CheckOrder order,
        PlanFile file,
        List<SightedFrame> sights,
        List<string> messages
    )
    {
        if (order.DialReading is not { } reading)
        {
            return null;
        }

        if (sights.Find(sight => sight.Seen is not null)?.Seen is not { } frame)
        {
            messages.Add("The dial was not learned: the frame has no place on the sky.");
            return null;
        }

        var zero = Angle
            .FromDegrees(Math.Round(FrameChecker.DialZeroFrom(frame, reading).Degrees, 1))
            .Wrapped;
        var path = PlanEditor.Set(
            order.PlanPath,
            "mount",
            [("dial_zero_deg", MountFile.Number(zero.Degrees, 1))]
        );
        messages.Add(
            FormattableString.Invariant(
                $"Learned: the dial reads {zero.Degrees:0.0}° when the picture's up is north (dial_zero_deg in {path})."
            )
        );
        return zero;
    }

    /// <summary>What the frame says of the focal length, and the rig's file set right where that is wanted.</summary>
    private static IEnumerable<string> Focal(
        CheckOrder order,
        PlanFile file,
        SightedFrame sight,
        List<string> messages
    )
    {
        if (sight.FocalLengthMillimetres is not { } seen)
        {
            yield break;
        }

        var planned = file.Rig.FocalLengthMillimetres;
        var off = Math.Abs((seen / planned) - 1.0);
        var rounded = MountFile.Number(seen, 1);
        if (off > MostFocalError)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"The frame shows a focal length of {rounded} mm, the rig says {planned:0.#} mm: it was taken with another lens, or binned or made smaller without its header saying so."
            );
        }
        else if (order.CorrectRig)
        {
            var path = PlanEditor.Set(order.PlanPath, "rig", [("focal_length_mm", rounded)]);
            messages.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Learned: the focal length is {rounded} mm, not {planned:0.#} mm (focal_length_mm in {path}). Plan again: the panels change with it."
                )
            );
        }
        else if (off > LeastFocalError)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"The frame shows a focal length of {rounded} mm, the rig says {planned:0.#} mm. To set the rig right, check again with --correct-rig, then plan again."
            );
        }
    }

    private static void Draw(
        CheckOrder order,
        FramedPlan plan,
        string path,
        List<SightedFrame> sights,
        List<CheckedFrame> frames,
        List<string> messages
    )
    {
        ChartFrame[] shown =
        [
            .. frames
                .Where(frame => frame.Check is not null)
                .Select(frame => new ChartFrame(
                    "Frame, its top flagged",
                    frame.Check!.Frame.Corners
                )),
        ];
        if (shown.Length == 0)
        {
            messages.Add($"{path} was not drawn: no frame has a place on the sky.");
            return;
        }

        var year = TerrestrialTime.FromUtc(plan.Request.At).JulianYear;
        var last = sights.FindLast(sight => sight.Seen is not null)!;
        var backdrop = SolvedPicture.ReadBackdrop(
            Path.GetFullPath(last.File, order.WorkingFolder),
            order.Size,
            out _
        );
        var scene = SceneMaker.Of(plan, order.Size, year, backdrop, MadeUpParts.None, shown);
        var picture = SkyPicture.Compose(scene, order.Size, order.Palette);
        var whole = Path.GetFullPath(path, order.WorkingFolder);
        OutputFile.Write(
            whole,
            path.EndsWith(".svg", StringComparison.OrdinalIgnoreCase)
                ? Encoding.UTF8.GetBytes(picture.ToSvg())
                : picture.ToPng()
        );
        messages.Add($"Plan and frame are drawn in {path}.");
    }
}
