using System.Runtime.CompilerServices;

namespace Framing.Solving;

/// <summary>The shapes of many quads of catalogue stars, found again by their shape.</summary>
/// <remarks>
/// <para>
/// Every star makes quads with its nearest brighter neighbours. So the quads of a depth are as large as the stars of that
/// depth are apart, every part of the sky has as many as it has stars, and a field of any size holds quads that fit into it.
/// </para>
/// <para>A shape is kept as four numbers of 16 bits; buckets are cells of the shape's space, by a hash of the cell.</para>
/// </remarks>
internal sealed class QuadIndex
{
    // The numbers of a shape lie between -0.37 and 1.37: no two stars are farther apart than the first two.
    private const double CodeOffset = 0.5;
    private const double CodeUnit = 32768.0;
    private const int CellShift = 10;

    private readonly ReferenceStars stars;
    private readonly int[] neighbours;
    private readonly int[] heads;
    private readonly ulong[] codes;
    private readonly uint[] quads;
    private readonly int hashShift;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private QuadIndex(
        ReferenceStars stars,
        QuadLevel level,
        int[] neighbours,
        ulong[] madeCodes,
        int count
    )
    {
        this.stars = stars;
        this.neighbours = neighbours;
        Level = level;
        var bits = 4;
        while (bits < 22 && 1 << (bits + 1) < count)
        {
            bits++;
        }

        hashShift = 32 - bits;
        heads = new int[(1 << bits) + 1];
        codes = new ulong[count];
        quads = new uint[count];
        foreach (var code in madeCodes)
        {
            if (code != ulong.MaxValue)
            {
                heads[Bucket(code) + 1]++;
            }
        }

        for (var i = 1; i < heads.Length; i++)
        {
            heads[i] += heads[i - 1];
        }

        var next = heads.AsSpan(0, heads.Length - 1).ToArray();
        for (var quad = 0; quad < madeCodes.Length; quad++)
        {
            var code = madeCodes[quad];
            if (code != ulong.MaxValue)
            {
                var place = next[Bucket(code)]++;
                codes[place] = code;
                quads[place] = (uint)quad;
            }
        }
    }

    /// <summary>Which quads it holds.</summary>
    public QuadLevel Level { get; }

    /// <summary>How many quads it holds.</summary>
    public int Count => codes.Length;

    public static QuadIndex Build(ReferenceStars stars, QuadLevel level)
    {
        var each = level.Triples.Length / 3;
        var own = level.To - level.From;
        var nearest = new int[own * level.Neighbours];
        var made = new ulong[own * each];
        made.AsSpan().Fill(ulong.MaxValue);
        const int Part = 4096;
        var counts = new int[(own + Part - 1) / Part];
        Parallel.For(
            0,
            counts.Length,
            part =>
            {
                var maker = new QuadMaker(stars, level);
                var end = Math.Min(own, (part + 1) * Part);
                for (var i = part * Part; i < end; i++)
                {
                    counts[part] += maker.Make(
                        level.From + i,
                        nearest.AsSpan(i * level.Neighbours, level.Neighbours),
                        made.AsSpan(i * each, each)
                    );
                }
            }
        );
        return new(stars, level, nearest, made, counts.Sum());
    }

    /// <summary>A shape in 64 bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ulong Pack(in QuadCode code) =>
        Quantised(code.Cx)
        | (Quantised(code.Cy) << 16)
        | (Quantised(code.Dx) << 32)
        | (Quantised(code.Dy) << 48);

    /// <summary>Adds the quads whose four numbers all lie within a tolerance.</summary>
    /// <param name="code">The shape.</param>
    /// <param name="tolerance">How far each number may be off.</param>
    /// <param name="found">Where to put the numbers of the quads.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Find(in QuadCode code, double tolerance, List<uint> found)
    {
        int reach = (int)(tolerance * CodeUnit);
        int cx = (int)Quantised(code.Cx),
            cy = (int)Quantised(code.Cy),
            dx = (int)Quantised(code.Dx),
            dy = (int)Quantised(code.Dy);
        for (var i = Low(cx, reach); i <= High(cx, reach); i++)
        {
            for (var j = Low(cy, reach); j <= High(cy, reach); j++)
            {
                for (var k = Low(dx, reach); k <= High(dx, reach); k++)
                {
                    for (var l = Low(dy, reach); l <= High(dy, reach); l++)
                    {
                        var bucket = Bucket(i, j, k, l);
                        for (var place = heads[bucket]; place < heads[bucket + 1]; place++)
                        {
                            var other = codes[place];
                            if (
                                Near((int)(other & 0xFFFF), cx, reach)
                                && Near((int)((other >> 16) & 0xFFFF), cy, reach)
                                && Near((int)((other >> 32) & 0xFFFF), dx, reach)
                                && Near((int)(other >> 48), dy, reach)
                                && (int)(other & 0xFFFF) >> CellShift == i
                                && (int)((other >> 16) & 0xFFFF) >> CellShift == j
                                && (int)((other >> 32) & 0xFFFF) >> CellShift == k
                                && (int)(other >> 48) >> CellShift == l
                            )
                            {
                                found.Add(quads[place]);
                            }
                        }
                    }
                }
            }
        }
    }

    /// <summary>The four stars of a quad in the order of its shape: the two farthest apart, then the two others.</summary>
    public void Stars(uint quad, Span<int> into)
    {
        var each = Level.Triples.Length / 3;
        var own = (int)(quad / (uint)each);
        var triple = (int)(quad % (uint)each);
        Span<int> four =
        [
            Level.From + own,
            Neighbour(own, Level.Triples[3 * triple]),
            Neighbour(own, Level.Triples[(3 * triple) + 1]),
            Neighbour(own, Level.Triples[(3 * triple) + 2]),
        ];
        Span<double> x = stackalloc double[4];
        Span<double> y = stackalloc double[4];
        var frame = new StarFrame(stars, four[0]);
        for (var i = 1; i < 4; i++)
        {
            (x[i], y[i]) = frame.Project(stars.Vectors[four[i]]);
        }

        var code = QuadCode.Of(x, y);
        into[0] = four[code.A];
        into[1] = four[code.B];
        into[2] = four[code.C];
        into[3] = four[code.D];
    }

    private int Neighbour(int own, int number) => neighbours[(own * Level.Neighbours) + number];

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong Quantised(double number) =>
        (ulong)Math.Clamp((int)((number + CodeOffset) * CodeUnit), 0, 65534);

    private static int Low(int number, int reach) => Math.Max(0, number - reach) >> CellShift;

    private static int High(int number, int reach) => Math.Min(65535, number + reach) >> CellShift;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool Near(int number, int other, int reach) =>
        (uint)(number - other + reach) <= (uint)(2 * reach);

    private int Bucket(ulong code) =>
        Bucket(
            (int)(code & 0xFFFF) >> CellShift,
            (int)((code >> 16) & 0xFFFF) >> CellShift,
            (int)((code >> 32) & 0xFFFF) >> CellShift,
            (int)(code >> 48) >> CellShift
        );

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int Bucket(int i, int j, int k, int l) =>
        (int)(unchecked((uint)(i | (j << 6) | (k << 12) | (l << 18)) * 2654435769u) >> hashShift);
}
