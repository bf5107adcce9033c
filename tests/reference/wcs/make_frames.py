#!/usr/bin/env python3
"""Places of FK5 and FK4 carried to ICRS, answered by ERFA and by astropy.

Debian: apt-get install python3-erfa python3-astropy (written with ERFA 2.0.0, astropy 5.2.1).
Run:    /usr/bin/python3 tests/reference/wcs/make_frames.py
Writes: tests/Framing.Sky.Tests/Data/frames.csv

frame, equinox, epoch, right ascension and declination there, and in ICRS by the source; the last column is the tolerance
in seconds of arc. FK5: pmat76 and fk5hip. FK4 of B1950: fk45z, then fk5hip. FK4 of other equinoxes: astropy, which takes
elliptic aberration and the spin of FK4 by other roads. All degrees.
"""
import pathlib

import astropy.units as u
import erfa
import numpy
from astropy.coordinates import FK4, ICRS, SkyCoord
from astropy.time import Time

OUT = pathlib.Path(__file__).resolve().parents[2] / "Framing.Sky.Tests" / "Data" / "frames.csv"


def sphere(v):
    return numpy.degrees(numpy.arctan2(v[1], v[0])) % 360.0, numpy.degrees(numpy.arctan2(v[2], numpy.hypot(v[0], v[1])))


def main():
    random = numpy.random.default_rng(5)
    turn, _ = erfa.fk5hip()
    lines = ["frame,equinox,epoch,ra_deg,dec_deg,icrs_ra_deg,icrs_dec_deg,tolerance_arcsec,source"]

    def place(i):
        ra = random.uniform(0.0, 360.0)
        dec = (89.99, -89.99)[i // 10 % 2] if i % 10 == 0 else numpy.degrees(numpy.arcsin(random.uniform(-1.0, 1.0)))
        return ra, dec

    def add(frame, equinox, epoch, ra, dec, icrs, tolerance, source):
        values = ",".join(repr(float(x)) for x in (equinox, epoch, ra, dec, *icrs, tolerance))
        lines.append(f"{frame},{values},{source}")

    for i in range(200):
        ra, dec = place(i)
        year = 2000.0 if i % 5 == 0 else float(random.uniform(1900.0, 2100.0))
        epj = erfa.epj2jd(year)
        to_year = erfa.pmat76(*epj)
        v = turn @ (to_year.T @ erfa.s2c(numpy.radians(ra), numpy.radians(dec)))
        add("FK5", year, year, ra, dec, sphere(v), 1e-6, "ERFA pmat76 fk5hip")
    for i in range(200):
        ra, dec = place(i)
        epoch = 1950.0 if i % 2 else float(random.uniform(1930.0, 2030.0))
        r, d = erfa.fk45z(numpy.radians(ra), numpy.radians(dec), epoch)
        add("FK4", 1950.0, epoch, ra, dec, sphere(turn @ erfa.s2c(r, d)), 1e-4, "ERFA fk45z fk5hip")
    for i in range(100):
        ra, dec = place(i)
        year = float(random.uniform(1875.0, 1983.0))
        there = SkyCoord(ra * u.deg, dec * u.deg, frame=FK4(equinox=Time(year, format="byear"),
                                                            obstime=Time(year, format="byear")))
        icrs = there.transform_to(ICRS())
        add("FK4", year, year, ra, dec, (icrs.ra.deg, icrs.dec.deg), 0.02, "astropy FK4")
    OUT.write_text("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
