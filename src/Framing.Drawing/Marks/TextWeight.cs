namespace Framing.Drawing;

/// <summary>The weights of the one typeface.</summary>
internal enum TextWeight
{
    Regular,
    Medium,
    SemiBold,
}
