using System.Buffers.Binary;
using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>One row of the embedded objects, read where it lies.</summary>
internal readonly ref struct ObjectRow(ReadOnlySpan<byte> row, TextPool texts)
{
    private readonly ReadOnlySpan<byte> row = row;
    private readonly TextPool texts = texts;

    public string Id => texts.Text(UInt32(0));

    public IReadOnlyList<string> OtherIds => texts.List(UInt32(4));

    public IReadOnlyList<string> Members => texts.List(UInt32(8));

    public string? Name => texts.TextOrNull(UInt32(12));

    public string Source => texts.Text(UInt32(16));

    public SkyDirection Direction => Place(20);

    public SkyDirection MiddleOfExtent => Place(28);

    public double RightAscensionDegrees => Int32(20) / 1e4;

    public double DeclinationDegrees => Int32(24) / 1e4;

    /// <summary>Major size in hundredths of an arcminute, -1 if unknown; good for comparing.</summary>
    public int MajorHundredths => Int32(36);

    public Angle? Major => Size(36);

    public Angle? Minor => Size(40);

    public PositionAngle? PositionAngle =>
        Int16(44) is var degrees and >= 0 ? Framing.Sky.PositionAngle.FromDegrees(degrees) : null;

    public double? VMagnitude =>
        Int16(46) is var tenths and > short.MinValue ? tenths / 10.0 : null;

    public ObjectType Type => (ObjectType)row[48];

    public SizeQuality SizeQuality => (SizeQuality)row[49];

    private SkyDirection Place(int at) =>
        SkyDirection.FromDegrees(Int32(at) / 1e4, Int32(at + 4) / 1e4);

    private Angle? Size(int at) =>
        Int32(at) is var hundredths and >= 0 ? Angle.FromArcminutes(hundredths / 100.0) : null;

    private uint UInt32(int at) => BinaryPrimitives.ReadUInt32LittleEndian(row[at..]);

    private int Int32(int at) => BinaryPrimitives.ReadInt32LittleEndian(row[at..]);

    private short Int16(int at) => BinaryPrimitives.ReadInt16LittleEndian(row[at..]);
}
