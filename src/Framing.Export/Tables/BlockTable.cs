using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using Framing.Nights;

namespace Framing.Export;

/// <summary>Writes the blocks of planned nights as <c>blocks.csv</c>, one row a block in shooting order.</summary>
/// <remarks>RFC 4180: comma, CRLF, a header row, UTF-8. Local times carry their offset; altitudes are refracted.</remarks>
public static class BlockTable
{
    private static readonly string[] Header =
    [
        "night",
        "panel",
        "filter",
        "from_utc",
        "to_utc",
        "from_local",
        "to_local",
        "subs_to_shoot",
        "subs_expected_good",
        "lowest_altitude_deg",
        "highest_altitude_deg",
        "airmass",
    ];

    /// <summary>Writes the table.</summary>
    /// <param name="plan">The nights.</param>
    /// <returns>UTF-8 bytes without a byte order mark.</returns>
    public static byte[] Write(PlannedNights plan)
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
            foreach (var night in plan.Nights)
            {
                foreach (var block in night.Blocks)
                {
                    Row(csv, Fields(night, block, plan.Request.Clock));
                }
            }
        }

        return stream.ToArray();
    }

    private static string[] Fields(PlannedNight night, NightBlock block, SiteClock clock) =>
        [
            night.Sun.Evening.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            Text(block.Panel, "0"),
            block.Filter.Name,
            UtcText.Of(block.From),
            UtcText.Of(block.To),
            clock.At(block.From).IsoText,
            clock.At(block.To).IsoText,
            Text(block.SubsToShoot, "0"),
            Text(block.SubsExpectedGood, "0"),
            Text(block.Lowest.Degrees, "0.0"),
            Text(block.Highest.Degrees, "0.0"),
            Text(block.MeanAirmass, "0.00"),
        ];

    private static string Text(double value, string form) =>
        value.ToString(form, CultureInfo.InvariantCulture);

    private static void Row(CsvWriter csv, IEnumerable<string> fields)
    {
        foreach (var field in fields)
        {
            csv.WriteField(field);
        }

        csv.NextRecord();
    }
}
