using System.Globalization;

namespace Framing.Sky.Tests;

/// <summary>The check values fmt-* of the coordinates topic; each names its source in the file.</summary>
internal static class TextChecks
{
    public static Dictionary<string, Action<CheckValue>> Handlers { get; } =
        new(StringComparer.Ordinal)
        {
            ["fmt-ra-carry"] = Written,
            ["fmt-ra-carry1"] = Written,
            ["fmt-ra-wrap"] = Written,
            ["fmt-dec-negzero"] = Written,
            ["fmt-dec-tinyneg"] = Written,
            ["fmt-dec-carry"] = Written,
            ["fmt-ra-hm"] = Written,
            ["fmt-ra-hm-carry"] = Written,
            ["fmt-dec-dm"] = Written,
            ["fmt-dec-dm-carry"] = Written,
            ["fmt-parse-negzero"] = check =>
                check.Close(
                    "deg",
                    CoordinateReader.ReadDeclination(check.InputText("text")).Value.Degrees
                ),
            ["fmt-parse-hm"] = check =>
            {
                var read = CoordinateReader.ReadRightAscension(check.InputText("text")).Value;
                check.Close("deg", read.Degrees);
                var next = CoordinateReader.ReadRightAscension("05 35.4").Value;
                check.Close("resolution_arcmin_at_equator", (next - read).Arcminutes);
            },
            ["fmt-sofa-a2tf"] = check =>
                Split(
                    check,
                    "h",
                    Sexagesimal.ToSeconds(
                        Angle.FromRadians(check.Input("rad")).Hours,
                        (int)check.Input("decimals")
                    )
                ),
            ["fmt-sofa-a2af"] = check =>
                Split(
                    check,
                    "d",
                    Sexagesimal.ToSeconds(
                        Angle.FromRadians(check.Input("rad")).Degrees,
                        (int)check.Input("decimals")
                    )
                ),
        };

    private static void Written(CheckValue check)
    {
        var angle = Angle.FromDegrees(check.Input("deg"));
        var decimals = (int)check.Input("decimals");
        var text = check.InputText("format") switch
        {
            "HH MM SS" => CoordinateText.RightAscension(angle, decimals),
            "HH MM.M" => CoordinateText.RightAscensionMinutes(angle, decimals),
            "sDD MM SS" => CoordinateText.Declination(angle, decimals),
            "sDD MM" => CoordinateText.DeclinationMinutes(angle, decimals),
            var other => throw new NotSupportedException(other),
        };
        Assert.Equal(check.Expect("text").GetString(), text);
    }

    private static void Split(CheckValue check, string whole, Sexagesimal parts)
    {
        Assert.Equal(check.Expect("sign").GetString(), parts.IsNegative ? "-" : "+");
        Assert.Equal(check.Expect(whole).GetInt64(), parts.Whole);
        Assert.Equal(check.Expect("m").GetInt32(), parts.Minutes);
        Assert.Equal(check.Expect("s").GetInt32(), parts.Seconds);
        Assert.Equal(
            check.Expect("frac").GetInt64().ToString(CultureInfo.InvariantCulture),
            parts.Fraction.ToString(CultureInfo.InvariantCulture)
        );
    }
}
