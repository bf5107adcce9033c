"""Shared helpers for the reference-value generators (geometry on the unit sphere, check store, table store)."""
import math
import numpy as np

D2R = math.pi / 180
R2D = 180 / math.pi
ASEC = 206264.80624709636          # arcsec per radian

CHECKS = []
TABLES = {}


def clean(o):
    if isinstance(o, dict):
        return {k: clean(v) for k, v in o.items()}
    if isinstance(o, (list, tuple)):
        return [clean(v) for v in o]
    if isinstance(o, (np.bool_, bool)):
        return bool(o)
    if isinstance(o, np.integer):
        return int(o)
    if isinstance(o, (float, np.floating)):
        return float('%.15g' % float(o))
    return o


def add(cid, topic, inputs, expect, tolerance, source, from_memory=False, verified_by=None, note=None):
    assert all(c['id'] != cid for c in CHECKS), cid
    c = dict(id=cid, topic=topic, inputs=clean(inputs), expect=clean(expect), tolerance=clean(tolerance),
             source=source, from_memory=from_memory)
    if verified_by:
        c['verified_by'] = verified_by
    if note:
        c['note'] = note
    CHECKS.append(c)


def table(name, header, rows, fmt=None):
    def f(v, k):
        if isinstance(v, str):
            return v
        if fmt and fmt[k]:
            return fmt[k] % v
        return str(v)
    lines = ['| ' + ' | '.join(header) + ' |', '|' + '---|' * len(header)]
    for r in rows:
        lines.append('| ' + ' | '.join(f(v, k) for k, v in enumerate(r)) + ' |')
    TABLES[name] = '\n'.join(lines)
    return TABLES[name]


def text(name, s):
    TABLES[name] = s


# ---- sphere helpers (degrees in, unit vectors out) -------------------------------------------------
def vec(ra, dec):
    a, d = ra * D2R, dec * D2R
    return np.array([math.cos(d) * math.cos(a), math.cos(d) * math.sin(a), math.sin(d)])


def radec(v):
    v = np.asarray(v, float)
    return (math.atan2(v[1], v[0]) * R2D) % 360, math.atan2(v[2], math.hypot(v[0], v[1])) * R2D


def basis(ra, dec):
    """centre, east, north unit vectors"""
    a, d = ra * D2R, dec * D2R
    c = vec(ra, dec)
    e = np.array([-math.sin(a), math.cos(a), 0.0])
    n = np.array([-math.sin(d) * math.cos(a), -math.sin(d) * math.sin(a), math.cos(d)])
    return c, e, n


def tan_inv(xi, eta, ra0, dec0):
    """tangent plane (radians of tangent) -> ra, dec (deg)"""
    c, e, n = basis(ra0, dec0)
    v = c + xi * e + eta * n
    return radec(v / np.linalg.norm(v))


def tan_fwd(ra, dec, ra0, dec0):
    c, e, n = basis(ra0, dec0)
    v = vec(ra, dec)
    w = v @ c
    return (v @ e) / w, (v @ n) / w


def cam_axes(ra, dec, pa, mirrored=False):
    """unit vectors of camera right and up on the sky; pa = position angle of up"""
    c, e, n = basis(ra, dec)
    t = pa * D2R
    up = math.sin(t) * e + math.cos(t) * n
    right = -math.cos(t) * e + math.sin(t) * n
    if mirrored:
        right = -right
    return c, right, up


def footprint(ra, dec, pa, W, H):
    """corner unit vectors, order: BL, BR, TR, TL (normal parity -> this order is clockwise/ccw see maths)"""
    c, r, u = cam_axes(ra, dec, pa)
    hw, hh = math.tan(W / 2 * D2R), math.tan(H / 2 * D2R)
    out = []
    for sx, sy in ((-1, -1), (1, -1), (1, 1), (-1, 1)):
        v = c + sx * hw * r + sy * hh * u
        out.append(v / np.linalg.norm(v))
    return out


def sph_area(vs):
    """signed area (sr) of a small spherical polygon with great-circle edges, + for counter-clockwise seen from outside"""
    tot = 0.0
    o = vs[0]
    for i in range(1, len(vs) - 1):
        a, b, c = o, vs[i], vs[i + 1]
        num = np.dot(a, np.cross(b, c))
        den = 1 + a @ b + b @ c + c @ a
        tot += 2 * math.atan2(num, den)
    return tot


def sep(a, b):
    return math.atan2(np.linalg.norm(np.cross(a, b)), a @ b) * R2D


def bearing(ra1, dec1, ra2, dec2):
    """position angle at 1 of direction to 2, north through east, deg"""
    da = (ra2 - ra1) * D2R
    d1, d2 = dec1 * D2R, dec2 * D2R
    return math.atan2(math.sin(da) * math.cos(d2),
                      math.cos(d1) * math.sin(d2) - math.sin(d1) * math.cos(d2) * math.cos(da)) * R2D % 360


def wrap180(x):
    return (x + 180) % 360 - 180


SR2AMIN2 = (R2D * 60) ** 2
