using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>Reads the embedded table of stars. The layout is described in tests/reference/catalogue/pack_stars.py.</summary>
internal sealed class StarTable
{
    /// <summary>The brightest V that fits, in hundredths of a magnitude.</summary>
    public const int LeastHundredths = -200;

    /// <summary>How many different V fit.</summary>
    public const int BrightnessSteps = 0x800;

    private const int StepBits = 21;
    private const ulong StepMask = (1UL << StepBits) - 1;
    private const int NoColour = 1023;
    private const short Escape = short.MinValue;
    private const double MilliarcsecondTenths = 1e-4;

    private readonly TableSection bands;
    private readonly TableSection cells;
    private readonly TableSection cellNumbers;
    private readonly TableSection places;
    private readonly TableSection motions;
    private readonly TableSection numbers;
    private readonly TableSection byNumber;
    private readonly TableSection fast;
    private readonly int highestNumber;

    public StarTable()
    {
        var table = EmbeddedTable.Open("stars.bin", "FRSTARS1"u8);
        var parameters = table.Section(0);
        Count = parameters.Int32(0);
        CellCount = parameters.Int32(1);
        BandCount = parameters.Int32(2);
        highestNumber = parameters.Int32(4);
        BandDegrees = parameters.Int32(5) / 1e6;
        LargestMotion = Angle.FromArcseconds(parameters.Int32(6) * MilliarcsecondTenths);
        bands = table.Section(1);
        cells = table.Section(2);
        cellNumbers = table.Section(3);
        places = table.Section(4);
        motions = table.Section(5);
        numbers = table.Section(6);
        byNumber = table.Section(7);
        fast = table.Section(8);
    }

    public int Count { get; }

    public int CellCount { get; }

    public int BandCount { get; }

    public double BandDegrees { get; }

    /// <summary>How far the fastest star goes in a Julian year.</summary>
    public Angle LargestMotion { get; }

    public int FirstCell(int band) => bands.Int32(band);

    public StarCell Cell(int band, int cell)
    {
        var first = bands.Int32(band);
        var width = 360.0 / (bands.Int32(band + 1) - first);
        return new(
            cells.Int32(cell),
            cells.Int32(cell + 1),
            cellNumbers.Int32(cell),
            (cell - first) * width,
            width,
            (band * BandDegrees) - 90.0
        );
    }

    /// <summary>The cell that holds a star.</summary>
    public StarCell CellOf(int star)
    {
        var cell = Last(cells, CellCount, star);
        return Cell(Last(bands, BandCount, cell), cell);
    }

    /// <summary>The star with a Hipparcos number, -1 if there is none.</summary>
    public int WithNumber(int hipparcos) =>
        hipparcos < 0 || hipparcos > highestNumber ? -1 : byNumber.Int32(hipparcos);

    /// <summary>V in hundredths of a magnitude.</summary>
    public int Hundredths(int star) =>
        (int)((places.UInt64(star) >> 43) & (BrightnessSteps - 1)) + LeastHundredths;

    /// <summary>The star itself.</summary>
    /// <param name="cell">The cell that holds it.</param>
    /// <param name="star">Its place in the table.</param>
    public CatalogueStar Read(in StarCell cell, int star)
    {
        var packed = places.UInt64(star);
        var (rightAscension, declination) = Place(cell, packed);
        var colour = (int)(packed >> 54);
        return new(
            SkyDirection.FromDegrees(rightAscension, declination),
            Motion(star),
            Hundredths(star) / 100.0,
            colour == NoColour ? null : (colour - 100) / 100.0,
            Number(cell, star)
        );
    }

    /// <summary>The star as plain numbers.</summary>
    /// <param name="cell">The cell that holds it.</param>
    /// <param name="star">Its place in the table.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public StarRow Row(in StarCell cell, int star)
    {
        var (rightAscension, declination) = Place(cell, places.UInt64(star));
        var motion = Motion(star) ?? default;
        return new(
            rightAscension,
            declination,
            (float)(1000.0 * motion.RightAscensionCosDeclination.Arcseconds),
            (float)(1000.0 * motion.Declination.Arcseconds),
            Hundredths(star) / 100f
        );
    }

    private static (double RightAscension, double Declination) Place(
        in StarCell cell,
        ulong packed
    ) =>
        (
            cell.WestDegrees
                + (
                    cell.WidthDegrees
                    * ((((packed >> StepBits) & StepMask) + 0.5) / (1 << StepBits))
                ),
            Math.Clamp(cell.SouthDegrees + ((packed & StepMask) / 1e6), -90.0, 90.0)
        );

    /// <summary>Its Hipparcos number: those of a cell stand in a row of their own, in the order of the stars.</summary>
    private int? Number(in StarCell cell, int star)
    {
        if (!HasNumber(star))
        {
            return null;
        }

        // The stars that have one are the bright ones, which come first.
        var row = cell.FirstNumber;
        for (var before = cell.First; before < star; before++)
        {
            row += HasNumber(before) ? 1 : 0;
        }

        return numbers.Int32(row);
    }

    private bool HasNumber(int star) => ((places.UInt64(star) >> 42) & 1) != 0;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private ProperMotion? Motion(int star)
    {
        int east = motions.Int16(2 * star);
        int north = motions.Int16((2 * star) + 1);
        if (east == Escape)
        {
            if (north == 0)
            {
                return null;
            }

            (east, north) = (fast.Int32(2 * north), fast.Int32((2 * north) + 1));
        }

        return new(
            Angle.FromArcseconds(east * MilliarcsecondTenths),
            Angle.FromArcseconds(north * MilliarcsecondTenths)
        );
    }

    /// <summary>The last row of a rising list (with one entry more than rows) that is not above a value.</summary>
    private static int Last(TableSection starts, int rows, int value)
    {
        int low = 0,
            high = rows;
        while (high - low > 1)
        {
            var middle = (low + high) >>> 1;
            if (starts.Int32(middle) <= value)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }
}
