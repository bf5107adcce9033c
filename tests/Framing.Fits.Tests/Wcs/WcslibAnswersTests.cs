using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using Framing.Sky;

namespace Framing.Fits.Tests;

/// <summary>
/// 100,000 random points each way through 500 random headers of every projection that is read, both parities, swapped axes,
/// SIP and TPV, against wcslib 7.12 (tests/reference/wcs/make_wcslib.py).
/// </summary>
public sealed partial class WcslibAnswersTests
{
    private const double Tolerance = 1e-6;

    private static readonly byte[] Answers = Unpacked();

    [Fact]
    public void File_Counted_HoldsEveryKind()
    {
        var headers = Headers().Select(entry => entry.Cards).ToList();

        Assert.Equal(500, headers.Count);
        Assert.Equal(
            "AIT ARC CAR CEA MER SIN STG TAN TPV ZEA",
            string.Join(
                " ",
                headers
                    .Select(cards => WorldCoordinatesReader.Read(Header(cards)).Projection)
                    .Distinct(StringComparer.Ordinal)
                    .Order(StringComparer.Ordinal)
            )
        );
        foreach (var card in new[] { "-SIP'", "PC1_1", "CROTA", "CD1_1", "LONPOLE", "LATPOLE" })
        {
            Assert.InRange(
                headers.Count(cards => cards.Contains(card, StringComparison.Ordinal)),
                90,
                300
            );
        }

        Assert.InRange(
            headers.Count(cards => cards.StartsWith("CTYPE1  = 'DEC", StringComparison.Ordinal)),
            90,
            160
        );
        var worlds = headers.ConvertAll(cards =>
            WorldCoordinatesReader.Read(Header(cards)).AsWritten!
        );
        foreach (var kind in worlds.GroupBy(world => (world.Projection, world.Matrix.IsMirrored)))
        {
            Assert.True(kind.Count() >= 10, $"{kind.Key}: {kind.Count()}");
        }

        Assert.Equal(
            18,
            worlds.Select(world => (world.Projection, world.Matrix.IsMirrored)).Distinct().Count()
        );
    }

    [Fact]
    public void PixelToSky_OneHundredThousandPoints_AgreesWithWcslib()
    {
        var (points, failed, worst) = (0, 0, 0.0);
        foreach (var (cards, there, _) in Headers())
        {
            var world = WorldCoordinatesReader.Read(Header(cards)).AsWritten!;
            var x = Array.ConvertAll(there, point => point.X);
            var y = Array.ConvertAll(there, point => point.Y);
            var (ra, dec) = (new double[x.Length], new double[x.Length]);
            var failures = new MapFailure[x.Length];
            var count = world.PixelToSky(x, y, ra, dec, failures);
            Assert.Equal(failures.Count(failure => failure != MapFailure.None), count);
            failed += count;
            for (var i = 0; i < there.Length; i++)
            {
                points++;
                var pixel = new PixelPosition(x[i], y[i]);
                var single = world.PixelToSky(pixel, out var direction);
                Assert.Equal(single, failures[i]);
                Assert.True(
                    double.IsNaN(there[i].RightAscension) == (single != MapFailure.None),
                    $"{pixel} {single} {there[i]}\n{cards}"
                );
                if (single != MapFailure.None)
                {
                    Assert.True(double.IsNaN(ra[i]) && double.IsNaN(dec[i]));
                    continue;
                }

                var expected = SkyDirection.FromDegrees(
                    there[i].RightAscension,
                    there[i].Declination
                );
                var off = direction.SeparationTo(expected).Arcseconds;
                var batch = SkyDirection
                    .FromDegrees(ra[i], dec[i])
                    .SeparationTo(expected)
                    .Arcseconds;
                off = Math.Max(off, batch) / Condition(world, pixel, toSky: true);
                worst = Math.Max(worst, off);
                Assert.True(
                    off < Tolerance,
                    FormattableString.Invariant($"{off} arcsec at {pixel}\n{cards}")
                );
            }
        }

        Assert.Equal((100_000, 12_820), (points, failed));
        TestContext.Current.SendDiagnosticMessage(
            FormattableString.Invariant($"pixel to sky, worst: {worst:g3} arcsec")
        );
    }

