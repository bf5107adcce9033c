namespace Framing.Mosaics;

/// <summary>
/// What a fit makes small: the larger of two straight functions of the needed width and height,
/// <c>max(a·width + a0, b·height + b0)</c>.
/// </summary>
/// <remarks>
/// One form for all three questions, so that they share one exact solution: largest margin (<c>width - W</c> against
/// <c>height - H</c>, minus twice the margin), smallest scale (<c>width / W</c> against <c>height / H</c>), and the
/// narrowest strip (height alone).
/// </remarks>
internal readonly record struct FitGoal(
    double WidthFactor,
    double WidthOffset,
    double HeightFactor,
    double HeightOffset,
    double TieTolerance
)
{
    /// <summary>Differences below this part of the frame are rounding: such fits are equally good.</summary>
    private const double Tie = 1e-12;

    /// <summary>Rounding of one tangent that comes from a unit vector.</summary>
    private const double TangentRounding = 4e-16;

    public double Steepest => Math.Max(WidthFactor, HeightFactor);

    public bool ComparesBoth => double.IsFinite(WidthOffset);

    public static FitGoal LargestMargin(double width, double height) =>
        new(1.0, -width, 1.0, -height, (Tie * (width + height)) + TangentRounding);

    public static FitGoal SmallestScale(double width, double height) =>
        new(1.0 / width, 0.0, 1.0 / height, 0.0, Tie + (TangentRounding / Math.Min(width, height)));

    public static FitGoal Narrowest() =>
        new(0.0, double.NegativeInfinity, 1.0, 0.0, TangentRounding);

    public double Value(double width, double height) =>
        Math.Max((WidthFactor * width) + WidthOffset, (HeightFactor * height) + HeightOffset);
}
