namespace Framing.Imaging;

/// <summary>Takes a decoded row.</summary>
/// <param name="row">From 0 at the stored top.</param>
/// <param name="samples">A byte a plane and pixel, colours side by side.</param>
internal delegate void JpegRowTaker(int row, ReadOnlySpan<byte> samples);

/// <summary>Decodes the first rows of a JPEG.</summary>
/// <param name="name">The file as the caller named it.</param>
/// <param name="jpeg">The file.</param>
/// <param name="layout">What it says of itself.</param>
/// <param name="rows">Rows wanted.</param>
/// <param name="take">Takes each row.</param>
/// <exception cref="Fits.UnreadableFileException">Not so many rows can be had.</exception>
internal delegate void JpegRows(
    string name,
    Stream jpeg,
    JpegLayout layout,
    int rows,
    JpegRowTaker take
);
