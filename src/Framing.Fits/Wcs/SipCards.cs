using Framing.Sky;

namespace Framing.Fits;

/// <summary>Writes the terms of a lens distortion: A_ORDER, A_p_q, and the same of B, AP and BP.</summary>
/// <remarks>Source: Shupe and others 2005, the SIP convention, FITS registry.</remarks>
internal static class SipCards
{
    /// <summary>Readers pass over a polynomial whose order is lower, linear terms and all.</summary>
    private const int LeastOrder = 2;

    /// <summary>Adds the cards of a distortion.</summary>
    /// <param name="cards">Takes the cards.</param>
    /// <param name="sip">The distortion; without reverse polynomials none are written.</param>
    public static void Add(FitsHeaderBuilder cards, SipDistortion sip)
    {
        Add(cards, "A", sip.A, "lens distortion along x, pixels");
        Add(cards, "B", sip.B, "along y");
        if (sip is { Ap: { } ap, Bp: { } bp })
        {
            Add(cards, "AP", ap, "the way back along x, about");
            Add(cards, "BP", bp, "along y");
        }
    }

    private static void Add(
        FitsHeaderBuilder cards,
        string name,
        PixelPolynomial polynomial,
        string comment
    )
    {
        cards.Add($"{name}_ORDER", (long)Math.Max(LeastOrder, polynomial.Order), comment);
        for (var degree = 0; degree <= polynomial.Order; degree++)
        {
            for (var q = 0; q <= degree; q++)
            {
                var p = degree - q;
                if (polynomial[p, q] != 0.0)
                {
                    cards.Add(FormattableString.Invariant($"{name}_{p}_{q}"), polynomial[p, q]);
                }
            }
        }
    }
}
