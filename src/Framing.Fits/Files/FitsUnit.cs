namespace Framing.Fits;

/// <summary>One header-and-data unit of a FITS file.</summary>
/// <param name="Number">Which unit of the file, from 0 for the primary one.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Header">Its cards.</param>
/// <param name="DataStart">The byte of the file at which its data start.</param>
/// <param name="DataLength">Bytes of its data as the header tells, without the fill of the last block.</param>
public sealed record FitsUnit(
    int Number,
    FitsUnitKind Kind,
    FitsHeader Header,
    long DataStart,
    long DataLength
)
{
    /// <summary>The byte of the file at which its header starts.</summary>
    internal long HeaderStart { get; init; }
}
