using Framing.Sky;

namespace Framing.Mosaics.Tests;

/// <summary>A random mosaic, its panels off their places: anywhere on the sky, 1 to 40 panels, any size.</summary>
internal sealed class DrawnMosaic
{
    private readonly Mosaic? grid;
    private readonly List<Panel> panels;
    private readonly List<PanelPair> pairs;
    private readonly SkyOutline target;
    private readonly Vector3D targetMiddle;
    private readonly double targetCosReach;
    private readonly Vector3D[] targetNormals;

    public DrawnMosaic(int seed)
    {
        Seed = seed;
        var random = new Random(seed);
        Middle = random.Next(6) switch
        {
            0 => SkyDirection.NorthPole,
            1 => SkyDirection.SouthPole,
            2 => SkyDirection.FromDegrees(random.Next(2) * 359.9, Even(random, -30.0, 30.0)),
            _ => SkyDirection.FromVector(Ball(random)),
        };
        var size = Math.Exp(Even(random, Math.Log(0.002), Math.Log(0.9)));
        Field = new(size, size * Even(random, 0.5, 1.2));
        Mirrored = random.Next(2) == 0;
        var strewn = random.Next(8) == 0;
        if (strewn)
        {
            (panels, pairs) = Strewn(random);
        }
        else
        {
            grid = Grid(random);
            panels = [.. grid.Panels];
            pairs = [.. grid.Neighbours.Pairs];
        }

        Poses = [.. panels.Select(panel => panel.Pose)];
        Reach = panels
            .SelectMany(panel => panel.Corners)
            .Max(corner => corner.SeparationTo(Middle).Radians);
        Reach = strewn ? Math.PI : Math.Min(Math.PI, (Reach * 1.05) + 1e-6);

        var reach = Math.Min(Reach, 0.9);
        var centre = Middle.Offset(
            PositionAngle.FromDegrees(Even(random, 0.0, 360.0)),
            Angle.FromRadians(Even(random, 0.0, 0.4) * reach)
        );
        target = SkyOutline.Ellipse(
            centre,
            Angle.FromRadians(reach * Even(random, 0.3, 1.0)),
            Angle.FromRadians(reach * Even(random, 0.1, 0.6)),
            PositionAngle.FromDegrees(Even(random, 0.0, 180.0))
        );
        Reach = Math.Min(
            Math.PI,
            Math.Max(
                Reach,
                target.Corners.Max(corner => corner.SeparationTo(Middle).Radians) + 1e-9
            )
        );
        targetMiddle = target.Middle.Vector;
        targetCosReach = Math.Cos(target.Radius.Radians) - 1e-15;
        var corners = target.Corners;
        targetNormals =
        [
            .. corners
                .Select((corner, i) => corner.Vector.Cross(corners[(i + 1) % corners.Count].Vector))
                .Select(normal => normal * Math.Sign(normal.Dot(targetMiddle))),
        ];
        HoldsAPole = panels.Exists(panel =>
            new[] { SkyDirection.NorthPole, SkyDirection.SouthPole }.Any(pole =>
                pole.SeparationTo(panel.Pose.Centre).Radians
                < Math.Atan(Math.Min(Field.TangentWidth, Field.TangentHeight) / 2.0)
            )
        );
    }

    public int Seed { get; }

    public SkyDirection Middle { get; }

    public FieldShape Field { get; }

    public bool Mirrored { get; }

    public IReadOnlyList<CameraPose> Poses { get; }

    /// <summary>Everything lies within this of the middle, in radians.</summary>
    public double Reach { get; }

    public bool HoldsAPole { get; }

    public MosaicCoverage Measure() =>
        grid is not null
            ? CoverageMeasure.Of(grid, target)
            : CoverageMeasure.Of(panels, pairs, Field, Mirrored, Middle, target);

    public SampledMosaic Sampled() =>
        new(
            Poses,
            [.. pairs.Select(pair => (pair.First, pair.Second, pair.AlongWidth))],
            Field,
            Mirrored,
            Middle
        );

    /// <summary>The target is convex: inside is to the inner side of all its sides.</summary>
    public bool InTarget(Vector3D at)
    {
        if (at.Dot(targetMiddle) < targetCosReach)
        {
            return false;
        }

        foreach (var normal in targetNormals)
        {
            if (normal.Dot(at) < 0.0)
            {
                return false;
            }
        }

        return true;
    }

    private Mosaic Grid(Random random)
    {
        var columns = random.Next(1, 9);
        var rows = random.Next(1, (40 / columns) + 1);
        var planned = Mosaic.Grid(
            new(Middle, PositionAngle.FromDegrees(Even(random, 0.0, 360.0))),
            Field,
            new(
                Field.TangentWidth * Even(random, 0.0, 0.25),
                Field.TangentHeight * Even(random, 0.0, 0.25)
            ),
            columns,
            Math.Min(rows, 8),
            Mirrored,
            random.Next(2) == 0 ? CameraTurning.LeftAlone : CameraTurning.TurnedAtEachPanel
        );
        var stray = Field.TangentHeight * Even(random, 0.0, 0.12);
        var turn = Even(random, 0.0, 4.0);
        return planned.AsShot([
            .. planned.Panels.Select(panel => new CameraPose(
                panel.Pose.Centre.Offset(
                    PositionAngle.FromDegrees(Even(random, 0.0, 360.0)),
                    Angle.FromRadians(stray * Even(random, 0.0, 1.5))
                ),
                panel.Pose.PositionAngle.TurnedBy(Angle.FromDegrees(turn * Even(random, -1.0, 1.0)))
            )),
        ]);
    }

    /// <summary>Panels anywhere on the whole sky, neighbours by chance.</summary>
    private (List<Panel> Panels, List<PanelPair> Pairs) Strewn(Random random)
    {
        List<Panel> strewn = [];
        var count = random.Next(1, 41);
        for (var i = 0; i < count; i++)
        {
            var pose = new CameraPose(
                SkyDirection.FromVector(Ball(random)),
                PositionAngle.FromDegrees(Even(random, 0.0, 360.0))
            );
            strewn.Add(new(i + 1, i + 1, 1, pose, Field.Corners(pose, Mirrored)));
        }

        return (
            strewn,
            [.. Enumerable.Range(0, count - 1).Select(i => new PanelPair(i, i + 1, i % 2 == 0))]
        );
    }

    private static double Even(Random random, double from, double to) =>
        from + ((to - from) * random.NextDouble());

    /// <summary>A direction drawn evenly over the whole sphere.</summary>
    public static Vector3D Ball(Random random)
    {
        while (true)
        {
            var at = new Vector3D(
                Even(random, -1.0, 1.0),
                Even(random, -1.0, 1.0),
                Even(random, -1.0, 1.0)
            );
            if (at.Length is > 0.1 and < 1.0)
            {
                return at * (1.0 / at.Length);
            }
        }
    }
}
