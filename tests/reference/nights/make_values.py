"""Places over the horizon and rises, sets and twilights at random sites and times, by ERFA.

Debian 12: apt-get install python3-erfa python3-numpy, then /usr/bin/python3 make_values.py ../../Framing.Nights.Tests/Data
ERFA 2.0.0 through pyerfa 2.0.0.1. UT1 = UTC, no polar motion, no refraction, on both sides of every comparison.

places.csv      stars: eraAtco13 without air (aberration of the day's turn and nutation IAU 2000A in it)
moon.csv        eraMoon98 one light time earlier, eraPnm06a, eraGst06a, less the observer's place (eraGd2gc, WGS84)
sun.csv         eraEpv00 one light time earlier, aberration of the Earth's motion (eraAb), seen from the Earth's centre
sun-nights.csv  the Sun every minute for a day from local mean noon: when it goes through -0.833, -6, -12 and -18 degrees;
                its lowest and highest altitude, at steps of a second about the minute
dark-nights.csv the nights of 2026 at longitude 0 whose midnight Sun (every ten seconds for half an hour) stays above -18
events.csv      all rises and sets in a day from a time on, found at one-minute steps and halved to 0.1 s: stars through
                -34 arcmin, the Moon's upper limb through -34 arcmin
"""

import sys

import erfa
import numpy as np

rng = np.random.default_rng(20261125)
ZERO = np.zeros(1)
LIGHT = 173.1446326846693  # au a day
AU_KM = 149597870.7


def tt(utc1, utc2):
    tai = erfa.utctai(utc1, utc2)
    return erfa.taitt(*tai)


def turn(utc1, utc2):
    """Greenwich apparent sidereal time; on the day of a leap second UTC is no even count, universal time is."""
    return erfa.gst06a(*erfa.utcut1(utc1, utc2, 0.0), *tt(utc1, utc2))


def times(count):
    seconds = rng.integers(0, int(70 * 365.25 * 86400), count)
    day, rest = np.divmod(seconds, 86400)
    return 2447892.5 + day, rest / 86400.0  # from 1990 January 1


def stamp(utc1, utc2):
    parts = erfa.d2dtf("UTC", 3, utc1, utc2)
    ymd, hmsf = parts[0:3], parts[3]
    return [
        f"{y:04d}-{m:02d}-{d:02d}T{t['h']:02d}:{t['m']:02d}:{t['s']:02d}.{t['f']:03d}Z"
        for y, m, d, t in zip(*[np.atleast_1d(part) for part in ymd], np.atleast_1d(hmsf))
    ]


def turned(vector, utc1, utc2, lat, lon):
    """True altitude and azimuth of vectors of date (any length)."""
    theta = turn(utc1, utc2) + lon
    ra, dec = erfa.c2s(vector)
    azimuth, altitude = erfa.hd2ae(theta - ra, dec, lat)
    return altitude, azimuth


def sun_of_date(utc1, utc2):
    tt1, tt2 = tt(utc1, utc2)
    heliocentric, barycentric = erfa.epv00(tt1, tt2)
    sun = -heliocentric["p"]
    distance = np.linalg.norm(sun, axis=-1)
    # The Sun's own motion: its barycentric place one light time earlier.
    h, b = erfa.epv00(tt1, tt2 - distance / LIGHT)
    then = (b["p"] - h["p"]) - barycentric["p"]
    then_length = np.linalg.norm(then, axis=-1)
    v = barycentric["v"] / LIGHT
    bm1 = np.sqrt(1.0 - np.sum(v * v, axis=-1))
    seen = erfa.ab(then / then_length[..., None], v, distance, bm1)
    return np.einsum("...ij,...j->...i", erfa.pnm06a(tt1, tt2), seen)


def sun_altitude(utc1, utc2, lat, lon):
    return np.degrees(turned(sun_of_date(utc1, utc2), utc1, utc2, lat, lon)[0])


def moon_of_date(utc1, utc2):
    tt1, tt2 = tt(utc1, utc2)
    distance = np.linalg.norm(erfa.moon98(tt1, tt2)["p"], axis=-1)
    place = erfa.moon98(tt1, tt2 - distance / LIGHT)["p"]
    return np.einsum("...ij,...j->...i", erfa.pnm06a(tt1, tt2), place) * AU_KM


