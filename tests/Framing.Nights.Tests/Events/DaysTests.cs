using System.Globalization;
using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>
/// Ten thousand random places, times and directions against ERFA 2.0.0; see tests/reference/nights/make_days.py.
/// </summary>
public sealed class DaysTests
{
    private const double StarTolerance = 0.002;
    private const double MoonTolerance = 0.01;
    private const double SunTolerance = 0.012;

    private static readonly Angle Limb = Angle.FromArcminutes(-34.0);

    private static readonly Lazy<IReadOnlyList<TestTable>> Rows = new(() =>
        TestTable.Read("days.csv.gz")
    );

    private static readonly (string Name, double Limit)[] Twilights =
    [
        ("set", -0.833),
        ("civil", -6.0),
        ("nautical", -12.0),
        ("astronomical", -18.0),
    ];

    [Fact]
    public void See_AnyDirection_IsWithinTwoArcsecondsOfErfa()
    {
        Assert.Equal(10_000, Rows.Value.Count);
        Parallel.ForEach(
            Rows.Value,
            row =>
            {
                var place = SiteMoment.Of(row.Site, row.Utc).See(Place(row));
                Assert.Equal(0.0, 3600.0 * (place.TrueAltitude.Degrees - row["altitude_deg"]), 2.0);
                var azimuth = Angle.FromDegrees(row["azimuth_deg"]) - place.Azimuth;
                Assert.Equal(
                    0.0,
                    azimuth.WrappedSigned.Arcseconds * Math.Cos(place.TrueAltitude.Radians),
                    2.0
                );
            }
        );
    }

    [Fact]
    public void Events_OfADay_AreThoseOfErfa()
    {
        var events = 0;
        Parallel.ForEach(
            Rows.Value,
            row =>
            {
                var (start, end) = (row.Utc, row.Utc.AddDays(1.0));
                var hours = RiseAndSet.Hours(row.Site, start, end);
                var path = hours.Follow(Place(row));
                var found = Check(
                    row,
                    "star",
                    RiseAndSet.StarAbove(path, Limb, start, end),
                    utc => (path.TrueAltitude(utc) - Limb).Degrees,
                    StarTolerance
                );
                found += Check(
                    row,
                    "moon",
                    RiseAndSet.MoonUp(hours, start, end),
                    utc => RiseAndSet.MoonOverHorizon(hours, utc),
                    MoonTolerance
                );
                foreach (var (name, limit) in Twilights)
                {
                    found += Check(
                        row,
                        name,
                        Turned(
                            RiseAndSet.SunBelow(hours, Angle.FromDegrees(limit), start, end),
                            row
                        ),
                        utc => hours.SunAltitude(utc).Degrees - limit,
                        SunTolerance
                    );
                }

                Interlocked.Add(ref events, found);
            }
        );

        // What make_days.py printed.
        Assert.InRange(events, 109_597 - 30, 109_597);
    }

    /// <summary>Above for below.</summary>
    private static List<UtcInterval> Turned(IReadOnlyList<UtcInterval> below, TestTable row)
    {
        var above = new List<UtcInterval>();
        var (from, held) = (row.Utc, true);
        foreach (var stretch in below)
        {
            if (!stretch.HeldBefore)
            {
                above.Add(new(from, stretch.Start, held, HoldsAfter: false));
            }

            (from, held) = (stretch.End, false);
        }

        if (below.Count == 0 || !below[^1].HoldsAfter)
        {
            above.Add(new(from, row.Utc.AddDays(1.0), held, HoldsAfter: true));
        }

        return above;
    }

    private static int Check(
        TestTable row,
        string column,
        IReadOnlyList<UtcInterval> above,
        Func<DateTime, double> height,
        double tolerance
    )
    {
        var judged = Judged(row.Text(column));
        var compared = 0;
        var alone = new List<DateTime>();
        foreach (var (time, rising) in Edges(above))
        {
            var seconds = (time - row.Utc).TotalSeconds;
            var near = judged
                .Where(judge => judge.Rising == rising)
                .OrderBy(judge => Math.Abs(judge.Seconds - seconds))
                .FirstOrDefault();
            if (near is null || near.HeightAt(seconds) is not { } apart)
            {
                alone.Add(time);
                continue;
            }

            // ERFA's height over the threshold at the time found here.
            Assert.True(
                Math.Abs(apart) <= tolerance,
                FormattableString.Invariant(
                    $"{row.Text("utc")} {column}: ERFA {near.Seconds} s, here {seconds} s, off by {apart}°."
                )
            );
            judged.Remove(near);
            compared++;
        }

        // What one side alone finds only touches the threshold, or lies at the very edge of the day.
        foreach (var missed in judged)
        {
            Assert.True(
                missed.Depth <= tolerance || missed.AtEdge(tolerance),
                FormattableString.Invariant(
                    $"{row.Text("utc")} {column}: missed at {missed.Seconds} s."
                )
            );
        }

        foreach (var time in alone)
        {
            var middle = alone.Count == 2 ? alone[0] + ((alone[1] - alone[0]) / 2.0) : time;
            Assert.InRange(Math.Abs(height(middle)), 0.0, tolerance);
            Assert.True(
                alone.Count == 2
                    || Math.Abs(height(row.Utc)) <= tolerance
                    || Math.Abs(height(row.Utc.AddDays(1.0))) <= tolerance,
                FormattableString.Invariant($"{row.Text("utc")} {column}: invented at {time:o}.")
            );
        }

        return compared;
    }

    private static IEnumerable<(DateTime Time, bool Rising)> Edges(IReadOnlyList<UtcInterval> above)
    {
        foreach (var stretch in above)
        {
            if (!stretch.HeldBefore)
            {
                yield return (stretch.Start, true);
            }

            if (!stretch.HoldsAfter)
            {
                yield return (stretch.End, false);
            }
        }
    }

    private static List<JudgedEvent> Judged(string text) =>
        text == "none"
            ? []
            :
            [
                .. text.Split(' ')
                    .Select(word => word.Split(':'))
                    .Select(parts => new JudgedEvent(
                        Number(parts[0]),
                        Number(parts[1]),
                        Number(parts[2])
                    )),
            ];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static SkyDirection Place(TestTable row) =>
        SkyDirection.FromDegrees(row["ra_deg"], row["dec_deg"]);

    /// <summary>An event as ERFA has it: the height over the threshold m minutes from it is Rate·m + Bend·m².</summary>
    private sealed record JudgedEvent(double Seconds, double Rate, double Bend)
    {
        public bool Rising => Rate > 0.0;

        /// <summary>How far the height goes beyond the threshold before it turns back.</summary>
        public double Depth => Rate * Rate / (4.0 * Math.Max(1e-12, Math.Abs(Bend)));

        /// <summary>ERFA's height at a time; null where it is not the same event: half an hour apart.</summary>
        public double? HeightAt(double seconds)
        {
            var minutes = (seconds - Seconds) / 60.0;
            return Math.Abs(minutes) < 30.0 ? (Rate + (Bend * minutes)) * minutes : null;
        }

        public bool AtEdge(double tolerance) =>
            Math.Min(Seconds, 86400.0 - Seconds) / 60.0 * Math.Abs(Rate) <= tolerance;
    }
}
