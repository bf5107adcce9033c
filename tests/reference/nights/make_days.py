"""Ten thousand random places, times and directions: where a star stands, and every rise, set and twilight of the day after.

Debian 12: apt-get install python3-erfa python3-numpy, then /usr/bin/python3 make_days.py ../../Framing.Nights.Tests/Data
ERFA 2.0.0 through pyerfa 2.0.0.1. UT1 = UTC, no polar motion, no refraction, on both sides of every comparison.

days.csv.gz  a row a place: the start (UTC), the site, an ICRS direction; true altitude and azimuth of the direction at the
             start (eraAtco13, as in make_values.py); then, for the 24 hours from the start on, eight columns of events: the
             star through -34 arcmin, the Moon's upper limb through -34 arcmin, the Sun's centre through -0.833, -6, -12 and
             -18 degrees, and of each body the lowest and the highest of these heights. An event is seconds:rate:bend, with
             rate in degrees a minute and bend in degrees a minute squared, so that the height of the body over the threshold
             s seconds of an event is rate m + bend m^2 with m = s/60.

How the events are found: the direction of date of star, Sun and Moon is taken from ERFA at 13 Chebyshev nodes of the day and
joined by polynomials, and so is the small difference between apparent sidereal time and the Earth's turn. Sign changes between minutes, and extremes about which the
height touches the threshold between two minutes, are refined with ERFA's full models alone, at each step; the largest
difference of the two ways over all events is printed. Days with a leap second, whose UTC is no even count, are moved by
two days: make_values.py has such.
"""

import gzip
import io
import sys
import warnings

import erfa
import numpy as np

warnings.simplefilter("ignore", erfa.ErfaWarning)  # years to come, whose leap seconds nobody knows
LIGHT = 173.1446326846693  # au a day
AU_KM = 149597870.7
COUNT = 10_000
NODES = 13
LIMITS = (-0.833, -6.0, -12.0, -18.0)
MINUTES = np.arange(0, 1441)
PLACES = np.cos(np.pi * (np.arange(NODES) + 0.5) / NODES)
SECONDS = 43200.0 * (PLACES + 1.0)
rng = np.random.default_rng(20261206)


def tt(utc1, utc2):
    return erfa.taitt(*erfa.utctai(utc1, utc2))


def turn(utc1, utc2):
    return erfa.gst06a(*erfa.utcut1(utc1, utc2, 0.0), *tt(utc1, utc2))


def turns(utc1, utc2):
    """The same at all minutes of a day: the Earth's turn, and what is left of apparent sidereal time by polynomials."""
    at = utc2 + SECONDS / 86400.0
    rest = np.unwrap(turn(np.full(NODES, utc1), at) - erfa.era00(utc1, at))
    series = np.polynomial.chebyshev.chebfit(PLACES, rest, NODES - 1)
    return erfa.era00(utc1, utc2 + MINUTES / 1440.0) + np.polynomial.chebyshev.chebval(MINUTES / 720.0 - 1.0, series)


def sun_of_date(utc1, utc2):
    tt1, tt2 = tt(utc1, utc2)
    heliocentric, barycentric = erfa.epv00(tt1, tt2)
    distance = np.linalg.norm(heliocentric["p"], axis=-1)
    h, b = erfa.epv00(tt1, tt2 - distance / LIGHT)
    then = (b["p"] - h["p"]) - barycentric["p"]
    then /= np.linalg.norm(then, axis=-1)[..., None]
    v = barycentric["v"] / LIGHT
    seen = erfa.ab(then, v, distance, np.sqrt(1.0 - np.sum(v * v, axis=-1)))
    return np.einsum("...ij,...j->...i", erfa.pnm06a(tt1, tt2), seen)


def moon_of_date(utc1, utc2):
    tt1, tt2 = tt(utc1, utc2)
    distance = np.linalg.norm(erfa.moon98(tt1, tt2)["p"], axis=-1)
    place = erfa.moon98(tt1, tt2 - distance / LIGHT)["p"]
    return np.einsum("...ij,...j->...i", erfa.pnm06a(tt1, tt2), place) * AU_KM


