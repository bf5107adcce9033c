from common import *
from scipy.special import owens_t, ndtr, ndtri
from scipy.optimize import brentq
from shapely.geometry import box
from shapely import affinity
from shapely.ops import unary_union
T = '8 overlap and pointing'


def p_nogap(o, sig, srot_deg, L, rho=0.0):
    """P(the facing edges of two neighbours still overlap along the whole shared side).
    o overlap, sig per-axis pointing sigma per panel (same unit as o and L), srot rotation sigma per panel, L length of the shared side"""
    s1 = sig * math.sqrt(2 * (1 - rho)); s2 = L / 2 * math.sqrt(2) * srot_deg * D2R
    om = math.hypot(s1, s2)
    if om == 0: return 1.0 if o >= 0 else 0.0
    if s1 == 0: return 2 * ndtr(o / s2) - 1
    return float(ndtr(o / om) - 2 * owens_t(o / om, s2 / s1))


def need(P, sig, srot, L, rho=0.0):
    s = math.hypot(sig * math.sqrt(2 * (1 - rho)), L / 2 * math.sqrt(2) * srot * D2R)
    return 0.0 if s == 0 else brentq(lambda o: p_nogap(o, sig, srot, L, rho) - P, 0, 12 * s)


rng = np.random.default_rng(88)
N = 2_000_000
def mc(o, sig, srot, L):
    d = rng.normal(0, sig, N) - rng.normal(0, sig, N)
    th = (rng.normal(0, srot, N) - rng.normal(0, srot, N)) * D2R
    return float(np.mean(o + d - L / 2 * np.abs(np.tan(th)) >= 0))
def mc_geom(o, sig, srot, W, H, n=20000):
    """true geometry: two W x H rectangles (arcmin), step W - o; both centres and angles perturbed; no gap = along A's right side every point between the shared ends lies in B"""
    ok = 0
    for k in range(n):
        x1, y1, x2, y2 = rng.normal(0, sig, 4); t1, t2 = rng.normal(0, srot, 2) * D2R
        x2 += W - o
        # B's left edge corners and A's right edge corners in A's frame
        c, s = math.cos(-t1), math.sin(-t1)
        def toA(px, py):
            px, py = px - x1, py - y1
            return c * px - s * py, s * px + c * py
        cb, sb = math.cos(t2), math.sin(t2)
        e = [toA(x2 + cb * (-W / 2) - sb * q, y2 + sb * (-W / 2) + cb * q) for q in (-H / 2, H / 2)]
        (xa, ya), (xb, yb) = e
        lo, hi = max(-H / 2, min(ya, yb)), min(H / 2, max(ya, yb))
        f = lambda y: W / 2 - (xa + (xb - xa) * (y - ya) / (yb - ya))
        ok += min(f(lo), f(hi)) >= 0
    return ok / n
rows = []
for sig in (1, 2, 5, 10, 20):
    for srot in (0.0, 0.1, 0.3, 0.5, 1.0):
        o180, o270 = need(.99, sig, srot, 180), need(.99, sig, srot, 270)
        rows.append([sig, srot, '%.2f' % o180, '%.2f' % (o180 / 270 * 100), '%.2f' % o270, '%.2f' % (o270 / 180 * 100), '%.5f' % mc(o180, sig, srot, 180), '%.2f' % (2.5758 * math.hypot(sig * math.sqrt(2), 90 * math.sqrt(2) * srot * D2R)), '%.2f' % need(.99 ** (1 / 7), sig, srot, 180)])
        assert abs(mc(o180, sig, srot, 180) - .99) < 4e-4
table('overlap99', ['sigma arcmin per axis', 'sigma rot deg', 'side-by-side (shared side 180 arcmin): overlap arcmin', '% of 270', 'row-to-row (shared side 270): arcmin', '% of 180', 'Monte-Carlo P at that overlap (2e6)', 'simple bound 2.576 omega', 'overlap so that all 7 pairs of a 3x2 hold with 99 %'], rows)
GEOM = [(o, s, r, mc_geom(o, s, r, 270, 180), p_nogap(o, s, r, 180)) for o, s, r in ((16.5, 5, .3), (27, 10, .5), (8, 2, 1.0), (10, 5, 0.0))]
for o, s, r, a, b in GEOM:
    assert abs(a - b) < 0.006, (o, s, r, a, b)
src = 'sum of a normal and a folded normal is skew-normal (Azzalini 1985); Owen 1956 T function'
for o, sig, srot, L in ((16.5, 5, 0.0, 180), (20, 5, 0.5, 180), (27, 10, 1.0, 270), (40.5, 10, 0.3, 180), (27, 5, 0.5, 270)):
    add('ovl-p-%g-%g-%g-%g' % (o, sig, srot, L), T, dict(overlap_arcmin=o, sigma_arcmin=sig, sigma_rot_deg=srot, shared_side_arcmin=L), dict(p_no_gap=p_nogap(o, sig, srot, L)), 1e-6, src, verified_by='Monte-Carlo 2e6: %.5f' % mc(o, sig, srot, L))
for P, sig, srot, L in ((.99, 5, 0.0, 180), (.99, 10, 0.5, 180), (.99, 2, 1.0, 270), (.999, 5, 0.3, 180)):
    add('ovl-need-%g-%g-%g-%g' % (P, sig, srot, L), T, dict(P=P, sigma_arcmin=sig, sigma_rot_deg=srot, shared_side_arcmin=L), dict(overlap_arcmin=need(P, sig, srot, L)), 1e-4, src, verified_by='Monte-Carlo: %.5f' % mc(need(P, sig, srot, L), sig, srot, L))
