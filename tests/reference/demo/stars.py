"""Picks lonely stars of the catalogue's source table for the test of the demo pictures.

/usr/bin/python3 stars.py STARS.CSV.GZ > ../../Framing.Imaging.Tests/Data/demo/stars.csv
The table is the one that tests/reference/catalogue names; positions ICRS at 2026.05, motion applied along great circles' tangents.
A star is taken when V is 6 to 9 and nothing brighter than V 11 stands within 7 arcmin.
"""
import csv
import gzip
import math
import sys

rows = []
with gzip.open(sys.argv[1], "rt") as file:
    for row in csv.DictReader(file):
        ra, dec = float(row["ra_deg"]), float(row["dec_deg"])
        for name, ra0, dec0, east, north in (("hearth-wide.fits", 39.6, 61.3, 3.6, 2.4), ("shore.png", 60.0, 36.6, 2.6, 1.6)):
            if abs((ra - ra0) * math.cos(math.radians(dec0))) < east and abs(dec - dec0) < north:
                year = 26.05 / 3.6e6
                ra += year * float(row["pm_ra_cosdec_mas_yr"] or 0) / math.cos(math.radians(dec))
                rows.append((name, ra, dec + year * float(row["pm_dec_mas_yr"] or 0), float(row["v_mag"])))
print("picture,ra_deg,dec_deg,v")
for name, ra, dec, v in rows:
    near = sum(1 for n, r, d, m in rows if n == name and m < 11 and math.hypot((r - ra) * math.cos(math.radians(dec)), d - dec) < 7 / 60)
    if 6 < v < 9 and near == 1:
        print(f"{name},{ra:.6f},{dec:.6f},{v:.2f}")