def star_of_date(ra, dec, utc1, utc2):
    tt1, tt2 = tt(utc1, utc2)
    ri, di, origins = erfa.atci13(ra, dec, 0, 0, 0, 0, tt1, tt2)
    return erfa.s2c(ri - origins, di)


def up(vector, theta, site):
    """Sine of the altitude of vectors of date, the day's turn (in radians) and longitude known."""
    lat, lon = site[0], site[1]
    c, s = np.cos(theta + lon), np.sin(theta + lon)
    return np.sin(lat) * vector[..., 2] + np.cos(lat) * (c * vector[..., 0] + s * vector[..., 1])


def star_height(vector, theta, site):
    # Aberration of the day's turn, to first order: eraAtioq has it in full.
    lat, lon = site[0], site[1]
    a = theta + lon
    speed = site[3] * 2.0 * np.pi * 1.00273781191135448 / 86400.0 / 299792.458
    moved = vector + speed * np.stack([-np.sin(a), np.cos(a), 0.0 * a], axis=-1)
    return np.degrees(np.arcsin(up(moved / np.linalg.norm(moved, axis=-1)[..., None], theta, site))) + 34.0 / 60.0


def sun_height(vector, theta, site):
    return np.degrees(np.arcsin(up(vector / np.linalg.norm(vector, axis=-1)[..., None], theta, site)))


def moon_height(vector, theta, site):
    lon, ground = site[1], site[4]
    c, s = np.cos(theta + lon), np.sin(theta + lon)
    place = vector - np.stack([c * ground[0], s * ground[0], ground[1] + 0.0 * c], axis=-1)
    far = np.linalg.norm(place, axis=-1)
    limb = np.degrees(np.arcsin(0.272481 * 6378.1366 / far))
    return np.degrees(np.arcsin(up(place / far[..., None], theta, site))) + 34.0 / 60.0 + limb


class Body:
    """The height of one body over its threshold: quickly at all minutes, by ERFA alone at any time."""

    def __init__(self, direction, height, site, utc1, utc2):
        self.direction, self.height, self.site, self.utc1, self.utc2 = direction, height, site, utc1, utc2
        values = direction(np.full(NODES, utc1), utc2 + SECONDS / 86400.0)
        self.series = np.polynomial.chebyshev.chebfit(PLACES, values, NODES - 1)

    def quick(self, seconds, theta):
        vector = np.polynomial.chebyshev.chebval(seconds / 43200.0 - 1.0, self.series).T
        return self.height(vector, theta, self.site)

    def full(self, seconds):
        seconds = np.atleast_1d(np.asarray(seconds, dtype=float))
        utc1, utc2 = np.full(seconds.shape, self.utc1), self.utc2 + seconds / 86400.0
        return self.height(self.direction(utc1, utc2), turn(utc1, utc2), self.site)


worst = 0.0


def crossings(body, quick, limit):
    """Seconds of all crossings, each with rate and bend; the quick heights at whole minutes given."""
    global worst
    over = quick - limit
    brackets = [(60.0 * i, 60.0 * (i + 1)) for i in np.nonzero((over[1:] > 0) != (over[:-1] > 0))[0]]

    # A touch between two minutes: the parabola through three of them passes the threshold, they do not.
    for i in range(1, 1440):
        a, b, c = over[i - 1 : i + 2]
        if (a > 0) == (b > 0) == (c > 0) and abs(b) < 0.02 and (b - a) * (c - b) <= 0:
            bend = (a + c) / 2.0 - b
            top = b - ((c - a) / 4.0) ** 2 / bend if bend else b
            if (top > 0) != (b > 0):
                at = 60.0 * i - 60.0 * (c - a) / 4.0 / bend
                brackets += [(60.0 * (i - 1), at), (at, 60.0 * (i + 1))]
    found = []
    for low, high in brackets:
        at = 0.5 * (low + high)
        if high - low == 60.0 and low % 60.0 == 0.0:
            i = int(low) // 60
            at = low + 60.0 * over[i] / (over[i] - over[i + 1])
        for _ in range(30):
            # A parabola through three places half a minute apart; its root near the middle.
            a, b, c = body.full([at - 30.0, at, at + 30.0]) - limit
            rate, bend = c - a, 2.0 * (a + c - 2.0 * b)
            root = rate * rate - 4.0 * bend * b
            if root < 0:
                at = None  # it does not reach the threshold after all
                break
            step = -2.0 * b / (rate + np.copysign(np.sqrt(root), rate)) if rate else 0.0
            at = min(max(at + 60.0 * step, low - 60.0), high + 60.0)
            if abs(step) < 1e-4:
                break
        if at is None or not 0.0 <= at <= 86400.0:
            continue
        theta = turn(np.array([body.utc1]), np.array([body.utc2 + at / 86400.0]))
        worst = max(worst, abs(body.quick(np.array([at]), theta)[0] - limit))
        found.append((at, rate, bend))
    return " ".join(f"{at:.2f}:{rate:.5f}:{bend:.6f}" for at, rate, bend in sorted(found))


