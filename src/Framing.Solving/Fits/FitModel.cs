namespace Framing.Solving;

/// <summary>What a fit of a frame to the sky may bend.</summary>
public enum FitModel
{
    /// <summary>Nothing: the plain tangent projection, six numbers.</summary>
    Linear,

    /// <summary>One number more: a distortion that grows with the cube of the distance from the middle of the frame.</summary>
    Radial,

    /// <summary>All terms of order 2.</summary>
    Order2,

    /// <summary>All terms of orders 2 and 3.</summary>
    Order3,

    /// <summary>All terms of orders 2 to 4.</summary>
    Order4,

    /// <summary>All terms of orders 2 to 5.</summary>
    Order5,
}
