using Framing.Sky;

namespace Framing.Drawing;

/// <summary>North and east, and the scale bar: always there.</summary>
internal sealed class MarkLayer(SkyComposer composer)
{
    private readonly List<Name> letters = [];
    private Box barRoom;
    private PicturePoint barStart;
    private PicturePoint barText;
    private double barTextSize;

    private double NorthLength => 46.0 * composer.Unit;

    private double EastLength => 34.0 * composer.Unit;

    private double LetterSize => composer.Layout.Text(14.0);

    public void Place()
    {
        PlaceDirections();
        PlaceBar();
    }

    public void Draw()
    {
        composer.Sheet.Group(
            "directions",
            null,
            () =>
            {
                Arrow(composer.Mark.North, NorthLength);
                Arrow(composer.Mark.East, EastLength);
                foreach (var letter in letters)
                {
                    composer.Sheet.Write(
                        letter.Text,
                        SkyComposer.StartIn(letter.Room, letter.Size),
                        letter.Size,
                        letter.Weight,
                        letter.Ink,
                        composer.TextBorder
                    );
                }
            }
        );
        composer.Sheet.Group("scale-bar", null, DrawBar);
    }

    private void PlaceDirections()
    {
        // In the corner that leaves the target and the panels alone; close to a pole the directions turn too fast to mean anything.
        var frame = composer.Chart.Frame;
        var reach = NorthLength + (LetterSize * 1.6);
        var inset = reach + (10.0 * composer.Unit);
        PicturePoint[] corners =
        [
            new(frame.Left + inset, frame.Bottom - inset),
            new(frame.Left + inset, frame.Top + inset),
            new(frame.Right - inset, frame.Top + inset),
            new(frame.Right - inset, frame.Bottom - inset),
        ];
        var (place, least) = (corners[0], double.MaxValue);
        foreach (var corner in corners)
        {
            var cost = Covered(Box.Around(corner, 2.0 * reach, 2.0 * reach));
            if (cost < least)
            {
                (place, least) = (corner, cost);
            }
        }

        var mark = DirectionMark.At(composer.Chart, place);

        // The arrows are moved towards the corner as far as their own extent allows.
        var north = mark.North * reach;
        var east = mark.East * (EastLength + (LetterSize * 1.6));
        var shift = new PicturePoint(
            Shift(place.X, frame.Left, frame.Right, north.X, east.X),
            Shift(place.Y, frame.Top, frame.Bottom, north.Y, east.Y)
        );
        composer.Mark = DirectionMark.At(composer.Chart, place + shift);
        Letter("N", composer.Mark.North, NorthLength);
        Letter("E", composer.Mark.East, EastLength);
        composer.Placer.Take(
            Around(composer.Mark.Place, composer.Mark.Place + (composer.Mark.North * NorthLength))
        );
        composer.Placer.Take(
            Around(composer.Mark.Place, composer.Mark.Place + (composer.Mark.East * EastLength))
        );
    }

    private double Shift(double place, double low, double high, double one, double other)
    {
        var rim = 16.0 * composer.Unit;
        return place - low < high - place
            ? low + rim - (place + Math.Min(0.0, Math.Min(one, other)))
            : high - rim - (place + Math.Max(0.0, Math.Max(one, other)));
    }

    private Box Around(PicturePoint from, PicturePoint to) =>
        new Box(
            Math.Min(from.X, to.X),
            Math.Min(from.Y, to.Y),
            Math.Max(from.X, to.X),
            Math.Max(from.Y, to.Y)
        ).Grown(4.0 * composer.Unit);

    /// <summary>How much of the panels and the target a box would lie over, and how close it is to a pole.</summary>
    private double Covered(Box box)
    {
        var cost = 0.0;
        foreach (var panel in composer.PanelLines)
        {
            cost += Touch(panel, box) ? 2.0 : 0.0;
        }

        foreach (var target in composer.Scene.Targets)
        {
            cost += Touch(ChartLines.Of(composer.Chart, target.Outline), box) ? 3.0 : 0.0;
        }

        foreach (var pole in (SkyDirection[])[SkyDirection.NorthPole, SkyDirection.SouthPole])
        {
            if (
                composer.Chart.TrySkyToPicture(pole, out var place)
                && box.DistanceTo(place) < box.Width
            )
            {
                cost += 5.0;
            }
        }

        return cost;
    }

    private static bool Touch(Lines lines, Box box) => lines.Cross(box) || lines.Hold(box.Middle);

