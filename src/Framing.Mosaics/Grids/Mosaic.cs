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
        IReadOnlyList<Panel> panels,
        IReadOnlyList<(double Right, double Down)> places,
        PanelNeighbours neighbours
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
        Places = places;
        Neighbours = neighbours;
        IsRectangle = neighbours.IsRectangle;
    }

    /// <summary>The middle of the mosaic and the position angle of the displayed picture's up direction there.</summary>
    public CameraPose Pose { get; }

    /// <summary>One panel.</summary>
    public FieldShape Field { get; }

    /// <summary>What neighbours share where the camera is turned at each panel; less where it is left alone.</summary>
    public PanelOverlap Overlap { get; }

    /// <summary>True when the panels fill a rectangle of columns and rows.</summary>
    public bool IsRectangle { get; }

    /// <summary>Panels along the width of the displayed picture; where they fill no rectangle the most of a row, or all columns.</summary>
    public int Columns { get; }

    /// <summary>Panels along the height of the displayed picture; where they fill no rectangle all rows, or the most of a column.</summary>
    public int Rows { get; }

    /// <summary>True when the displayed picture is mirrored.</summary>
    public bool Mirrored { get; }

    /// <summary>What happens to the camera between the panels.</summary>
    public CameraTurning Turning { get; }

    /// <summary>
    /// The panels in reading order: row by row from the top-left, as displayed. Where columns of their own start stand side
    /// by side: column by column from the left, each from the top.
    /// </summary>
    public IReadOnlyList<Panel> Panels { get; }

    /// <summary>The middles of the panels in steps, to the right and down as displayed, from the mosaic's middle.</summary>
    internal IReadOnlyList<(double Right, double Down)> Places { get; }

    /// <summary>Which panels are neighbours.</summary>
    internal PanelNeighbours Neighbours { get; }

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

        var slots = new Slot[columns * rows];
        for (var i = 0; i < slots.Length; i++)
        {
            var (row, column) = Math.DivRem(i, columns);
            slots[i] = new(
                column - ((columns - 1) / 2.0),
                row - ((rows - 1) / 2.0),
                column + 1,
                row + 1
            );
        }

        return Laid(
            pose,
            field,
            overlap,
            slots,
            mirrored,
            turning,
            pole,
            PanelNeighbours.OfGrid(columns, rows)
        );
    }

    /// <summary>Lays out panels at places of their own.</summary>
    /// <param name="pose">The middle of the mosaic and the position angle of the displayed picture's up direction there.</param>
    /// <param name="field">One panel, both sides more than 0.</param>
    /// <param name="overlap">What neighbours share in the plane, at least 0 and less than the panel.</param>
    /// <param name="places">Where the panels stand.</param>
    /// <param name="mirrored">True when the displayed picture is mirrored.</param>
    /// <param name="turning">Whether the camera is turned at each panel.</param>
    /// <param name="pole">The pole that the mount turns about, as for a grid.</param>
    /// <returns>The mosaic; its panels are counted as <see cref="Panels"/> says.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length is out of its range.</exception>
    public static Mosaic Placed(
        CameraPose pose,
        FieldShape field,
        PanelOverlap overlap,
        PanelPlaces places,
        bool mirrored,
        CameraTurning turning,
        SkyDirection? pole = null
    )
    {
        ArgumentNullException.ThrowIfNull(places);
        var (right, down) = (
            field.TangentWidth - overlap.AlongWidth,
            field.TangentHeight - overlap.AlongHeight
        );
        var sign = mirrored ? -1.0 : 1.0;
        var displayed = places.Places.Select(place =>
            (Right: sign * place.Right / right, Down: -place.Up / down)
        );
        Slot[] slots =
        [
            .. displayed
                .GroupBy(place => places.BandsAreRows ? place.Down : place.Right)
                .OrderBy(band => band.Key)
                .SelectMany(
                    (band, b) =>
                        band.OrderBy(place => places.BandsAreRows ? place.Right : place.Down)
                            .Select(
                                (place, i) =>
                                    places.BandsAreRows
                                        ? new Slot(place.Right, place.Down, i + 1, b + 1)
                                        : new Slot(place.Right, place.Down, b + 1, i + 1)
                            )
                ),
        ];
        return Laid(
            pose,
            field,
            overlap,
            slots,
            mirrored,
            turning,
            pole,
            PanelNeighbours.OfPlaces(
                [.. slots.Select(slot => (slot.Right, slot.Down))],
                overlap.AlongWidth / right,
                overlap.AlongHeight / down
            )
        );
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
        if (!IsRectangle)
        {
            return Panels.FirstOrDefault(panel => panel.Column == column && panel.Row == row)
                ?? throw new ArgumentOutOfRangeException(
                    nameof(column),
                    column,
                    FormattableString.Invariant($"Row {row} of this mosaic has fewer columns.")
                );
        }

        return Panels[((row - 1) * Columns) + column - 1];
    }

    /// <summary>The same panels where they were really shot.</summary>
    /// <param name="poses">Where the camera looked for each panel, in the order of <see cref="Panels"/>.</param>
    /// <returns>A mosaic whose panels keep their numbers, places and neighbours.</returns>
    /// <exception cref="ArgumentException">There are not as many poses as panels.</exception>
    public Mosaic AsShot(IReadOnlyList<CameraPose> poses)
    {
        ArgumentNullException.ThrowIfNull(poses);
        if (poses.Count != Panels.Count)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"A mosaic of {Panels.Count} panels was given {poses.Count} poses."
                ),
                nameof(poses)
            );
        }

        var shot = Panels.Select(
            (panel, i) =>
                panel with
                {
                    Pose = poses[i],
                    Corners = Field.Corners(poses[i], Mirrored),
                }
        );
        return new(
            Pose,
            Field,
            Overlap,
            Columns,
            Rows,
            Mirrored,
            Turning,
            [.. shot],
            Places,
            Neighbours
        );
    }

    private static Mosaic Laid(
        CameraPose pose,
        FieldShape field,
        PanelOverlap overlap,
        Slot[] slots,
        bool mirrored,
        CameraTurning turning,
        SkyDirection? pole,
        PanelNeighbours neighbours
    )
    {
        PlanarFit.CheckSides(field.TangentWidth, field.TangentHeight);
        GridSteps.Check(field, overlap);
        var mountPole = pole ?? SkyDirection.NorthPole;
        var plane = new TangentPlane(pose.Centre);
        var (up, right) = Directions(pose.PositionAngle, mirrored);
        var stepRight = right * (field.TangentWidth - overlap.AlongWidth);
        var stepDown = up * (overlap.AlongHeight - field.TangentHeight);
        var panels = new Panel[slots.Length];
        for (var i = 0; i < slots.Length; i++)
        {
            var place = (stepRight * slots[i].Right) + (stepDown * slots[i].Down);

            // The middle panel of an odd grid is the mosaic's own pose, to the last digit.
            var centre = place == default ? pose.Centre : plane.Unproject(place);
            var angle =
                place == default ? pose.PositionAngle
                : turning == CameraTurning.TurnedAtEachPanel ? GridUp(pose.Centre, up, centre)
                : KeptToPole(pose, mountPole, centre);
            var panelPose = new CameraPose(centre, angle);
            panels[i] = new(
                i + 1,
                slots[i].Column,
                slots[i].Row,
                panelPose,
                field.Corners(panelPose, mirrored)
            );
        }

        return new(
            pose,
            field,
            overlap,
            slots.Max(slot => slot.Column),
            slots.Max(slot => slot.Row),
            mirrored,
            turning,
            panels,
            [.. slots.Select(slot => (slot.Right, slot.Down))],
            neighbours
        );
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

    /// <summary>A panel's middle in steps from the mosaic's, to the right and down as displayed, and its numbers.</summary>
    private readonly record struct Slot(double Right, double Down, int Column, int Row);
}
