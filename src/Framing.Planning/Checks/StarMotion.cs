using Framing.Sky;

namespace Framing.Planning;

/// <summary>How the stars run through the displayed picture while the telescope moves.</summary>
/// <param name="RightFraction">Towards the right, as a part of the picture's width; negative to the left.</param>
/// <param name="UpFraction">Towards the top, as a part of the picture's height; negative to the bottom.</param>
public readonly record struct StarMotion(double RightFraction, double UpFraction)
{
    /// <summary>A move of a whole sky away has no tangent: further than this it counts as this far.</summary>
    private const double MostRadians = 1.4;

    /// <summary>The motion of the stars when the telescope moves by an offset on the sky.</summary>
    /// <param name="up">Position angle of the displayed picture's up direction at its middle.</param>
    /// <param name="mirrored">True when the displayed picture is a mirror image of the sky.</param>
    /// <param name="field">The field of the picture.</param>
    /// <param name="towards">The position angle towards which the telescope moves, against the same north as the first.</param>
    /// <param name="distance">How far, 0 or more.</param>
    /// <returns>The opposite of where the wanted place stands in the picture.</returns>
    public static StarMotion Of(
        PositionAngle up,
        bool mirrored,
        FieldShape field,
        PositionAngle towards,
        Angle distance
    )
    {
        // East is on the left of a picture with north up, on the right of a mirrored one.
        var fromUp = towards.Radians - up.Radians;
        var tangent = Math.Tan(Math.Min(distance.Radians, MostRadians));
        var left = tangent * Math.Sin(fromUp) * (mirrored ? -1.0 : 1.0);
        return new(left / field.TangentWidth, -tangent * Math.Cos(fromUp) / field.TangentHeight);
    }
}
