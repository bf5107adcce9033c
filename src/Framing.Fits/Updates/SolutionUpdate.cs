using System.IO.Compression;

namespace Framing.Fits;

/// <summary>Writes a solution into the header of a FITS file that is there, and leaves everything else of it as it is.</summary>
/// <remarks>
/// <para>
/// The cards of the solution that stood there before (CTYPE, CRPIX, CRVAL, CD, PC, CDELT, CROTA, CUNIT, PV and PS of the
/// first two axes, SIP terms, LONPOLE, LATPOLE, RADESYS, EQUINOX, EPOCH, WCSAXES, WCSNAME) go, the new ones stand in their
/// place. All other cards and all samples, tables and further units stay bit for bit what they were. A CHECKSUM that was
/// right is made right again; one that was wrong is left alone.
/// </para>
/// <para>
/// The new file is written beside the old one, read again and held against it, and only then takes its name. Whatever goes
/// wrong on the way, the old file is untouched. A file packed with gzip is packed again.
/// </para>
/// </remarks>
public static class SolutionUpdate
{
    private const int BufferBytes = 1 << 20;

    /// <summary>Writes a solution into the header of a file's picture.</summary>
    /// <param name="path">The FITS file; a link is followed.</param>
    /// <param name="solution">
    /// The cards of the solution for pixels as FITS counts, as <see cref="WorldCoordinatesWriter.AddSolution(FitsHeaderBuilder, Framing.Sky.WorldCoordinates)"/> makes them;
    /// comments may be among them.
    /// </param>
    /// <returns>What changed.</returns>
    /// <exception cref="ArgumentException">A card is no part of a solution: it could change what the samples mean.</exception>
    /// <exception cref="UnreadableFileException">The file is no sound FITS file with a picture, or its colours come first.</exception>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written; so is a file that is marked as read-only.</exception>
    public static HeaderChange Write(string path, FitsHeaderBuilder solution)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(solution);
        CheckCards(solution);
        using var file = FitsFile.Open(path);
        var unit = UnitOf(file);
        var isTable = unit.Kind == FitsUnitKind.CompressedImage;
        var updated = UpdatedHeader.Of(unit.Header, solution, isTable);
        var place = new FileInfo(path).ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? path;
        if (File.GetAttributes(place).HasFlag(FileAttributes.ReadOnly))
        {
            throw new UnauthorizedAccessException($"{path} is marked as read-only.");
        }

        var checksum = unit.Header.Find("CHECKSUM") is { } card && UnitChecksum.Stands(card);
        var dataEnd = Math.Min(
            unit.DataStart + FitsFile.Blocks(unit.DataLength),
            file.Source.Length
        );
        if (checksum && UnitChecksum.IsRight(Sum(file.Source, unit.HeaderStart, dataEnd)))
        {
            updated.SetChecksum(null);
            var header = UnitChecksum.Add(0, UnitChecksum.Header(updated.Images));
            var data = Sum(file.Source, unit.DataStart, dataEnd);
            updated.SetChecksum(UnitChecksum.Encode(UnitChecksum.Add(header, data)));
        }

        WholeFile.Write(
            place,
            stream => Copy(file.Source, unit, UnitChecksum.Header(updated.Images), stream),
            written => Verify(path, file.Source, unit, updated, written)
        );
        return updated.Change;
    }

    private static void CheckCards(FitsHeaderBuilder solution)
    {
        foreach (var card in solution.ToHeader().Cards)
        {
            if (
                card.Keyword is not ("COMMENT" or "HISTORY" or "CONTINUE" or "")
                && !SolutionKeywords.IsPart(card.Keyword)
            )
            {
                throw new ArgumentException(
                    $"{card.Keyword} is no keyword of a solution.",
                    nameof(solution)
                );
            }
        }
    }

    private static FitsUnit UnitOf(FitsFile file)
    {
        if (file.RequireImage().IsInterleaved)
        {
            throw new UnreadableFileException(
                file.Name,
                "CTYPE1",
                "the colours come first, so that x and y are its second and third axis",
                "save it with the colours as planes, or keep the solution beside it"
            );
        }

        return file.Units[^1];
    }

    private static uint Sum(ByteSource source, long from, long to)
    {
        var buffer = new byte[BufferBytes];
        var sum = 0u;
        for (var at = from; at < to; at += BufferBytes)
        {
            var part = buffer.AsSpan(0, (int)Math.Min(BufferBytes, to - at));
            source.ReadExactly(at, part);
            sum = UnitChecksum.Add(sum, part);
        }

        return sum;
    }

    private static void Copy(ByteSource source, FitsUnit unit, byte[] header, Stream stream)
    {
        if (!source.IsPacked)
        {
            CopyParts(source, unit, header, stream);
            return;
        }

        using var packed = new GZipStream(stream, CompressionLevel.Optimal, leaveOpen: true);
        CopyParts(source, unit, header, packed);
    }

    private static void CopyParts(ByteSource source, FitsUnit unit, byte[] header, Stream stream)
    {
        CopyBytes(source, 0, unit.HeaderStart, stream);
        stream.Write(header);
        CopyBytes(source, unit.DataStart, source.Length, stream);
    }

    private static void CopyBytes(ByteSource source, long from, long to, Stream stream)
    {
        var buffer = new byte[BufferBytes];
        for (var at = from; at < to; at += BufferBytes)
        {
            var part = buffer.AsSpan(0, (int)Math.Min(BufferBytes, to - at));
            source.ReadExactly(at, part);
            stream.Write(part);
        }
    }

    /// <summary>Reads the new file and holds it against the old one.</summary>
    private static void Verify(
        string path,
        ByteSource old,
        FitsUnit unit,
        UpdatedHeader updated,
        string written
    )
    {
        using var source = ByteSource.Open(written);
        var header = HeaderReader.Read(source, unit.HeaderStart, out var dataStart);
        if (
            !header
                .Cards.Select(card => card.Image)
                .SequenceEqual(updated.Images, StringComparer.Ordinal)
            || source.Length - dataStart != old.Length - unit.DataStart
            || !AreSame(old, 0, source, 0, unit.HeaderStart)
            || !AreSame(old, unit.DataStart, source, dataStart, source.Length - dataStart)
        )
        {
            throw new IOException(
                $"What was written of {path} reads back otherwise than it was meant; the file is left as it was."
            );
        }

        if (!OperatingSystem.IsWindows() && File.Exists(path))
        {
            File.SetUnixFileMode(written, File.GetUnixFileMode(path));
        }
    }

    private static bool AreSame(
        ByteSource one,
        long place,
        ByteSource other,
        long otherPlace,
        long length
    )
    {
        var mine = new byte[BufferBytes];
        var theirs = new byte[BufferBytes];
        for (long done = 0; done < length; done += BufferBytes)
        {
            var size = (int)Math.Min(BufferBytes, length - done);
            one.ReadExactly(place + done, mine.AsSpan(0, size));
            other.ReadExactly(otherPlace + done, theirs.AsSpan(0, size));
            if (!mine.AsSpan(0, size).SequenceEqual(theirs.AsSpan(0, size)))
            {
                return false;
            }
        }

        return true;
    }
}
