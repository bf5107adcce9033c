using Framing.Fits;
using Framing.Imaging;
using Framing.Rehearsal.Tests.Frames;

namespace Framing.Rehearsal.Tests.StarFinding;

/// <summary>The star finder on made frames of all kinds: what it finds is there, where it says, the bright ones first.</summary>
public sealed class RenderedFramesTests
{
    /// <summary>A short run always; 200 frames up to 6 megapixels and five of 26 with FRAMING_LONG=1.</summary>
    public static TheoryData<int, double?> Frames
    {
        get
        {
            var data = new TheoryData<int, double?>();
            var isLong = Environment.GetEnvironmentVariable("FRAMING_LONG") == "1";
            for (var number = 0; number < (isLong ? 200 : 40); number++)
            {
                data.Add(number, isLong ? null : 0.35);
            }

            for (var number = 0; isLong && number < 5; number++)
            {
                data.Add(1000 + number, 26.0);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Frames))]
    public void Find_RenderedFrame_StarsWhereTheyAre(int number, double? megapixels)
    {
        var frame = Recipes.Make(Sweep.Recipe(number, megapixels));
        var picture = new Picture(
            frame.Width,
            frame.Height,
            Array.ConvertAll(frame.Samples, v => (float)v)
        )
        {
            SampleFormat = SampleFormat.UInt16,
        };

        var found = StarFinder.Find(picture, null, TestContext.Current.CancellationToken);

        var pairing = new Pairing(frame, found);
        Assert.Equal(StarVerdict.Stars, found.Verdict);

        // Nine of ten among the fifty brightest exist.
        Assert.InRange(pairing.WrongAmong(50), 0, 5);
        Assert.InRange(pairing.WrongAmong(200), 0, 20);

        // Of the stars that stand well out and alone nearly all are found.
        Assert.InRange(pairing.MissedShare, 0.0, 0.1);

        // The tail of a coma shifts the middle of a star by a little more outside than inside: no error of the finder.
        var coma = Math.Abs(frame.Recipe.Lens.ComaPx) / frame.Recipe.Camera.Binning;
        Assert.InRange(pairing.Rms, 0.0, 0.1 + (0.05 * coma));
    }
}
