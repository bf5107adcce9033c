using Framing.Sky;

namespace Framing.Fits;

/// <summary>Reads the distortion of a lens: SIP, TPV, or the older use of PV terms with TAN.</summary>
/// <remarks>Source: the SIP and TPV conventions, FITS registry.</remarks>
internal static class DistortionReader
{
    private static readonly string[] SipOrders = ["A_ORDER", "B_ORDER"];

    /// <summary>True when the terms of the PV cards are those of a distortion.</summary>
    /// <remarks>
    /// TAN itself knows PVi_0 to PVi_4 of the longitude axis and none of the latitude axis. Terms beyond, or both the
    /// constant and the linear one of the latitude axis, are the older way of writing TPV.
    /// </remarks>
    public static bool IsTpv(FitsHeader header, CelestialAxes axes)
    {
        if (axes.Projection != "TAN")
        {
            return axes.Projection == "TPV";
        }

        var (own, other) = (Pv(axes.Longitude), Pv(axes.Latitude));
        for (var m = 4; m < TpvDistortion.Terms; m++)
        {
            if ((m > 4 && header.Has(own(m))) || header.Has(other(m)))
            {
                return true;
            }
        }

        return header.Has(other(0)) && header.Has(other(1));
    }

    /// <summary>What kind of distortion the header carries, used or not.</summary>
    public static DistortionKind Kind(FitsHeader header, CelestialAxes axes) =>
        axes.Suffix == "SIP" || Array.Exists(SipOrders, header.Has) ? DistortionKind.Sip
        : IsTpv(header, axes) ? DistortionKind.Tpv
        : axes.Suffix.Length > 0 || HasTables(header) ? DistortionKind.Other
        : DistortionKind.None;

    /// <summary>Reads the SIP terms.</summary>
    /// <param name="header">The header.</param>
    /// <param name="axes">The axes.</param>
    /// <param name="warnings">Takes what is odd, and what is not used.</param>
    /// <param name="why">Why the terms cannot be read; null when they can, or when there are none to use.</param>
    public static SipDistortion? Sip(
        FitsHeader header,
        CelestialAxes axes,
        List<string> warnings,
        ref string? why
    )
    {
        var hasTerms = Array.Exists(SipOrders, header.Has);
        if (axes.Suffix != "SIP")
        {
            if (hasTerms)
            {
                warnings.Add(
                    $"The header has SIP terms (A_ORDER, B_ORDER) but CTYPE ends in {axes.Projection}, not in -SIP; they are not used."
                );
            }
            else if (axes.Suffix.Length > 0 || HasTables(header))
            {
                warnings.Add(
                    axes.Suffix.Length > 0
                        ? $"The distortion {axes.Suffix} (CTYPE) is not used."
                        : "The distortion of CPDISi or CQDISi is not used."
                );
            }

            return null;
        }

        if (!hasTerms)
        {
            warnings.Add("CTYPE ends in -SIP but there are no SIP terms (A_ORDER, B_ORDER).");
            return null;
        }

        foreach (var order in SipOrders)
        {
            if (!header.Has(order))
            {
                warnings.Add($"{order} is missing: its axis is taken to have no distortion.");
            }
        }

        var (a, b) = (Polynomial(header, "A", ref why), Polynomial(header, "B", ref why));

        // The reverse terms are only a start, so that ones that cannot be read do no harm.
        string? ignored = null;
        var (ap, bp) =
            header.Has("AP_ORDER") && header.Has("BP_ORDER")
                ? (Polynomial(header, "AP", ref ignored), Polynomial(header, "BP", ref ignored))
                : (null, null);
        return a is null || b is null ? null
            : ap is null || bp is null ? new(a, b)
            : new(a, b, ap, bp);
    }

    /// <summary>Reads the TPV terms.</summary>
    public static TpvDistortion? Tpv(FitsHeader header, CelestialAxes axes, ref string? why)
    {
        if (!IsTpv(header, axes))
        {
            return null;
        }

        Span<double> longitude = stackalloc double[TpvDistortion.Terms];
        Span<double> latitude = stackalloc double[TpvDistortion.Terms];
        return
            ReadTerms(header, Pv(axes.Longitude), longitude, ref why)
            && ReadTerms(header, Pv(axes.Latitude), latitude, ref why)
            ? new(longitude, latitude)
            : null;
    }

    private static Func<int, string> Pv(int axis) =>
        m => FormattableString.Invariant($"PV{axis}_{m}");

    private static bool ReadTerms(
        FitsHeader header,
        Func<int, string> keyword,
        Span<double> terms,
        ref string? why
    )
    {
        terms.Clear();
        terms[1] = 1.0;
        for (var m = 0; m < terms.Length; m++)
        {
            if (LinearPart.Unreadable(header, keyword(m)))
            {
                why ??= $"{keyword(m)} = {header.Text(keyword(m))} is no number.";
                return false;
            }

            terms[m] = header.Number(keyword(m)) ?? terms[m];
        }

        return true;
    }

    private static PixelPolynomial? Polynomial(FitsHeader header, string name, ref string? why)
    {
        var keyword = $"{name}_ORDER";
        var order = 0L;
        if (header.Has(keyword))
        {
            if (
                header.Integer(keyword) is not { } read
                || read is < 0 or > PixelPolynomial.MostOrder
            )
            {
                why ??= FormattableString.Invariant(
                    $"{keyword} = {header.Text(keyword)}: orders of SIP terms from 0 to {PixelPolynomial.MostOrder} are read."
                );
                return null;
            }

            order = read;
        }

        string? problem = null;
        var polynomial = new PixelPolynomial(
            (int)order,
            (p, q) =>
            {
                var term = FormattableString.Invariant($"{name}_{p}_{q}");
                if (LinearPart.Unreadable(header, term))
                {
                    problem ??= $"{term} = {header.Text(term)} is no number.";
                }

                return header.Number(term) ?? 0.0;
            }
        );
        why ??= problem;
        return problem is null ? polynomial : null;
    }

    private static bool HasTables(FitsHeader header) =>
        header.Has("CPDIS1")
        || header.Has("CPDIS2")
        || header.Has("CQDIS1")
        || header.Has("CQDIS2");
}
