using System.Globalization;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Drawing;

/// <summary>One night from sunset to sunrise.</summary>
internal sealed class NightBand
{
    /// <summary>With more panels only the way of their middle is drawn.</summary>
    private const int MostPaths = 12;

    private static readonly TimeSpan Sample = TimeSpan.FromMinutes(3.0);
    private static readonly TimeSpan Ends = TimeSpan.FromMinutes(25.0);

    private readonly NightComposer composer;
    private readonly PlannedNight night;
    private readonly SiteHours hours;
    private readonly SiteClock clock;
    private readonly Box chart;
    private readonly Box strip;
    private readonly double headBase;
    private readonly DateTime from;
    private readonly DateTime to;
    private readonly IReadOnlyList<ClockChange> changes;

    public NightBand(NightComposer composer, PlannedNight night, Box room)
    {
        (this.composer, this.night) = (composer, night);
        clock = composer.Plan.Request.Clock;
        var text = composer.TextSize;
        headBase = room.Top + (text * 1.2);
        var bottom = room.Bottom - (text * 4.4);
        var stripTop = bottom - (text * 2.3);
        chart = new(
            Math.Ceiling(room.Left + (text * 4.2)),
            Math.Ceiling(headBase + (text * 2.4)),
            Math.Floor(room.Right - (text * 1.5)),
            Math.Floor(stripTop)
        );
        strip = chart with { Top = Math.Floor(stripTop), Bottom = Math.Floor(bottom) };
        var sun = night.Sun;
        var down = sun.SunDown;
        var whole = down.Count != 1 || down[0].HeldBefore || down[0].HoldsAfter;
        (from, to) = whole
            ? (sun.Start, sun.End)
            : (Later(down[0].Start - Ends, sun.Start), Earlier(down[0].End + Ends, sun.End));
        hours = new(sun.Site, from.AddMinutes(-1.0), to.AddMinutes(1.0));
        changes = clock.Changes(from, to);
    }

    private double Unit => composer.Unit;

    private NightInks Inks => composer.Inks;

    public void Draw()
    {
        Head();
        composer.Sheet.Group(
            "sky",
            chart,
            () =>
            {
                Darkness(chart);
                Grid();
                Moon();
                Paths();
            }
        );
        composer.Sheet.Group("blocks", strip, Strip);
        composer.Sheet.Draw(
            Lines.Rectangle(chart with { Bottom = strip.Bottom }),
            new(composer.Palette.Rim, Math.Max(1.0, 1.2 * Unit))
        );
        Changes();
        Altitudes();
        Times();
    }

