"""Writes small star tables with astropy, for the reading of tables that users bring.

Run from this folder: /usr/bin/python3 make.py ../../Framing.Workshop.Tests/Data/star-tables
The same bytes come out each time. The places are invented: a row i has RA 40 + 0.01 i, Dec 62 - 0.005 i, magnitude 11 + 0.02 i.
"""

import sys

import numpy as np
from astropy.io import fits

folder = sys.argv[1]
rows = np.arange(60)
ra = 40.0 + 0.01 * rows
dec = 62.0 - 0.005 * rows
magnitude = 11.0 + 0.02 * rows


def write(name, columns, cls=fits.BinTableHDU):
    first = fits.BinTableHDU.from_columns([fits.Column("NOTE", "4A", array=np.array(["none"]))], name="OTHER")
    table = cls.from_columns(columns, name="STARS")
    fits.HDUList([fits.PrimaryHDU(), first, table]).writeto(f"{folder}/{name}", overwrite=True)


missing = magnitude.astype("f4").copy()
missing[7] = np.nan
write(
    "motions.fits",
    [
        fits.Column("Source", "K", array=rows + 1000),
        fits.Column("RA_ICRS", "D", unit="deg", array=ra),
        fits.Column("DE_ICRS", "D", unit="deg", array=dec),
        fits.Column("Gmag", "E", unit="mag", array=missing),
        fits.Column("pmRA", "E", unit="mas/yr", array=np.full(60, 3000.0)),
        fits.Column("pmDE", "E", unit="mas/yr", array=np.full(60, -2000.0)),
        fits.Column("ref_epoch", "E", unit="yr", array=np.full(60, 2016.0)),
    ],
)
write(
    "text.fits",
    [
        fits.Column("Name", "A8", array=np.array([f"S{i}" for i in rows])),
        fits.Column("RAJ2000", "F12.7", unit="deg", array=ra),
        fits.Column("DEJ2000", "F12.7", unit="deg", array=dec),
        fits.Column("Vmag", "F6.2", unit="mag", array=magnitude),
    ],
    fits.TableHDU,
)
write(
    "hours.fits",
    [
        fits.Column("ra", "D", unit="h", array=ra / 15.0),
        fits.Column("dec", "D", unit="deg", array=dec),
        fits.Column("mag", "D", array=magnitude),
    ],
)
write("nothing.fits", [fits.Column("flux", "D", array=magnitude)])
