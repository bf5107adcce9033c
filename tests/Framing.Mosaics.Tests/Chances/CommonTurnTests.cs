using System.Text.Json;
using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class CommonTurnTests
{
    private static readonly FieldShape Field = new(
        Angle.FromDegrees(4.5).Radians,
        Angle.FromDegrees(3.0).Radians
    );

    [Fact]
    public void HoleAndFirstHole_CheckValues_AreMet()
    {
        var entries = CheckValues.Starting("ovl-commonrot-");
        Assert.Equal(4, entries.Count);
        foreach (var entry in entries)
        {
            var overlap = Overlap(entry.Input("overlap"));
            var turn = Angle.FromDegrees(entry.Input("all_panels_rotated_by_deg"));
            entry.Meets(
                "hole_sq_deg_per_junction",
                CommonTurn.Hole(Field, overlap, turn).SquareDegrees
            );
            Assert.Equal(
                CommonTurn.Hole(Field, overlap, turn),
                CommonTurn.Hole(Field, overlap, -turn)
            );
            var first = CommonTurn.FirstHole(Field, overlap);
            if (
                entry.GetProperty("expect").GetProperty("critical_angle_deg").ValueKind
                == JsonValueKind.Null
            )
            {
                Assert.Null(first);
            }
            else
            {
                entry.Meets("critical_angle_deg", first!.Value.Degrees);
            }
        }
    }

    [Fact]
    public void Hole_TableOfCommonTurns_IsReproduced()
    {
        var rows = CheckValues.Table("common_rot");
        Assert.Equal(4, rows.Count);
        foreach (var row in rows)
        {
            var overlap = Overlap(CheckValues.Number(row[0]) / 100.0);
            Near(
                row[3],
                CommonTurn.Hole(Field, overlap, Angle.FromDegrees(20.0)).SquareArcminutes,
                5.1e-4
            );
            Near(
                row[4],
                CommonTurn.Hole(Field, overlap, Angle.FromDegrees(30.0)).SquareArcminutes,
                5.1e-4
            );
            var first = CommonTurn.FirstHole(Field, overlap);
            Assert.Equal(row[2] == "never", first is null);
            if (first is { } turn)
            {
                Near(row[2], turn.Degrees, 0.0051);
            }
        }

        static void Near(string cell, double value, double tolerance) =>
            Assert.Equal(CheckValues.Number(cell), value, tolerance);
    }

    [Fact]
    public void FirstHole_JustBelowAndAbove_ClosesAndOpens()
    {
        var overlap = Overlap(0.1);
        var first = CommonTurn.FirstHole(Field, overlap)!.Value;
        var hair = Angle.FromDegrees(1e-6);

        Assert.Equal(default, CommonTurn.Hole(Field, overlap, first - hair));
        Assert.True(CommonTurn.Hole(Field, overlap, first + hair).Steradians > 0.0);
    }

    private static PanelOverlap Overlap(double share) =>
        new(share * Field.TangentWidth, share * Field.TangentHeight);
}