def moon_from(utc1, utc2, lat, lon, height):
    ground = erfa.gd2gc(1, lon, lat, height) / 1000.0
    theta = turn(utc1, utc2)
    c, s = np.cos(theta), np.sin(theta)
    observer = np.stack(
        [c * ground[..., 0] - s * ground[..., 1], s * ground[..., 0] + c * ground[..., 1], ground[..., 2] + 0 * c], axis=-1
    )
    return moon_of_date(utc1, utc2) - observer


def moon_over_limb(utc1, utc2, lat, lon, height):
    place = moon_from(utc1, utc2, lat, lon, height)
    altitude, _ = turned(place, utc1, utc2, lat, lon)
    radius = np.degrees(np.arcsin(0.272481 * 6378.1366 / np.linalg.norm(place, axis=-1)))
    return np.degrees(altitude) + 34.0 / 60.0 + radius


def star_over(ra, dec):
    def over(utc1, utc2, lat, lon, height):
        _, zenith, *_ = erfa.atco13(ra, dec, 0, 0, 0, 0, utc1, utc2, 0, lon, lat, height, 0, 0, 0, 0, 0, 0.55)
        return 90.0 - np.degrees(zenith) + 34.0 / 60.0

    return over


def halved(over, utc1, low, high, *place):
    first = over(utc1, low, *place)
    while high - low > 0.1 / 86400.0:
        middle = 0.5 * (low + high)
        value = over(utc1, middle, *place)
        if (value > 0) == (first > 0):
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def sites(count):
    lat = np.arcsin(rng.uniform(-1, 1, count))
    lon = rng.uniform(-np.pi, np.pi, count)
    return lat, lon, rng.uniform(0, 3000, count)


def write(name, head, rows):
    with open(f"{sys.argv[1]}/{name}", "w", encoding="ascii", newline="\n") as out:
        out.write(head + "\n")
        for row in rows:
            out.write(",".join(value if isinstance(value, str) else f"{value:.7f}" for value in row) + "\n")


count = 3000
lat, lon, height = sites(count)
utc1, utc2 = times(count)
ra, dec = rng.uniform(0, 2 * np.pi, count), np.arcsin(rng.uniform(-1, 1, count))
az, zenith, hour, seen_dec, seen_ra, _ = erfa.atco13(ra, dec, 0, 0, 0, 0, utc1, utc2, 0, lon, lat, height, 0, 0, 0, 0, 0, 0.55)
parallactic = erfa.hd2pa(hour, seen_dec, lat)
site = [np.degrees(lat), np.degrees(lon), height]
write(
    "places.csv",
    "utc,lat_deg,lon_deg,height_m,ra_deg,dec_deg,altitude_deg,azimuth_deg,hour_angle_deg,parallactic_deg",
    zip(stamp(utc1, utc2), *site, *map(np.degrees, (ra, dec, np.pi / 2 - zenith, az, hour, parallactic))),
)

count = 1000
lat, lon, height = sites(count)
utc1, utc2 = times(count)
place = moon_from(utc1, utc2, lat, lon, height)
altitude, azimuth = turned(place, utc1, utc2, lat, lon)
centre = moon_of_date(utc1, utc2)
mra, mdec = erfa.c2s(centre)
sun = sun_of_date(utc1, utc2)
earth_sun = np.linalg.norm(erfa.epv00(*tt(utc1, utc2))[0]["p"], axis=-1) * AU_KM
apart = erfa.sepp(centre, sun)
far = np.linalg.norm(centre, axis=-1)
phase = np.arctan2(earth_sun * np.sin(apart), far - earth_sun * np.cos(apart))
site = [np.degrees(lat), np.degrees(lon), height]
write(
    "moon.csv",
    "utc,lat_deg,lon_deg,height_m,ra_deg,dec_deg,distance_km,topo_altitude_deg,topo_azimuth_deg,topo_distance_km,lit",
    zip(
        stamp(utc1, utc2), *site, np.degrees(mra) % 360, np.degrees(mdec), far, np.degrees(altitude),
        np.degrees(azimuth), np.linalg.norm(place, axis=-1), (1 + np.cos(phase)) / 2,
    ),
)

utc1, utc2 = times(1000)
lat, lon, _ = sites(1000)
sra, sdec = erfa.c2s(sun_of_date(utc1, utc2))
write(
    "sun.csv",
    "utc,lat_deg,lon_deg,ra_deg,dec_deg,altitude_deg,distance_au",
    zip(
        stamp(utc1, utc2), np.degrees(lat), np.degrees(lon), np.degrees(sra) % 360, np.degrees(sdec),
        sun_altitude(utc1, utc2, lat, lon), np.linalg.norm(erfa.epv00(*tt(utc1, utc2))[0]["p"], axis=-1),
    ),
)