    private void Letter(string letter, PicturePoint way, double length)
    {
        var (width, height) = SkyComposer.Measure(letter, LetterSize, TextWeight.SemiBold);
        var middle = composer.Mark.Place + (way * (length + (LetterSize * 0.85)));
        var room = Box.Around(middle, width, height);

        // Capitals have no descent: the box sits a little low around them.
        room = new(
            room.Left,
            room.Top + (Typefaces.Descent * LetterSize / 2.0),
            room.Right,
            room.Bottom + (Typefaces.Descent * LetterSize / 2.0)
        );
        letters.Add(new(letter, room, LetterSize, TextWeight.SemiBold, composer.Palette.Mark));
        composer.Placer.Take(room);
        composer.Note(letter, LabelKind.Direction, room);
    }

    private void Arrow(PicturePoint way, double length)
    {
        var unit = composer.Unit;
        var start = composer.Mark.Place;
        var tip = start + (way * length);
        var across = new PicturePoint(-way.Y, way.X);
        var neck = tip - (way * (10.0 * unit));
        var head = Lines.Closed([
            tip,
            neck + (across * (3.8 * unit)),
            neck + (way * (2.2 * unit)),
            neck - (across * (3.8 * unit)),
        ]);
        var shaft = Lines.Open(start, neck + (way * (2.2 * unit)));
        var border = composer.TextBorder;
        composer.Sheet.Draw(shaft, border with { Width = border.Width + unit });
        composer.Sheet.Draw(head, border);
        composer.Sheet.Draw(
            shaft,
            new(composer.Palette.Mark, Math.Max(1.2, 1.6 * unit), Round: true)
        );
        composer.Sheet.Fill(head, composer.Palette.Mark);
    }

    private void PlaceBar()
    {
        var frame = composer.Chart.Frame;
        var unit = composer.Unit;
        var size = composer.Layout.Text(13.0);
        var (width, height) = SkyComposer.Measure(composer.Bar.Label, size, composer.Palette.Plain);
        var wide = Math.Max(composer.Bar.Length, width);
        var high = height + (12.0 * unit);
        var rim = 16.0 * unit;
        Box[] corners =
        [
            new(
                frame.Right - rim - wide,
                frame.Bottom - rim - high,
                frame.Right - rim,
                frame.Bottom - rim
            ),
            new(
                frame.Left + rim,
                frame.Bottom - rim - high,
                frame.Left + rim + wide,
                frame.Bottom - rim
            ),
            new(
                frame.Right - rim - wide,
                frame.Top + rim,
                frame.Right - rim,
                frame.Top + rim + high
            ),
            new(frame.Left + rim, frame.Top + rim, frame.Left + rim + wide, frame.Top + rim + high),
        ];
        barRoom = corners[0];
        var least = double.MaxValue;
        foreach (var corner in corners)
        {
            var cost = composer.Placer.IsFree(corner) ? Covered(corner) : 100.0;
            if (cost < least)
            {
                (barRoom, least) = (corner, cost);
            }
        }

        composer.Placer.Take(barRoom);
        barStart = new(
            barRoom.Middle.X - (composer.Bar.Length / 2.0),
            Math.Floor(barRoom.Bottom - (4.0 * unit)) + 0.5
        );
        var start = new PicturePoint(
            barRoom.Middle.X - (width / 2.0),
            barRoom.Top + (Typefaces.CapHeight * size)
        );
        composer.Note(
            composer.Bar.Label,
            LabelKind.Scale,
            SkyComposer.RoomOf(composer.Bar.Label, start, size, composer.Palette.Plain)
        );
        (barText, barTextSize) = (start, size);
    }

    private void DrawBar()
    {
        var unit = composer.Unit;
        var end = barStart with { X = barStart.X + composer.Bar.Length };
        var tick = 4.0 * unit;
        var bar = new Lines();
        bar.Add([barStart, end], closed: false);
        bar.Add(
            [barStart with { Y = barStart.Y - tick }, barStart with { Y = barStart.Y + tick }],
            closed: false
        );
        bar.Add([end with { Y = end.Y - tick }, end with { Y = end.Y + tick }], closed: false);
        var border = composer.TextBorder;
        composer.Sheet.Draw(bar, border with { Width = border.Width + unit });
        composer.Sheet.Draw(bar, new(composer.Palette.Mark, Math.Max(1.2, 1.6 * unit)));
        composer.Sheet.Write(
            composer.Bar.Label,
            barText,
            barTextSize,
            composer.Palette.Plain,
            composer.Palette.Mark,
            border
        );
    }
}
