using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>A rectangular grid of panels in the tangent plane of its centre.</summary>
/// <remarks>
/// <para>
/// The centres of the panels stand at equal steps in one tangent plane, which also holds near a pole, where steps in right
/// ascension fall apart. The
/// plane after Calabretta and Greisen 2002, A&amp;A 395, 1077; the angles are meridian convergence, derived and held against
/// numeric bearings (tests/reference/mosaics/t03_mosaic.py).
/// </para>
/// <para>
/// Columns and rows are counted as displayed. A mirrored picture shows the sky with left and right exchanged, so its first
/// column lies on the other side of the mosaic's centre on the sky; the sky that the mosaic covers is the same.
/// </para>
/// </remarks>
public sealed class Mosaic
{
    /// <summary>The most panels that a mosaic may have.</summary>
    public const int MostPanels = 1_000_000;

    private Mosaic(
        CameraPose pose,
        FieldShape field,
        PanelOverlap overlap,
        int columns,
        int rows,
        bool mirrored,
        CameraTurning turning,
        IReadOnlyList<Panel> panels
    )
    {
        Pose = pose;
        Field = field;
        Overlap = overlap;
        Columns = columns;
        Rows = rows;
        Mirrored = mirrored;
        Turning = turning;
        Panels = panels;
    }

    /// <summary>The middle of the mosaic and the position angle of the displayed picture's up direction there.</summary>
    public CameraPose Pose { get; }

    /// <summary>One panel.</summary>
    public FieldShape Field { get; }

    /// <summary>What neighbours share where the camera is turned at each panel; less where it is left alone.</summary>
    public PanelOverlap Overlap { get; }

    /// <summary>Panels along the width of the displayed picture.</summary>
    public int Columns { get; }

    /// <summary>Panels along the height of the displayed picture.</summary>
    public int Rows { get; }

    /// <summary>True when the displayed picture is mirrored.</summary>
    public bool Mirrored { get; }

    /// <summary>What happens to the camera between the panels.</summary>
    public CameraTurning Turning { get; }

    /// <summary>The panels in reading order: row by row from the top-left, as displayed.</summary>
    public IReadOnlyList<Panel> Panels { get; }

    /// <summary>The rectangle that the grid spans in the tangent plane of its centre.</summary>
    public FieldShape WholeFrame => GridSteps.WholeFrame(Field, Overlap, Columns, Rows);

    /// <summary>Lays out a grid of panels.</summary>
    /// <param name="pose">The middle of the mosaic and the position angle of the displayed picture's up direction there.</param>
    /// <param name="field">One panel, both sides more than 0.</param>
    /// <param name="overlap">What neighbours share in the plane, at least 0 and less than the panel.</param>
    /// <param name="columns">Panels along the width, 1 or more.</param>
    /// <param name="rows">Panels along the height, 1 or more.</param>
    /// <param name="mirrored">True when the displayed picture is mirrored.</param>
    /// <param name="turning">Whether the camera is turned at each panel.</param>
    /// <param name="pole">
    /// The pole that the mount turns about (either one), in ICRS: on the night it is the pole of date, half a degree from
    /// the ICRS pole by the year 2090. Null takes the ICRS pole. Of no meaning when the camera is turned at each panel.
    /// </param>
    /// <returns>The mosaic.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length or number is out of its range.</exception>
    /// <remarks>
    /// The angle of a panel, counted from ICRS north there. Left alone: the mosaic's angle, plus the change of the position
    /// angle of the mount's pole from the mosaic's middle to the panel's. Turned: the position angle of the grid's up
    /// direction at the panel's centre.
    /// </remarks>
    public static Mosaic Grid(
        CameraPose pose,
        FieldShape field,
        PanelOverlap overlap,
        int columns,
        int rows,
        bool mirrored,
        CameraTurning turning,
        SkyDirection? pole = null
    )
    {
        PlanarFit.CheckSides(field.TangentWidth, field.TangentHeight);
        GridSteps.Check(field, overlap);
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        if ((long)columns * rows > MostPanels)
        {
            throw new ArgumentOutOfRangeException(
                nameof(columns),
                columns,
                FormattableString.Invariant(
                    $"A mosaic has at most {MostPanels} panels, not {columns} x {rows}."
                )
            );
        }

        var mountPole = pole ?? SkyDirection.NorthPole;
        var plane = new TangentPlane(pose.Centre);
        var (up, right) = Directions(pose.PositionAngle, mirrored);
        var stepRight = right * (field.TangentWidth - overlap.AlongWidth);
        var stepDown = up * (overlap.AlongHeight - field.TangentHeight);
        var panels = new Panel[columns * rows];
        for (var i = 0; i < panels.Length; i++)
        {
            var (row, column) = Math.DivRem(i, columns);
            var place =
                (stepRight * (column - ((columns - 1) / 2.0)))
                + (stepDown * (row - ((rows - 1) / 2.0)));

            // The middle panel of an odd grid is the mosaic's own pose, to the last digit.
            var centre = place == default ? pose.Centre : plane.Unproject(place);
            var angle =
                place == default ? pose.PositionAngle
                : turning == CameraTurning.TurnedAtEachPanel ? GridUp(pose.Centre, up, centre)
                : KeptToPole(pose, mountPole, centre);
            var panelPose = new CameraPose(centre, angle);
            panels[i] = new(
                i + 1,
                column + 1,
                row + 1,
                panelPose,
                field.Corners(panelPose, mirrored)
            );
        }

        return new(pose, field, overlap, columns, rows, mirrored, turning, panels);
    }

    /// <summary>The panel at a place of the grid.</summary>
    /// <param name="column">1 to <see cref="Columns"/>, from the left as displayed.</param>
    /// <param name="row">1 to <see cref="Rows"/>, from the top as displayed.</param>
    /// <returns>The panel.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such column or row.</exception>
    public Panel At(int column, int row)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(column, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(column, Columns);
        ArgumentOutOfRangeException.ThrowIfLessThan(row, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(row, Rows);
        return Panels[((row - 1) * Columns) + column - 1];
    }

    /// <summary>Up and right of the displayed picture in the plane of its centre.</summary>
    private static (PlanePoint Up, PlanePoint Right) Directions(PositionAngle angle, bool mirrored)
    {
        var (sin, cos) = Math.SinCos(angle.Radians);
        return (new(sin, cos), new PlanePoint(-cos, sin) * (mirrored ? -1.0 : 1.0));
    }

    /// <summary>Position angle, at a place, of the line through it that runs up in the plane of the mosaic.</summary>
    private static PositionAngle GridUp(SkyDirection middle, PlanePoint up, SkyDirection place)
    {
        var along = (middle.East * up.Xi) + (middle.North * up.Eta);
        return PositionAngle.FromAngle(
            Angle.FromRadians(Math.Atan2(along.Dot(place.East), along.Dot(place.North)))
        );
    }

    private static PositionAngle KeptToPole(CameraPose pose, SkyDirection pole, SkyDirection place)
    {
        var before = pose.Centre.PositionAngleTo(pole);
        return pose.PositionAngle.TurnedBy(before.TurnTo(place.PositionAngleTo(pole)));
    }
}
