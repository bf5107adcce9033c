namespace Framing.TestPlugins;

[Strategy("throws-before-made", "Throws while its class is set up")]
public sealed class ThrowsBeforeMade : IOverlapStrategy
{
    private static readonly double Part = double.Parse(
        "a third",
        System.Globalization.CultureInfo.InvariantCulture
    );

    public OverlapAnswer Choose(OverlapQuestion question) =>
        OverlapAnswer.Share(new(Part, Part), "a third");
}
