using System.Globalization;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>Says in words what to do to the wedge.</summary>
internal static class PolarText
{
    /// <summary>Closer to the pole than this, air and bending do as much: it is left alone (common practice).</summary>
    public static Angle GoodEnough => Angle.FromArcminutes(2.0);

    /// <summary>Frames that disagree by more had something else than the axis turned between them.</summary>
    private static readonly Angle LargeDisagreement = Angle.FromArcminutes(3.0);

    public static void Write(TextWriter output, AxisFinding finding, ObservingSite site)
    {
        output.WriteLine(
            $"The axis points {Minutes(finding.Error)} ± {Minutes(finding.ErrorSigma)} off the {(IsNorth(site) ? "north" : "south")} pole as the air shows it, after a turn of {finding.Turned.Degrees.ToString("0", CultureInfo.InvariantCulture)}°:"
        );
        output.WriteLine(
            $"  {Minutes(finding.TooHigh)} ± {Minutes(finding.TooHighSigma)} too {(finding.TooHigh.Radians > 0.0 ? "high" : "low")}"
        );
        output.WriteLine(
            $"  {Minutes(finding.TooFarClockwise)} ± {Minutes(finding.TooFarClockwiseSigma)} too far {Way(finding, site)}, counted about the vertical"
        );
        output.WriteLine();
        if (finding.Error < GoodEnough)
        {
            output.WriteLine("Leave it: closer than 2′ nothing is won.");
        }
        else
        {
            output.WriteLine($"{Do(finding, site)}.");
            output.WriteLine(
                "Then align the mount on its stars again, and if you like take new frames and look once more."
            );
        }

        if (finding.Disagreement > LargeDisagreement)
        {
            output.WriteLine();
            output.WriteLine(
                $"! The frames disagree by {Minutes(finding.Disagreement)}: something else than the axis of right ascension moved between them (a camera in its rings, the declination axis). Take new ones before you touch the wedge."
            );
        }
    }

    /// <summary>"Raise the wedge 12′, swing it 8′ west".</summary>
    public static string Do(AxisFinding finding, ObservingSite site) =>
        $"{(finding.TooHigh.Radians > 0.0 ? "Lower" : "Raise")} the wedge {Whole(finding.TooHigh)}, swing it {Whole(finding.TooFarClockwise)} {(Way(finding, site) == "east" ? "west" : "east")}";

    /// <summary>Clockwise from above is east of a north pole, west of a south pole.</summary>
    public static string Way(AxisFinding finding, ObservingSite site) =>
        finding.TooFarClockwise.Radians > 0.0 == IsNorth(site) ? "east" : "west";

    private static bool IsNorth(ObservingSite site) => site.Latitude.Radians >= 0.0;

    private static string Minutes(Angle angle) =>
        angle.Magnitude.Arcminutes.ToString("0.0", CultureInfo.InvariantCulture) + "′";

    private static string Whole(Angle angle) =>
        angle.Magnitude.Arcminutes.ToString(
            angle.Magnitude.Arcminutes < 9.5 ? "0.#" : "0",
            CultureInfo.InvariantCulture
        ) + "′";
}
