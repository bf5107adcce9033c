namespace Framing.DemoFrames;

/// <summary>Seeded noise of light: normally distributed, as wide as the root of what is counted.</summary>
internal sealed class Noise(ulong seed)
{
    private ulong state = seed;

    /// <summary>A level with the noise of its electrons and of reading them out.</summary>
    /// <param name="level">In numbers of the file.</param>
    /// <param name="perElectron">Numbers of the file that one electron makes.</param>
    /// <param name="readout">Standard deviation of reading out, in numbers of the file.</param>
    public double Of(double level, double perElectron, double readout) =>
        level + (Normal() * Math.Sqrt((Math.Max(level, 0.0) * perElectron) + (readout * readout)));

    private double Normal() =>
        Math.Sqrt(-2.0 * Math.Log(1.0 - Uniform())) * Math.Cos(2.0 * Math.PI * Uniform());

    private double Uniform()
    {
        state += 0x9E3779B97F4A7C15UL;
        var z = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        z ^= z >> 31;
        return (z >> 11) * (1.0 / 9007199254740992.0);
    }
}