seconds = rng.integers(0, int(70 * 365.25 * 86400), COUNT)
day, rest = np.divmod(seconds, 86400)


def tai_minus_utc(days):
    return erfa.dat(*erfa.jd2cal(2447892.5, days)[:3], 0.0)


day += 2 * (tai_minus_utc(day) != tai_minus_utc(day + 2.0))
utc1, utc2 = 2447892.5 + day, rest / 86400.0  # from 1990 January 1
lat = np.round(np.degrees(np.arcsin(rng.uniform(-1, 1, COUNT))), 5)
lon = np.round(rng.uniform(-180, 180, COUNT), 5)
height = np.round(rng.uniform(0, 3000, COUNT))
ra = np.round(rng.uniform(0, 360, COUNT), 5)
dec = np.round(np.degrees(np.arcsin(rng.uniform(-1, 1, COUNT))), 5)
az, zenith, *_ = erfa.atco13(
    np.radians(ra), np.radians(dec), 0, 0, 0, 0, utc1, utc2, 0, np.radians(lon), np.radians(lat), height, 0, 0, 0, 0, 0, 0.55
)

rows = io.StringIO(newline="\n")
rows.write(
    "utc,lat_deg,lon_deg,height_m,ra_deg,dec_deg,altitude_deg,azimuth_deg,star,moon,set,civil,nautical,astronomical,"
    "star_low,star_high,moon_low,moon_high,sun_low,sun_high\n"
)
count = 0
for k in range(COUNT):
    phi, lam = np.radians(lat[k]), np.radians(lon[k])
    ground = erfa.gd2gc(1, 0.0, phi, height[k]) / 1000.0
    site = (phi, lam, height[k], ground[0], (ground[0], ground[2]))
    theta = turns(utc1[k], utc2[k])
    r, d = np.radians(ra[k]), np.radians(dec[k])
    star = Body(lambda a, b: star_of_date(r, d, a, b), star_height, site, utc1[k], utc2[k])
    moon = Body(moon_of_date, moon_height, site, utc1[k], utc2[k])
    sun = Body(sun_of_date, sun_height, site, utc1[k], utc2[k])
    heights = [body.quick(60.0 * MINUTES, theta) for body in (star, moon, sun)]
    events = [crossings(star, heights[0], 0.0), crossings(moon, heights[1], 0.0)]
    events += [crossings(sun, heights[2], limit) for limit in LIMITS]
    count += sum(len(e.split()) for e in events)
    y, m, dd, t = erfa.d2dtf("UTC", 0, utc1[k], utc2[k])
    rows.write(
        f"{y:04d}-{m:02d}-{dd:02d}T{t['h']:02d}:{t['m']:02d}:{t['s']:02d}Z,{lat[k]:.5f},{lon[k]:.5f},{height[k]:.0f},"
        f"{ra[k]:.5f},{dec[k]:.5f},{90.0 - np.degrees(zenith[k]):.6f},{np.degrees(az[k]):.6f},"
        + ",".join(e or "none" for e in events)
        + "".join(f",{h.min():.4f},{h.max():.4f}" for h in heights)
        + "\n"
    )
    if k % 500 == 0:
        print(k, count, f"{worst:.2e}", flush=True)
with open(f"{sys.argv[1]}/days.csv.gz", "wb") as out:
    with gzip.GzipFile(fileobj=out, mode="wb", mtime=0, filename="") as packed:
        packed.write(rows.getvalue().encode("ascii"))
print(f"{count} events; quick and full heights differ by at most {worst:.2e} degrees at them")
