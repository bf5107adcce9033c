using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>A framing that is being moved by hand: everything about it that can be said in a few milliseconds.</summary>
/// <remarks>
/// Strategies are not asked and nothing is drawn: grid and overlap are those of the plan that is moved, the chance of
/// closing is the closed form's (<see cref="GapChance.OfGrid"/>). The plan itself is worked out again when the hand rests.
/// </remarks>
public sealed record FramingSketch
{
    /// <summary>The middle of the mosaic and the camera angle there, J2000.</summary>
    public required CameraPose Pose { get; init; }

    /// <summary>The panels in their order.</summary>
    public required IReadOnlyList<Panel> Panels { get; init; }

    /// <summary>What they cover.</summary>
    public required MosaicCoverage Coverage { get; init; }

    /// <summary>What is left on the tighter pair of sides, a tangent; negative by how much the outline falls outside.</summary>
    public required double TangentMargin { get; init; }

    /// <summary>The chance, 0 to 1, that no gap opens, by the closed form for a camera turned at each panel.</summary>
    public required double ChanceNoGap { get; init; }

    /// <summary>The plan's grid at another place, at another angle.</summary>
    /// <param name="plan">The plan that is moved; it has panels.</param>
    /// <param name="pose">Where its middle is now, and how the camera is turned there.</param>
    /// <returns>The sketch.</returns>
    /// <exception cref="ArgumentException">The plan has no panels.</exception>
    public static FramingSketch At(FramedPlan plan, CameraPose pose)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Panels.Count == 0)
        {
            throw new ArgumentException("A plan without panels cannot be moved.", nameof(plan));
        }

        var request = plan.Request;
        var fit = MosaicFit.At(
            request.Target.Outline,
            request.Rig.Field,
            plan.Overlap,
            GridWish.Fixed(plan.Columns, plan.Rows),
            request.WantedTangentMargin,
            request.MostPanels,
            pose
        );
        var mosaic = LaidMosaic.Of(request, plan.Overlap, fit);
        return new()
        {
            Pose = pose,
            Panels = mosaic.Panels,
            Coverage = CoverageMeasure.Of(mosaic, request.Target.Outline),
            TangentMargin = fit.TangentMargin,
            ChanceNoGap = GapChance.OfGrid(
                request.Rig.Field,
                plan.Overlap,
                plan.Columns,
                plan.Rows,
                DrawnClosing.Own(request)
            ),
        };
    }
}