add('ovl-norot', T, dict(P=0.99, sigma_arcmin=1, sigma_rot_deg=0), dict(overlap_over_sigma=float(ndtri(.99)) * math.sqrt(2)), 1e-9, 'normal quantile 2.32635 times sqrt 2')
add('ovl-owen', T, dict(h=1.0, a=1.0), dict(T=float(owens_t(1, 1))), 1e-12, 'T(h,1) = Phi(h)(1-Phi(h))/2 (Owen 1956)', verified_by='closed form %.12f' % (float(ndtr(1) * (1 - ndtr(1)) / 2)))
assert abs(owens_t(1, 1) - ndtr(1) * (1 - ndtr(1)) / 2) < 1e-15
# common rotation of all panels against the grid: hole condition
def hole_area(W, H, ov, th):
    s, t = W * (1 - ov), H * (1 - ov)
    P = []
    for i in range(-2, 3):
        for j in range(-2, 3):
            P.append(affinity.translate(affinity.rotate(box(-W / 2, -H / 2, W / 2, H / 2), th, origin=(0, 0)), i * s, j * t))
    u = unary_union(P)
    cell = box(-s / 2, -t / 2, s / 2, t / 2)
    return cell.difference(u).area
def hole_formula(W, H, ov, th):
    s, t = W * (1 - ov), H * (1 - ov); c, q = math.cos(th * D2R), abs(math.sin(th * D2R))
    a, b = s * c + t * q - W, t * c + s * q - H
    return a * b if a > 0 and b > 0 else 0.0
rows = []
for ov in (0.05, 0.10, 0.15, 0.20):
    for th in (2, 5, 10, 16, 20, 30):
        f, g = hole_formula(4.5, 3.0, ov, th), hole_area(4.5, 3.0, ov, th)
        assert abs(f - g) < 1e-9, (ov, th, f, g)
    fx = lambda x: min(4.5 * (1 - ov) * math.cos(x) + 3 * (1 - ov) * math.sin(x) - 4.5, 3 * (1 - ov) * math.cos(x) + 4.5 * (1 - ov) * math.sin(x) - 3)
    peak = math.atan2(3, 4.5)
    crit = brentq(fx, 1e-6, peak) * R2D if fx(peak) > 0 else None
    first = brentq(lambda x: 3 * (1 - ov) * math.cos(x) + 4.5 * (1 - ov) * math.sin(x) - 3, 1e-6, .7) * R2D
    rows.append(['%g' % (ov * 100), '%.2f' % first, '%.2f' % crit if crit else 'never', '%.3f' % (hole_formula(4.5, 3, ov, 20) * 3600), '%.3f' % (hole_formula(4.5, 3, ov, 30) * 3600)])
    add('ovl-commonrot-%g' % (ov * 100), T, dict(W=4.5, H=3.0, overlap=ov, all_panels_rotated_by_deg=20), dict(hole_sq_deg_per_junction=hole_formula(4.5, 3, ov, 20), critical_angle_deg=crit), dict(hole_sq_deg_per_junction=1e-9, critical_angle_deg=1e-4 if crit else 'null = no hole at any angle'), 'derived: a hole needs both W < s cos + t sin and H < t cos + s sin', verified_by='shapely union of a 5x5 lattice')
table('common_rot', ['overlap %', 'one condition fails from (deg) - no hole yet', 'holes at the 4-panel junctions from (deg)', 'hole area at 20 deg, arcmin2', 'at 30 deg'], rows)
# recentering tolerance
add('ovl-recentre', T, dict(tolerance_arcmin=3, note='each panel re-centred until |dx| <= tolerance on each axis'), dict(overlap_needed_worst_case=6.0, sigma_equivalent=3 / math.sqrt(3)), 1e-9, 'uniform distribution on +-tolerance')
# whole 3x2 mosaic: are seven pairs at 0.99^(1/7) really 99 %?
def mc_all(sig, srot, n=400000):
    os_, or_ = need(.99 ** (1 / 7), sig, srot, 180), need(.99 ** (1 / 7), sig, srot, 270)
    x = rng.normal(0, sig, (n, 3, 2)); y = rng.normal(0, sig, (n, 3, 2)); th = rng.normal(0, srot, (n, 3, 2)) * D2R
    ok = np.ones(n, bool)
    for j in range(2):
        for i in range(2):
            ok &= os_ + x[:, i, j] - x[:, i + 1, j] - 90 * np.abs(th[:, i, j] - th[:, i + 1, j]) >= 0
    for i in range(3):
        ok &= or_ + y[:, i, 0] - y[:, i, 1] - 135 * np.abs(th[:, i, 0] - th[:, i, 1]) >= 0
    return float(ok.mean())
ALL = {(s, r): mc_all(s, r) for s, r in ((5, 0.3), (10, 0.5), (2, 1.0))}

# Owen's T by 20-point Gauss-Legendre, and the a > 1 identity
gx, gw = np.polynomial.legendre.leggauss(20)
def owen_gl(h, a):
    x = (gx + 1) * a / 2
    return float(np.sum(gw * np.exp(-h * h * (1 + x * x) / 2) / (1 + x * x)) * a / 2 / (2 * math.pi))
OWEN = max(abs(owen_gl(h, a) - owens_t(h, a)) for h in np.linspace(0, 8, 81) for a in np.linspace(0, 1, 41))
for h, a in ((0.5, 3.0), (1.7, 1.3), (0.0, 2.0), (2.2, 9.0)):
    assert abs((ndtr(h) + ndtr(a * h)) / 2 - ndtr(h) * ndtr(a * h) - owens_t(a * h, 1 / a) - owens_t(h, a)) < 1e-14
text('owen', '%.0e' % OWEN)

print('drawn rectangles against the closed form:', [tuple(round(float(x), 4) for x in row) for row in GEOM])
print('all seven pairs of a 3x2 grid, drawn:', {k: round(v, 4) for k, v in ALL.items()})
