namespace Framing.Solving;

/// <summary>How likely chance alone brings so many stars of a frame onto catalogue stars.</summary>
/// <remarks>
/// <para>
/// A wrong guess puts the catalogue's stars at places that have nothing to do with the frame's. A place has a detection within
/// a radius r with the chance p = n π r² / A, where n is the number of detections on the area A: of the whole frame or of
/// the neighbourhood of the place, whichever is denser, so that clumps of detections are no evidence. The chance of k
/// hits or more in independent trials with the sum μ of their chances is at most (e μ / k)^k e^-μ for k above μ
/// (Chernoff's bound).
/// </para>
/// <para>
/// The four stars that made the guess do not count, nor two more for the three numbers that the fit has beyond a similarity
/// (two of a linear map, one of a radial distortion). The bound is multiplied with the number of ways in which a guess is
/// looked at and with the number of guesses.
/// </para>
/// </remarks>
internal static class ChanceModel
{
    /// <summary>The natural logarithm of the bound on the chance of so many hits.</summary>
    /// <param name="hits">How many.</param>
    /// <param name="expected">How many chance brings in the mean.</param>
    /// <returns>0 when there are not more than chance brings.</returns>
    public static double LogTail(int hits, double expected)
    {
        if (hits <= 0 || hits <= expected)
        {
            return 0.0;
        }

        var mean = Math.Max(expected, 1e-12);
        return hits + (hits * Math.Log(mean / hits)) - mean;
    }
}
