#!/usr/bin/python3
"""Writes tests/Framing.Sky.Tests/Data/of-date.places.csv.gz: apparent places by ERFA (Debian python3-erfa 2.0.0.1).

Each row: Julian date TT, ICRS right ascension and declination, apparent right ascension and declination against the true
equator and equinox of date, in degrees. ERFA's own chain: atci13 (IAU 2006/2000A, epv00, light deflection by the Sun) gives
CIRS; right ascension of date = CIRS right ascension - equation of the origins. Star at rest, no parallax. TT stands for
TDB (2 ms).

Rows 1 to 10000: directions even over the sphere, times even over 1990-2060. Rows 10001 to 12000: times over 1900-2200
(epv00 is declared for 1900-2100 and warns beyond). Rows 12001 to 12500: within 5 degrees of the Sun, 1990-2060.
"""
import gzip
import io
import pathlib

import erfa
import numpy as np

SEED = 20260701
TARGET = pathlib.Path(__file__).resolve().parents[2] / "Framing.Sky.Tests/Data/of-date.places.csv.gz"


def sphere(rng, n):
    return rng.uniform(0.0, 360.0, n), np.degrees(np.arcsin(rng.uniform(-1.0, 1.0, n)))


def days(rng, n, first, last):
    return np.round(2451545.0 + (rng.uniform(first, last, n) - 2000.0) * 365.25, 3)


def near_sun(rng, jd):
    earth, _ = erfa.epv00(2451545.0, jd - 2451545.0)
    sun = -np.stack([earth["p"][:, i] for i in range(3)], axis=1)
    sun /= np.linalg.norm(sun, axis=1)[:, None]
    side = rng.normal(size=sun.shape)
    side -= sun * (side * sun).sum(axis=1)[:, None]
    side /= np.linalg.norm(side, axis=1)[:, None]
    angle = np.radians(rng.uniform(0.0, 5.0, len(jd)))[:, None]
    v = sun * np.cos(angle) + side * np.sin(angle)
    return np.degrees(np.arctan2(v[:, 1], v[:, 0])) % 360.0, np.degrees(np.arcsin(v[:, 2]))


def main():
    rng = np.random.default_rng(SEED)
    jd = np.concatenate([days(rng, 10000, 1990, 2060), days(rng, 2000, 1900, 2200), days(rng, 500, 1990, 2060)])
    ra, dec = sphere(rng, 12000)
    ra_sun, dec_sun = near_sun(rng, jd[12000:])
    ra = np.round(np.concatenate([ra, ra_sun]), 6)
    dec = np.round(np.concatenate([dec, dec_sun]), 6)

    ri, di, eo = erfa.atci13(np.radians(ra), np.radians(dec), 0.0, 0.0, 0.0, 0.0, 2451545.0, jd - 2451545.0)
    ra_date = np.degrees(erfa.anp(ri - eo))
    dec_date = np.degrees(di)

    text = io.StringIO()
    text.write("jd_tt,ra_icrs_deg,dec_icrs_deg,ra_of_date_deg,dec_of_date_deg\n")
    for row in zip(jd, ra, dec, ra_date, dec_date):
        text.write("%.3f,%.6f,%.6f,%.9f,%.9f\n" % row)
    with open(TARGET, "wb") as raw, gzip.GzipFile(filename="", mode="wb", compresslevel=9, fileobj=raw, mtime=0) as out:
        out.write(text.getvalue().encode("ascii"))
    print(len(jd), "rows,", TARGET.stat().st_size, "bytes")


if __name__ == "__main__":
    main()