    private void Head()
    {
        var date = night.Sun.Evening.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);
        var dark =
            night.Dark.Count == 0
                ? night.Sun.Words
                : (night.Darkness, composer.Plan.Request.Darkness) switch
                {
                    (DarknessWanted.Nautical, DarknessWanted.Astronomical) =>
                        "never quite dark; below −12° ",
                    (DarknessWanted.Nautical, _) => "below −12° ",
                    (DarknessWanted.Civil, _) => "below −6° ",
                    _ => "dark ",
                }
                    + string.Join(
                        " and ",
                        night.Dark.Select(stretch =>
                            clock.ShowsUtc
                                ? $"{Utc(stretch.Start)}–{Utc(stretch.End)} UTC"
                                : $"{Local(stretch.Start)}–{Local(stretch.End)} ({Utc(stretch.Start)}–{Utc(stretch.End)} UTC)"
                        )
                    );
        var moon = string.Create(
            CultureInfo.InvariantCulture,
            $"Moon {night.Moon.IlluminatedFraction * 100.0:0} % lit, {night.Moon.Separation.Degrees:0}° away"
        );
        var size = composer.Text(15.5);
        var palette = composer.Palette;
        composer.Write(
            date,
            new(chart.Left, headBase),
            size,
            TextWeight.SemiBold,
            palette.PageInk,
            LabelKind.Heading
        );
        var left = chart.Left + Typefaces.Measure(date + "   ", TextWeight.SemiBold, size);
        composer.Write(
            TextFit.Cut($"{dark}   ·   {moon}", palette.Plain, size, chart.Right - left),
            new(left, headBase),
            size,
            palette.Plain,
            palette.PageSoft,
            LabelKind.Heading
        );
    }

    private void Darkness(Box box)
    {
        var sun = night.Sun;
        composer.Sheet.Fill(Lines.Rectangle(box), Inks.Day);
        foreach (
            var (stretches, ink) in new[]
            {
                (sun.SunDown, Inks.Civil),
                (sun.BelowCivil, Inks.Nautical),
                (sun.BelowNautical, Inks.Astronomical),
                (sun.Dark, Inks.Dark),
            }
        )
        {
            foreach (var stretch in stretches)
            {
                var (left, right) = (X(stretch.Start), X(stretch.End));
                if (right > box.Left && left < box.Right)
                {
                    composer.Sheet.Fill(
                        Lines.Rectangle(
                            box with
                            {
                                Left = Math.Max(left, box.Left),
                                Right = Math.Min(right, box.Right),
                            }
                        ),
                        ink
                    );
                }
            }
        }
    }

    private void Grid()
    {
        var line = new Stroke(Inks.Line, Math.Max(1.0, Unit));
        for (var altitude = 15; altitude < 90; altitude += 15)
        {
            composer.Sheet.Draw(
                Lines.Open(new(chart.Left, Y(altitude)), new(chart.Right, Y(altitude))),
                line
            );
        }

        foreach (var hour in Hours())
        {
            composer.Sheet.Draw(
                Lines.Open(new(X(hour), chart.Top), new(X(hour), chart.Bottom)),
                line
            );
        }
    }

    private void Moon()
    {
        var way = Way(utc => hours.Moon(utc).Place.Altitude.Degrees);
        composer.Sheet.Draw(way, new(Inks.Moon, 2.4 * Unit, [0.0, 6.5 * Unit], Round: true));
    }

    private void Paths()
    {
        var panels = composer.Plan.Request.Panels;
        var sum = default(Vector3D);
        foreach (var panel in panels)
        {
            sum += panel.Vector;
        }

        var middle = sum.Length > 1e-9 ? SkyDirection.FromVector(sum) : panels[0];
        var way = hours.Follow(middle);
        Ground(way);
        if (panels.Count <= MostPaths)
        {
            foreach (var panel in panels)
            {
                var path = hours.Follow(panel);
                composer.Sheet.Draw(
                    Way(utc => path.At(utc).Altitude.Degrees),
                    new(Inks.Target.At(0.55), 1.3 * Unit)
                );
            }
        }
        else
        {
            composer.Sheet.Draw(
                Way(utc => way.At(utc).Altitude.Degrees),
                new(Inks.Target, 1.6 * Unit)
            );
        }

        foreach (var block in night.Blocks)
        {
            var path = hours.Follow(panels[block.Panel - 1]);
            composer.Sheet.Draw(
                Way(utc => path.At(utc).Altitude.Degrees, block.From, block.To),
                new(Inks.Block, 4.5 * Unit)
            );
        }
    }

    /// <summary>The skyline below the way of the panels, and the lowest altitude at which something is shot.</summary>
    private void Ground(StarPath way)
    {
        var skyline = night.Sun.Site.Horizon;
        var points = new List<PicturePoint> { new(chart.Left, chart.Bottom) };
        for (var utc = from; utc <= to; utc += Sample)
        {
            points.Add(
                new(X(utc), Y(Math.Max(0.0, skyline.AltitudeAt(way.At(utc).Azimuth).Degrees)))
            );
        }

        points.Add(points[^1] with { X = chart.Right });
        points.Add(new(chart.Right, chart.Bottom));
        composer.Sheet.Fill(Lines.Closed([.. points]), Inks.Ground);
        composer.Sheet.Draw(
            Lines.Open([.. points.Skip(1).SkipLast(1)]),
            new(Inks.Skyline, 1.6 * Unit)
        );
        var least = composer.Plan.Request.Limits.MinAltitude.Degrees;
        if (least > 0.0)
        {
            composer.Sheet.Draw(
                Lines.Open(new(chart.Left, Y(least)), new(chart.Right, Y(least))),
                new(Inks.Skyline, 1.3 * Unit, [9.0 * Unit, 6.0 * Unit])
            );
        }
    }

    private void Strip()
    {
        Darkness(strip);
        composer.Sheet.Draw(
            Lines.Open(new(strip.Left, strip.Top), new(strip.Right, strip.Top)),
            new(Inks.Skyline, Math.Max(1.0, Unit))
        );
        var request = composer.Plan.Request;
        foreach (
            var down in night.Sun.SunDown.Where(_ =>
                request.Setup > TimeSpan.Zero && night.Usable.Count > 0
            )
        )
        {
            Pause(down.Start, Earlier(down.Start + request.Setup, down.End), "setting up");
        }

        foreach (var block in night.Blocks)
        {
            Block(block);
        }

        if (night.Flats is { } flats)
        {
            Pause(flats.Start, flats.End, "flats");
        }
    }

    /// <summary>Time that goes into something else than subs: an open box.</summary>
    private void Pause(DateTime start, DateTime end, string text)
    {
        var box = BoxOf(start, end);
        composer.Sheet.Draw(
            Lines.Rectangle(box),
            new(Inks.OnSky, 1.2 * Unit, [3.0 * Unit, 3.0 * Unit])
        );
        InBox(box, Inks.OnSky, composer.Palette.Plain, text);
    }

    private void Block(NightBlock block)
    {
        var box = BoxOf(block.From, block.To);
        NightLegend.Fill(composer, box, NumberOf(block.Filter));
        var panel = block.Panel.ToString(CultureInfo.InvariantCulture);
        InBox(box, Inks.OnBlock, TextWeight.SemiBold, $"{panel}  {block.Filter.Name}", panel);
    }

    private int NumberOf(NightFilter filter)
    {
        var filters = composer.Plan.Request.Filters;
        for (var i = 0; i < filters.Count; i++)
        {
            if (filters[i] == filter)
            {
                return i;
            }
        }

        return 0;
    }

    /// <summary>The first of the texts that has room.</summary>
    private void InBox(Box box, Colour ink, TextWeight weight, params string[] texts)
    {
        var size = composer.TextSize;
        foreach (var text in texts)
        {
            if (Typefaces.Measure(text, weight, size) + (4.0 * Unit) > box.Width)
            {
                continue;
            }

            composer.Centred(
                text,
                new(box.Middle.X, box.Middle.Y + (Typefaces.CapHeight * size / 2.0)),
                size,
                weight,
                ink,
                LabelKind.Panel
            );
            return;
        }
    }

    private void Changes()
    {
        foreach (var change in changes)
        {
            var x = X(change.Utc);
            var palette = composer.Palette;
            composer.Sheet.Draw(
                Lines.Open(new(x, chart.Top), new(x, chart.Bottom)),
                new(Inks.OnSky, 1.6 * Unit, [2.0 * Unit, 4.0 * Unit])
            );
            var text = string.Create(
                CultureInfo.InvariantCulture,
                $"the clocks go {(change.Forward > TimeSpan.Zero ? "forward" : "back")} from {change.Before.Local:HH:mm} to {change.After.Local:HH:mm}"
            );
            var size = composer.TextSize;
            var border = new Stroke(Inks.Dark.At(0.85), 3.0 * Unit, Round: true);
            var right = new PicturePoint(x + (6.0 * Unit), chart.Top + (size * 1.3));
            if (right.X + Typefaces.Measure(text, palette.Plain, size) > chart.Right)
            {
                right = right with
                {
                    X = x - (6.0 * Unit) - Typefaces.Measure(text, palette.Plain, size),
                };
            }

            composer.Write(text, right, size, palette.Plain, Inks.OnSky, LabelKind.Object, border);
        }
    }

    private void Altitudes()
    {
        var palette = composer.Palette;
        var size = composer.TextSize;
        for (var altitude = 0; altitude <= 90; altitude += 15)
        {
            var text = string.Create(CultureInfo.InvariantCulture, $"{altitude}°");
            composer.Write(
                text,
                new(
                    chart.Left - (6.0 * Unit) - Typefaces.Measure(text, palette.Plain, size),
                    Y(altitude) + (Typefaces.CapHeight * size / 2.0)
                ),
                size,
                palette.Plain,
                palette.PageSoft
            );
        }
    }

    /// <summary>UTC above, the clock at the site below; offsets are written, and each time where the clock is set.</summary>
    private void Times()
    {
        var palette = composer.Palette;
        var size = composer.TextSize;
        var above = chart.Top - (size * 0.8);
        var below = strip.Bottom + (size * 1.35);
        composer.Write(
            "UTC",
            new(chart.Left - (Typefaces.Measure("UTC  ", palette.Plain, size)), above),
            size,
            palette.Plain,
            palette.PageSoft
        );
        foreach (var hour in Hours())
        {
            composer.Centred(Utc(hour), new(X(hour), above), size, palette.Plain, palette.PageSoft);
            if (clock.ShowsUtc)
            {
                continue;
            }

            var local = clock.At(hour);
            var text =
                local.Local.ToString("HH:mm", CultureInfo.InvariantCulture)
                + (changes.Count > 0 ? local.OffsetText : "");
            composer.Centred(text, new(X(hour), below), size, palette.Plain, palette.PageInk);
        }

        var offsets =
            changes.Count == 0
                ? $"UTC{clock.At(night.Middle).OffsetText}"
                : $"UTC{changes[0].Before.OffsetText}, then UTC{changes[0].After.OffsetText}";
        var axis = clock.ShowsUtc
            ? "Time (UTC); altitude of the panels through the air"
            : $"Time at the site ({clock.ZoneName}, {offsets}); altitude of the panels through the air";
        composer.Centred(
            TextFit.Cut(axis, palette.Plain, size, chart.Width),
            new(chart.Middle.X, below + (size * 1.55)),
            size,
            palette.Plain,
            palette.PageSoft
        );
    }

    /// <summary>The whole hours UTC within the band; every second one where there is no room for all.</summary>
    private IEnumerable<DateTime> Hours()
    {
        var widest = Typefaces.Measure(
            changes.Count > 0 ? "00:00+00:00  " : "00:00  ",
            composer.Palette.Plain,
            composer.TextSize
        );
        var step = (int)Math.Ceiling(widest / (X(from.AddHours(1.0)) - X(from)));
        var first = new DateTime(
            from.Ticks / TimeSpan.TicksPerHour * TimeSpan.TicksPerHour,
            DateTimeKind.Utc
        );
        for (var hour = first; hour <= to; hour = hour.AddHours(step))
        {
            if (hour >= from)
            {
                yield return hour;
            }
        }
    }

    private Lines Way(Func<DateTime, double> altitude) => Way(altitude, from, to);

    private Lines Way(Func<DateTime, double> altitude, DateTime start, DateTime end)
    {
        var points = new List<PicturePoint>();
        for (var utc = start; ; utc += Sample)
        {
            var time = Earlier(utc, end);
            points.Add(new(X(time), Y(altitude(time))));
            if (time >= end)
            {
                return Lines.Open([.. points]);
            }
        }
    }

    private Box BoxOf(DateTime start, DateTime end) =>
        new(
            Math.Max(X(start), strip.Left),
            strip.Top + (4.0 * Unit),
            Math.Min(X(end), strip.Right),
            strip.Bottom - (4.0 * Unit)
        );

    private double X(DateTime utc) => chart.Left + ((utc - from) / (to - from) * chart.Width);

    private double Y(double altitude) => chart.Bottom - (altitude / 90.0 * chart.Height);

    private string Local(DateTime utc)
    {
        var at = clock.At(SiteClock.Minute(utc));
        return at.Local.ToString("HH:mm", CultureInfo.InvariantCulture)
            + (changes.Count > 0 ? at.OffsetText : "");
    }

    private static string Utc(DateTime utc) =>
        SiteClock.Minute(utc).ToString("HH:mm", CultureInfo.InvariantCulture);

    private static DateTime Earlier(DateTime one, DateTime other) => one < other ? one : other;

    private static DateTime Later(DateTime one, DateTime other) => one > other ? one : other;
}
