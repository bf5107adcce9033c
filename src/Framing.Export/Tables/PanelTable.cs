using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Export;

/// <summary>Writes the panels of a framing as <c>panels.csv</c> (RFC 4180: comma, CRLF, a header row, UTF-8).</summary>
/// <remarks>
/// Degrees are plain decimal numbers that any spreadsheet reads; the sexagesimal texts stand in columns of their own. The
/// last three columns are empty until a night is planned.
/// </remarks>
public static class PanelTable
{
    private static readonly string[] Header =
    [
        "number",
        "column",
        "row",
        "ra_j2000_deg",
        "dec_j2000_deg",
        "ra_j2000",
        "dec_j2000",
        "ra_of_date",
        "dec_of_date",
        "position_angle_deg",
        "first_utc",
        "last_utc",
        "subs",
    ];

    /// <summary>Writes the table.</summary>
    /// <param name="plan">The framing.</param>
    /// <returns>UTF-8 bytes without a byte order mark.</returns>
    public static byte[] Write(FramedPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        using var stream = new MemoryStream();
        using (
            var text = new StreamWriter(
                stream,
                new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)
            )
        )
        using (
            var csv = new CsvWriter(
                text,
                new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\r\n" }
            )
        )
        {
            Row(csv, Header);
            foreach (var panel in plan.Panels)
            {
                Row(
                    csv,
                    [
                        Whole(panel.Number),
                        Whole(panel.Column),
                        Whole(panel.Row),
                        CoordinateText.RightAscensionDegrees(panel.Centre.RightAscension),
                        CoordinateText.DeclinationDegrees(panel.Centre.Declination).TrimStart('+'),
                        CoordinateText.RightAscension(panel.Centre.RightAscension, 1),
                        CoordinateText.Declination(panel.Centre.Declination, 0),
                        CoordinateText.RightAscension(panel.OfDate.RightAscension, 1),
                        CoordinateText.Declination(panel.OfDate.Declination, 0),
                        ReportNumbers
                            .Turn(
                                Math.Round(
                                    panel.PositionAngle.Degrees,
                                    4,
                                    MidpointRounding.AwayFromZero
                                )
                            )
                            .ToString("0.0000", CultureInfo.InvariantCulture),
                        string.Empty,
                        string.Empty,
                        string.Empty,
                    ]
                );
            }
        }

        return stream.ToArray();
    }

    private static void Row(CsvWriter csv, IEnumerable<string> fields)
    {
        foreach (var field in fields)
        {
            csv.WriteField(field);
        }

        csv.NextRecord();
    }

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);
}
