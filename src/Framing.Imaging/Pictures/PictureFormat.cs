namespace Framing.Imaging;

/// <summary>What kind of file a picture comes from.</summary>
public enum PictureFormat
{
    /// <summary>FITS.</summary>
    Fits,

    /// <summary>PNG.</summary>
    Png,

    /// <summary>JPEG.</summary>
    Jpeg,

    /// <summary>TIFF.</summary>
    Tiff,
}
