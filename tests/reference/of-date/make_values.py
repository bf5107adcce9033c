#!/usr/bin/python3
"""Writes three small tables into tests/Framing.Sky.Tests/Data, computed by ERFA (Debian python3-erfa 2.0.0.1).

terrestrial-time.csv   UTC, and the Julian date TT in two parts (dtf2d, utctai, taitt): both sides of every half year
                       1960-2025, and random moments 1972-2025
proper-motion.csv      a place, its motion per Julian year, and the place after some years (pmpx without parallax and
                       radial velocity); motions up to 20 arcsec a year, a third of the places within 1 degree of a pole
sun-of-date.csv        the Sun's apparent place against the true equator and equinox of date, from the Earth's centre
                       (epv00 with light time, ab, pnm06a), 1900-2200
"""
import datetime
import pathlib
import warnings

import erfa
import numpy as np

DATA = pathlib.Path(__file__).resolve().parents[2] / "Framing.Sky.Tests/Data"


def times(rng):
    moments = []
    for year in range(1960, 2026):
        for month in (1, 7):
            day = datetime.datetime(year, month, 1)
            moments += [day - datetime.timedelta(seconds=1), day] if (year, month) != (1960, 1) else [day]
    first, last = datetime.datetime(1972, 1, 1), datetime.datetime(2025, 12, 31)
    for _ in range(200):
        seconds = int(rng.integers(0, int((last - first).total_seconds()) * 1000)) / 1000
        moments.append(first + datetime.timedelta(seconds=seconds))
    with open(DATA / "terrestrial-time.csv", "w") as out:
        out.write("utc,jd_tt_day,jd_tt_fraction\n")
        for m in moments:
            u1, u2 = erfa.dtf2d("UTC", m.year, m.month, m.day, m.hour, m.minute, m.second + m.microsecond * 1e-6)
            day, fraction = erfa.taitt(*erfa.utctai(u1, u2))
            out.write(f"{m.isoformat(timespec='milliseconds')}Z,{day:.1f},{fraction:.15f}\n")
    print("times:", len(moments))


def proper_motion(rng):
    n = 300
    ra = np.round(rng.uniform(0, 360, n), 6)
    dec = np.degrees(np.arcsin(rng.uniform(-1, 1, n)))
    dec[:50] = 90 - rng.uniform(0, 1, 50)
    dec[50:100] = -90 + rng.uniform(0, 1, 50)
    dec = np.round(dec, 6)
    east, north = np.round(rng.uniform(-20, 20, (2, n)), 4)
    years = np.round(rng.uniform(-100, 200, n), 2)
    arcsec = np.radians(1 / 3600)
    v = erfa.pmpx(
        np.radians(ra), np.radians(dec), east * arcsec / np.cos(np.radians(dec)), north * arcsec, 0.0, 0.0, years, np.zeros(3)
    )
    with open(DATA / "proper-motion.csv", "w") as out:
        out.write("ra_deg,dec_deg,pm_east_arcsec,pm_north_arcsec,years,x,y,z\n")
        for row in zip(ra, dec, east, north, years, v[:, 0], v[:, 1], v[:, 2]):
            out.write("%.6f,%.6f,%.4f,%.4f,%.2f,%.15f,%.15f,%.15f\n" % row)
    print("proper motions:", n)


def sun(rng):
    n = 300
    jd = np.round(2451545.0 + rng.uniform(-100, 200, n) * 365.25, 3)
    with open(DATA / "sun-of-date.csv", "w") as out:
        out.write("jd_tt,ra_of_date_deg,dec_of_date_deg\n")
        for t in jd:
            days = t - 2451545.0
            earth_h, earth = erfa.epv00(2451545.0, days)
            delay = 0.0
            for _ in range(5):
                then_h, then = erfa.epv00(2451545.0, days - delay)
                to_sun = then["p"] - then_h["p"] - earth["p"]
                distance = np.linalg.norm(to_sun)
                delay = distance * erfa.AULT / 86400.0
            v = earth["v"] * erfa.AULT / 86400.0
            seen = erfa.ab(to_sun / distance, v, distance, np.sqrt(1.0 - v @ v))
            x, y, z = erfa.pnm06a(2451545.0, days) @ seen
            out.write("%.3f,%.9f,%.9f\n" % (t, np.degrees(np.arctan2(y, x)) % 360.0, np.degrees(np.arcsin(z))))
    print("Sun:", n)


if __name__ == "__main__":
    warnings.simplefilter("ignore")
    times(np.random.default_rng(1))
    proper_motion(np.random.default_rng(2))
    sun(np.random.default_rng(3))