rows = []
places = [(la, 0.0, y, mo, 15) for la in (0, 45, -45, 69.7, -69.7, 90, -90) for y in (2026,) for mo in range(1, 13)]
for _ in range(120):
    places.append((float(rng.uniform(-90, 90)), float(rng.uniform(-180, 180)), int(rng.integers(1990, 2060)), int(rng.integers(1, 13)), int(rng.integers(1, 29))))
minutes = np.arange(0, 1441) / 1440.0
for la, lo, year, month, day in places:
    lo, la = round(lo, 4), round(la, 4)
    j1, j2 = erfa.cal2jd(year, month, day)
    noon = j1 + j2
    start = 0.5 - lo / 360.0
    altitude = sun_altitude(np.full(1441, noon), start + minutes, np.radians(la), np.radians(lo))
    seconds = np.arange(-60, 61) / 86400.0
    around = lambda k: sun_altitude(np.full(121, noon), start + np.clip(minutes[k] + seconds, 0.0, 1.0), np.radians(la), np.radians(lo))
    low, high = around(altitude.argmin()).min(), around(altitude.argmax()).max()
    row = [f"{year:04d}-{month:02d}-{day:02d}", la, lo, float(low), float(high)]
    for limit in (-0.833, -6.0, -12.0, -18.0):
        below = altitude < limit
        changes = np.nonzero(below[1:] != below[:-1])[0]
        over = lambda a, b, p, q: sun_altitude(a, b, p, q) - limit
        found = [halved(over, noon, start + minutes[i], start + minutes[i + 1], np.radians(la), np.radians(lo)) for i in changes]
        words = " ".join(stamp(noon, f)[0] for f in found)
        row += ["down" if below[0] else "up", words or "none"]
    rows.append(row)
write(
    "sun-nights.csv",
    "evening,lat_deg,lon_deg,lowest_deg,highest_deg,start_set,set_events,start_civil,civil_events,start_nautical,nautical_events,start_astronomical,astronomical_events",
    rows,
)

rows = []
steps = np.arange(-90, 91) * 10.0 / 86400.0
for la in (50.0, 52.0, 56.0, 60.0):
    bright = []
    for day in range(365):
        midnight = sum(erfa.cal2jd(2026, 1, 1)) + day + 1.0
        low = sun_altitude(np.full(181, midnight), steps, np.radians(la), 0.0).min()
        if low > -18.0:
            bright.append(stamp(midnight - 1.0, 0.5)[0][:10])
    assert len(bright) == np.datetime64(bright[-1]).astype(int) - np.datetime64(bright[0]).astype(int) + 1
    rows.append([la, bright[0], bright[-1], str(len(bright))])
write("dark-nights.csv", "lat_deg,first,last,nights", rows)

rows = []
utc1, utc2 = times(160)
lat, lon, height = sites(160)
for k in range(160):
    moon = k % 2 == 0
    r, d = float(rng.uniform(0, 2 * np.pi)), float(np.arcsin(rng.uniform(-1, 1)))
    r, d = np.radians(round(np.degrees(r), 7)), np.radians(round(np.degrees(d), 7))
    la, lo, h = np.radians(round(np.degrees(lat[k]), 7)), np.radians(round(np.degrees(lon[k]), 7)), round(height[k], 3)
    over = moon_over_limb if moon else star_over(r, d)
    grid = utc2[k] + minutes
    values = over(np.full(1441, utc1[k]), grid, la, lo, h)
    changes = np.nonzero((values[1:] > 0) != (values[:-1] > 0))[0]
    found = [stamp(utc1[k], halved(over, utc1[k], grid[i], grid[i + 1], la, lo, h))[0] for i in changes]
    rows.append(
        ["moon" if moon else "star", stamp(utc1[k], utc2[k])[0], np.degrees(la), np.degrees(lo), h, np.degrees(r),
         np.degrees(d), "up" if values[0] > 0 else "down", " ".join(found) or "none", float(values.min()), float(values.max())]
    )
write("events.csv", "what,utc,lat_deg,lon_deg,height_m,ra_deg,dec_deg,starts,events,lowest_deg,highest_deg", rows)
