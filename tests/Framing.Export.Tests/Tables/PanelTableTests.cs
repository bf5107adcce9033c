using System.Text;
using Framing.Planning;

namespace Framing.Export.Tests;

public sealed class PanelTableTests
{
    [Fact]
    public void Write_APlan_HasAHeaderAndOneRowAPanel()
    {
        var text = Text(Plans.Two);

        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        var lines = text.Split("\r\n")[..^1];
        Assert.Equal(
            "number,column,row,ra_j2000_deg,dec_j2000_deg,ra_j2000,dec_j2000,ra_of_date,dec_of_date,position_angle_deg,first_utc,last_utc,subs",
            lines[0]
        );
        Assert.Equal(3, lines.Length);
        Assert.All(lines, line => Assert.Equal(13, line.Split(',').Length));
        Assert.StartsWith("1,1,1,", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("2,2,1,", lines[2], StringComparison.Ordinal);
        Assert.All(lines[1..], line => Assert.EndsWith(",,,", line, StringComparison.Ordinal));
    }

    [Fact]
    public void Write_APlan_HasNoByteOrderMarkAndNoBareLineFeed()
    {
        var bytes = PanelTable.Write(Plans.Two);

        Assert.Equal((byte)'n', bytes[0]);
        Assert.Equal(bytes.Count(b => b == '\r'), bytes.Count(b => b == '\n'));
    }

    [Theory]
    [InlineData(83.822083, -5.391111, 30.0, "83.822083,-5.391111,05 35 17.3,-05 23 28", "30.0000")]
    [InlineData(359.9999999, 0.0, 359.99999, "0.000000,0.000000,00 00 00.0,+00 00 00", "0.0000")]
    [InlineData(0.25, 89.99999, 0.00004, "0.250000,89.999990,00 01 00.0,+90 00 00", "0.0000")]
    [InlineData(15.0, -0.0002, 179.99996, "15.000000,-0.000200,01 00 00.0,-00 00 01", "180.0000")]
    [InlineData(15.0, -0.0001, 90.0, "15.000000,-0.000100,01 00 00.0,+00 00 00", "90.0000")]
    public void Write_APlace_RoundsWithoutEverReachingSixty(
        double ra,
        double dec,
        double angle,
        string place,
        string turned
    )
    {
        var fields = Text(Plans.OneAt(ra, dec, angle)).Split("\r\n")[1].Split(',');

        Assert.Equal(place, string.Join(',', fields[3..7]));
        Assert.Equal(turned, fields[9]);
    }

    private static string Text(FramedPlan plan) => Encoding.UTF8.GetString(PanelTable.Write(plan));
}
