using Framing.Sky;

namespace Framing.Strategies;

/// <summary>Answers how many panels a camera angle needs.</summary>
public interface IPanelCount
{
    /// <summary>The smallest grid that holds the outline with its margin at a camera angle.</summary>
    /// <param name="angle">Position angle of the picture's up direction.</param>
    /// <returns>The grid and the margin it leaves.</returns>
    PanelCount At(PositionAngle angle);
}
