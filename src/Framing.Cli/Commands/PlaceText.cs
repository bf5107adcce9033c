using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>A place of the sky as the commands write it.</summary>
internal static class PlaceText
{
    /// <summary>As every command writes a place, to a tenth of a second of arc.</summary>
    public static string Of(SkyDirection direction)
    {
        var ra = CoordinateText.RightAscension(direction.RightAscension, 2).Split(' ');
        var dec = CoordinateText.Declination(direction.Declination, 1).Replace('-', '−').Split(' ');
        var hours = ra[0].TrimStart('0');
        return $"{(hours.Length == 0 ? "0" : hours)}h {ra[1]}m {ra[2]}s  {dec[0]}° {dec[1]}′ {dec[2]}″";
    }
}
