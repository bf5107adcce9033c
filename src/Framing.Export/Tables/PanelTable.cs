using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using Framing.Nights;
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
    /// <param name="nights">The nights; null where none are planned.</param>
    /// <returns>UTF-8 bytes without a byte order mark.</returns>
    public static byte[] Write(FramedPlan plan, PlannedNights? nights = null)
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
                        .. Shot(nights, panel.Number),
                    ]
                );
            }
        }

        return stream.ToArray();
    }

    /// <summary>First begin, last end and number of subs; empty where nothing is shot.</summary>
    private static string[] Shot(PlannedNights? nights, int panel)
    {
        var blocks = nights?.Blocks.Where(block => block.Panel == panel).ToList() ?? [];
        return blocks.Count == 0
            ? [string.Empty, string.Empty, string.Empty]
            :
            [
                UtcText.Of(blocks[0].From),
                UtcText.Of(blocks[^1].To),
                Whole(blocks.Sum(block => block.SubsToShoot)),
            ];
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