    [Fact]
    public void SkyToPixel_OneHundredThousandPoints_AgreesWithWcslib()
    {
        var (points, failed, worst) = (0, 0, 0.0);
        foreach (var (cards, _, back) in Headers())
        {
            var world = WorldCoordinatesReader.Read(Header(cards)).AsWritten!;
            var ra = Array.ConvertAll(back, point => point.RightAscension);
            var dec = Array.ConvertAll(back, point => point.Declination);
            var (x, y) = (new double[ra.Length], new double[ra.Length]);
            var failures = new MapFailure[x.Length];
            failed += world.SkyToPixel(ra, dec, x, y, failures);
            for (var i = 0; i < back.Length; i++)
            {
                points++;
                var single = world.SkyToPixel(
                    SkyDirection.FromDegrees(ra[i], dec[i]),
                    out var pixel
                );
                Assert.Equal(single, failures[i]);
                Assert.True(
                    double.IsNaN(back[i].X) == (single != MapFailure.None),
                    $"{single} {back[i]}\n{cards}"
                );
                if (single != MapFailure.None)
                {
                    Assert.True(double.IsNaN(x[i]) && double.IsNaN(y[i]));
                    continue;
                }

                var off = Math.Max(
                    double.Hypot(pixel.X - back[i].X, pixel.Y - back[i].Y),
                    double.Hypot(x[i] - back[i].X, y[i] - back[i].Y)
                );
                off /= Condition(world, pixel, toSky: false);
                worst = Math.Max(worst, off);
                Assert.True(
                    off < Tolerance,
                    FormattableString.Invariant($"{off} px: {pixel} {back[i]}\n{cards}")
                );
            }
        }

        Assert.Equal((100_000, 17_247), (points, failed));
        TestContext.Current.SendDiagnosticMessage(
            FormattableString.Invariant($"sky to pixel, worst: {worst:g3} px")
        );
    }

    /// <summary>
    /// The order of the axes is only a name: with declination first the same lens draws the same sky. (wcslib 7.12 itself
    /// takes the terms of a swapped TPV with the roles of the own and the other coordinate exchanged, so that it is asked
    /// about the plain order.)
    /// </summary>
    [Fact]
    public void Tpv_WithDeclinationFirst_AgreesWithWcslib()
    {
        var (points, worstThere, worstBack) = (0, 0.0, 0.0);
        foreach (var (cards, there, back) in Headers().Where(entry => IsTpv(entry.Cards)))
        {
            var world = WorldCoordinatesReader.Read(Header(Swapped(cards))).AsWritten!;
            Assert.NotNull(Assert.IsType<ProjectedWorldCoordinates>(world).Tpv);
            var ra = new double[there.Length];
            var dec = new double[there.Length];
            var failures = new MapFailure[there.Length];
            world.PixelToSky(
                Array.ConvertAll(there, point => point.X),
                Array.ConvertAll(there, point => point.Y),
                ra,
                dec,
                failures
            );
            for (var i = 0; i < there.Length; i++, points++)
            {
                Assert.Equal(MapFailure.None, failures[i]);
                var off = SkyDirection
                    .FromDegrees(ra[i], dec[i])
                    .SeparationTo(
                        SkyDirection.FromDegrees(there[i].RightAscension, there[i].Declination)
                    );
                var condition = Condition(world, new(there[i].X, there[i].Y), toSky: true);
                worstThere = Math.Max(worstThere, off.Arcseconds / condition);
            }

            var (x, y) = (new double[back.Length], new double[back.Length]);
            failures = new MapFailure[back.Length];
            world.SkyToPixel(
                Array.ConvertAll(back, point => point.RightAscension),
                Array.ConvertAll(back, point => point.Declination),
                x,
                y,
                failures
            );
            for (var i = 0; i < back.Length; i++, points++)
            {
                Assert.Equal(double.IsNaN(back[i].X), failures[i] != MapFailure.None);
                if (failures[i] == MapFailure.None)
                {
                    var off = double.Hypot(x[i] - back[i].X, y[i] - back[i].Y);
                    worstBack = Math.Max(
                        worstBack,
                        off / Condition(world, new(x[i], y[i]), toSky: false)
                    );
                }
            }
        }

        Assert.InRange(points, 26_000, 27_000);
        Assert.InRange(worstThere, 0.0, Tolerance);
        Assert.InRange(worstBack, 0.0, Tolerance);
    }

