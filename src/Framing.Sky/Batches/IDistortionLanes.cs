using System.Numerics;

namespace Framing.Sky;

/// <summary>A distortion at several places at a time.</summary>
internal interface IDistortionLanes
{
    /// <summary>A length below which nothing matters, in the unit of the plane.</summary>
    double Least { get; }

    /// <summary>The image of each place.</summary>
    void Map(
        Vector<double> u,
        Vector<double> v,
        out Vector<double> imageU,
        out Vector<double> imageV
    );

    /// <summary>The image of each place and the derivatives there.</summary>
    void Map(
        Vector<double> u,
        Vector<double> v,
        out Vector<double> imageU,
        out Vector<double> imageV,
        out SlopeLanes slopes
    );

    /// <summary>Where the way back begins.</summary>
    void Start(ref Vector<double> u, ref Vector<double> v);
}
