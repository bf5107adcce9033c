using System.Buffers.Binary;
using System.Text;

namespace Framing.Benchmarks;

/// <summary>A made frame of 26 million pixels: sky with a gradient, three soft clouds, noise and 4,000 stars; the same on every machine.</summary>
internal static class LightFrame
{
    public const int Width = 6248;
    public const int Height = 4176;
    private const ulong Seed = 1;
    private const int Stars = 4000;

    /// <summary>The samples, row after row: 16 bits without a sign.</summary>
    public static ushort[] Samples()
    {
        var image = new double[Width * Height];
        Parallel.For(0, Height, row => Background(image, row));
        for (var i = 0UL; i < Stars; i++)
        {
            AddStar(
                image,
                SplitMix.Uniform(Seed + 2000, i) * Width,
                SplitMix.Uniform(Seed + 2001, i) * Height,
                300.0 / (0.005 + SplitMix.Uniform(Seed + 2002, i))
            );
        }

        return Array.ConvertAll(
            image,
            value => (ushort)Math.Clamp(Math.Floor(value + 0.5), 0.0, 65535.0)
        );
    }

    /// <summary>Writes a frame with its cards, as 16-bit FITS.</summary>
    public static void Write(string path, ushort[] samples, IReadOnlyList<string> cards)
    {
        var bytes = new byte[(samples.Length * 2) + (2879 - (((samples.Length * 2) - 1) % 2880))];
        for (var i = 0; i < samples.Length; i++)
        {
            BinaryPrimitives.WriteInt16BigEndian(bytes.AsSpan(2 * i), (short)(samples[i] - 32768));
        }

        string[] shape =
        [
            "SIMPLE  =                    T",
            "BITPIX  =                   16",
            "NAXIS   =                    2",
            FormattableString.Invariant($"NAXIS1  = {Width}"),
            FormattableString.Invariant($"NAXIS2  = {Height}"),
            "BZERO   =                32768",
            "BSCALE  =                    1",
        ];
        using var file = File.Create(path);
        file.Write(Header([.. shape, .. cards]));
        file.Write(bytes);
    }

    /// <summary>The bytes of a header.</summary>
    public static byte[] Header(IReadOnlyList<string> cards)
    {
        var text = string.Concat(cards.Append("END").Select(card => card.PadRight(80)));
        return Encoding.ASCII.GetBytes(text.PadRight((text.Length + 2879) / 2880 * 2880));
    }

    private static void Background(double[] image, int y)
    {
        (double X, double Y, double Size, double Light)[] clouds =
        [
            (2900, 2100, 900, 2500),
            (3700, 1500, 500, 1500),
            (2200, 2700, 600, 1200),
        ];
        for (var x = 0; x < Width; x++)
        {
            var at = (y * Width) + x;
            var value = 1400.0 + (0.02 * x) + (0.03 * y);
            foreach (var cloud in clouds)
            {
                var (dx, dy) = (x - cloud.X, y - cloud.Y);
                var near = 1.0 + (((dx * dx) + (dy * dy)) / (cloud.Size * cloud.Size));
                value += cloud.Light / (near * near);
            }

            // The sum of four even draws: nearly normal, 60 units wide.
            var draw = SplitMix.At(Seed + 1000, (ulong)at);
            var four =
                (draw & 0xFFFF) + ((draw >> 16) & 0xFFFF) + ((draw >> 32) & 0xFFFF) + (draw >> 48);
            image[at] = value + ((four - 131070.0) * (60.0 / 37837.0));
        }
    }

    private static void AddStar(double[] image, double x, double y, double light)
    {
        const int reach = 14;
        for (
            var row = Math.Max((int)y - reach, 0);
            row < Math.Min((int)y + reach + 1, Height);
            row++
        )
        {
            for (
                var column = Math.Max((int)x - reach, 0);
                column < Math.Min((int)x + reach + 1, Width);
                column++
            )
            {
                var (dx, dy) = (column - x, row - y);
                var near = 1.0 + (((dx * dx) + (dy * dy)) / 2.6);
                image[(row * Width) + column] += light / Math.Pow(near, 3.0);
            }
        }
    }
}
