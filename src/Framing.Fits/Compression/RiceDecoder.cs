namespace Framing.Fits;

/// <summary>Unpacks whole numbers that are packed with the Rice algorithm.</summary>
/// <remarks>Source: FITS Standard 4.0, section 10.4.1 (RICE_1).</remarks>
internal static class RiceDecoder
{
    /// <summary>The most samples that so many bytes can hold: a block of equal samples takes one code of 3, 4 or 5 bits.</summary>
    public static long MostSamples(long bytes, int bytesPerSample, int block) =>
        (1 + (bytes * 8 / CodeBits(bytesPerSample))) * block;

    /// <summary>Unpacks samples.</summary>
    /// <param name="packed">The packed bytes.</param>
    /// <param name="bytesPerSample">1, 2 or 4: what the packer was given.</param>
    /// <param name="block">Samples a block.</param>
    /// <param name="samples">Takes the samples, as numbers of that many bytes; bytes are unsigned.</param>
    /// <returns>False when the bytes end early or are no such code.</returns>
    public static bool TryDecode(
        ReadOnlySpan<byte> packed,
        int bytesPerSample,
        int block,
        Span<int> samples
    )
    {
        var codeBits = CodeBits(bytesPerSample);
        var codeMost = (1 << codeBits) - (bytesPerSample == 4 ? 7 : 2);
        var wholeBits = 8 * bytesPerSample;
        var bits = new BitReader(packed);
        if (!bits.TryRead(wholeBits, out var first))
        {
            return false;
        }

        var last = first;
        for (var at = 0; at < samples.Length; at += block)
        {
            var part = samples.Slice(at, Math.Min(block, samples.Length - at));
            if (!bits.TryRead(codeBits, out var code))
            {
                return false;
            }

            if (code == 0)
            {
                part.Fill(Sample(last, bytesPerSample));
                continue;
            }

            var lowBits = (int)code - 1;
            var isPlain = lowBits == codeMost;
            if (lowBits > codeMost)
            {
                return false;
            }

            foreach (ref var sample in part)
            {
                uint high = 0;
                if (
                    (!isPlain && !bits.TryReadZeros(out high))
                    || !bits.TryRead(isPlain ? wholeBits : lowBits, out var low)
                )
                {
                    return false;
                }

                var difference = isPlain ? low : (high << lowBits) | low;
                // Folded: 0, -1, 1, -2, ... are 0, 1, 2, 3, ...
                last += (difference & 1) == 0 ? difference >> 1 : ~(difference >> 1);
                sample = Sample(last, bytesPerSample);
            }
        }

        return true;
    }

    private static int CodeBits(int bytesPerSample) =>
        bytesPerSample switch
        {
            1 => 3,
            2 => 4,
            _ => 5,
        };

    private static int Sample(uint value, int bytesPerSample) =>
        bytesPerSample switch
        {
            1 => (byte)value,
            2 => (short)value,
            _ => (int)value,
        };

    private ref struct BitReader(ReadOnlySpan<byte> bytes)
    {
        private readonly ReadOnlySpan<byte> bytes = bytes;
        private int next;
        private ulong held;
        private int count;

        /// <summary>Reads up to 32 bits, the highest first.</summary>
        public bool TryRead(int wanted, out uint value)
        {
            while (count < wanted)
            {
                if (next >= bytes.Length)
                {
                    value = 0;
                    return false;
                }

                held = (held << 8) | bytes[next++];
                count += 8;
            }

            count -= wanted;
            value = (uint)((held >> count) & ((1UL << wanted) - 1));
            return true;
        }

        /// <summary>Counts zeros up to the next one, and takes that one away.</summary>
        public bool TryReadZeros(out uint zeros)
        {
            zeros = 0;
            while (true)
            {
                var rest = held & ((1UL << count) - 1);
                if (rest != 0)
                {
                    var leading =
                        System.Numerics.BitOperations.LeadingZeroCount(rest) - (64 - count);
                    zeros += (uint)leading;
                    count -= leading + 1;
                    return true;
                }

                zeros += (uint)count;
                if (next >= bytes.Length)
                {
                    return false;
                }

                held = bytes[next++];
                count = 8;
            }
        }
    }
}
