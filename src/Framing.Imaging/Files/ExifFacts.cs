using System.Globalization;
using Framing.Fits;

namespace Framing.Imaging;

/// <summary>What a camera writes into the tags of its pictures.</summary>
/// <remarks>Source of the tags: Exif 2.32 (CIPA DC-008), sections 4.6.4 and 4.6.5.</remarks>
internal static class ExifFacts
{
    public const int OrientationTag = 274;
    private const int ExifDirectory = 34665;

    /// <summary>How the frame was taken, as far as the tags say.</summary>
    /// <param name="tags">The picture's first directory.</param>
    /// <param name="warnings">Takes what is there but cannot be used.</param>
    public static RigFacts Rig(TagDirectory tags, ICollection<string> warnings)
    {
        var model = tags.Text(272);
        try
        {
            var exif = tags.Child(ExifDirectory);
            return new()
            {
                Instrument = model is { Length: > 0 } ? model : null,
                Telescope = exif?.Text(42036) is { Length: > 0 } lens ? lens : null,
                ExposureSeconds = Within(exif?.Fraction(33434), 1e-6, 1e6),
                FocalLengthMillimetres = Within(exif?.Fraction(37386), 1e-3, 1e6),
                Start = Start(exif, warnings),
            };
        }
        catch (UnreadableFileException)
        {
            warnings.Add("The camera's tags (Exif) are damaged, so they are left out.");
            return RigFacts.None;
        }
    }

    private static double? Within(double? number, double least, double most) =>
        number >= least && number <= most ? number : null;

    /// <summary>The start of the exposure. Without a zone beside it the camera's clock says nothing of UTC.</summary>
    private static DateTimeOffset? Start(TagDirectory? exif, ICollection<string> warnings)
    {
        if (exif?.Text(36867) is not { Length: > 0 } clock)
        {
            return null;
        }

        if (
            exif.Text(36881) is { Length: 6 } zone
            && DateTimeOffset.TryParseExact(
                clock + zone,
                "yyyy:MM:dd HH:mm:sszzz",
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var start
            )
        )
        {
            return start.ToUniversalTime();
        }

        warnings.Add(
            $"The camera's clock said {clock} and no zone with it, so the time in UTC is not known."
        );
        return null;
    }
}
