namespace Framing.Fits;

/// <summary>What one header-and-data unit of a FITS file holds.</summary>
public enum FitsUnitKind
{
    /// <summary>No data: a header alone.</summary>
    HeaderOnly,

    /// <summary>An array of samples.</summary>
    Image,

    /// <summary>An image kept in the tiles of a binary table.</summary>
    CompressedImage,

    /// <summary>A binary table.</summary>
    BinaryTable,

    /// <summary>A table of text.</summary>
    TextTable,

    /// <summary>Random groups, or an extension of another kind.</summary>
    Other,
}