    /// <summary>
    /// The local condition number: by how much a small error grows at a place, against the place of the reference; at
    /// least 1.
    /// </summary>
    private static double Condition(WorldCoordinates world, PixelPosition pixel, bool toSky)
    {
        if (!world.TryMatrixAt(pixel, out var there))
        {
            return 1.0;
        }

        var (largest, smallest) = Stretches(there);
        var (most, least) = Stretches(world.Matrix);
        return Math.Max(1.0, toSky ? largest / most : least / smallest);
    }

    /// <summary>The largest and smallest stretch of a matrix (its singular values).</summary>
    private static (double Largest, double Smallest) Stretches(PixelMatrix m)
    {
        var sum = double.Hypot(m.Cd11 + m.Cd22, m.Cd21 - m.Cd12);
        var difference = double.Hypot(m.Cd11 - m.Cd22, m.Cd21 + m.Cd12);
        var largest = (sum + difference) / 2.0;
        return (largest, Math.Abs(m.Determinant) / largest);
    }

    private static bool IsTpv(string cards) => cards.Contains("-TPV'", StringComparison.Ordinal);

    /// <summary>The cards with the two axes of the sky in the other order; the pixels stay.</summary>
    private static string Swapped(string cards) =>
        SkyAxis()
            .Replace(
                cards,
                match =>
                    match.Groups["card"].Value + (match.Groups["axis"].Value == "1" ? "2" : "1")
            );

    [GeneratedRegex(
        "^(?<card>CTYPE|CRVAL|CUNIT|CD(?=[12]_)|PV(?=[12]_))(?<axis>[12])",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex SkyAxis();

    private static FitsHeader Header(string cards) => HeaderReader.ReadLines("cards", cards);

    private static IEnumerable<(string Cards, Answer[] There, Answer[] Back)> Headers()
    {
        for (var at = 0; at < Answers.Length; )
        {
            var length = BinaryPrimitives.ReadUInt16LittleEndian(Answers.AsSpan(at));
            var cards = Encoding.ASCII.GetString(Answers, at + 2, length);
            at += 2 + length;
            var there = new Answer[BinaryPrimitives.ReadUInt16LittleEndian(Answers.AsSpan(at))];
            at += 2;
            for (var i = 0; i < there.Length; i++, at += 20)
            {
                there[i] = There(Answers.AsSpan(at, 20));
            }

            var back = new Answer[BinaryPrimitives.ReadUInt16LittleEndian(Answers.AsSpan(at))];
            at += 2;
            for (var i = 0; i < back.Length; i++, at += 24)
            {
                back[i] = Back(Answers.AsSpan(at, 24));
            }

            yield return (cards, there, back);
        }
    }

    private static Answer There(ReadOnlySpan<byte> bytes)
    {
        var (ra, dec) = (Six(bytes[8..]), Six(bytes[14..]));
        var failed = ra == (1L << 48) - 1 && dec == (1L << 48) - 1;
        return new(
            BinaryPrimitives.ReadInt32LittleEndian(bytes) / 1024.0,
            BinaryPrimitives.ReadInt32LittleEndian(bytes[4..]) / 1024.0,
            failed ? double.NaN : ra * (360.0 / (1L << 48)),
            failed ? double.NaN : (dec * (180.0 / (1L << 47))) - 90.0
        );
    }

    private static Answer Back(ReadOnlySpan<byte> bytes) =>
        new(
            BinaryPrimitives.ReadDoubleLittleEndian(bytes[8..]),
            BinaryPrimitives.ReadDoubleLittleEndian(bytes[16..]),
            BinaryPrimitives.ReadUInt32LittleEndian(bytes) * (360.0 / (1L << 32)),
            (BinaryPrimitives.ReadUInt32LittleEndian(bytes[4..]) * (180.0 / (1L << 31))) - 90.0
        );

    private static long Six(ReadOnlySpan<byte> bytes) =>
        BinaryPrimitives.ReadUInt32LittleEndian(bytes)
        | ((long)BinaryPrimitives.ReadUInt16LittleEndian(bytes[4..]) << 32);

    private static byte[] Unpacked()
    {
        using var file = File.OpenRead(TestData.Path("wcs", "wcslib.bin.gz"));
        using var unpacking = new GZipStream(file, CompressionMode.Decompress);
        using var bytes = new MemoryStream();
        unpacking.CopyTo(bytes);
        return bytes.ToArray();
    }

    private readonly record struct Answer(
        double X,
        double Y,
        double RightAscension,
        double Declination
    );
}
