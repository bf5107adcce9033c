"""Corners of planned panels by a reference library.

Debian packages: python3-astropy (wcslib through astropy.wcs).
Reads reports that `framing plan PLAN --out DIR` wrote, of the plans in samples/ and tests/Framing.Cli.Tests/Data/, and
feeds their centres and angles, as printed, to a TAN header. In the folder of this file:
    for plan in ../../../samples/{single-frame,two-panels,six-panels}.toml ../../Framing.Cli.Tests/Data/{mirrored,polar}.toml
    do framing plan $plan --out corners/$(basename $plan .toml); done
    /usr/bin/python3 make_corners.py corners/{single-frame,two-panels,six-panels,mirrored,polar} \
        > ../../Framing.Cli.Tests/Data/report-corners.csv
"""
import json
import math
import pathlib
import sys

from astropy.wcs import WCS

PIXEL_UM = 4.63  # in all of these plans


def corners(report, panel):
    width, height = report["rig"]["framePx"]
    scale = math.degrees(PIXEL_UM / 1000.0 / report["rig"]["focalLengthMm"])
    angle = math.radians(panel["positionAngleDeg"])
    side = 1.0 if report["rig"]["mirrored"] else -1.0
    wcs = WCS(naxis=2)
    wcs.wcs.ctype = ["RA---TAN", "DEC--TAN"]
    wcs.wcs.crpix = [(width + 1) / 2.0, (height + 1) / 2.0]
    wcs.wcs.crval = [panel["centre"]["raDeg"], panel["centre"]["decDeg"]]
    wcs.wcs.cd = [
        [side * scale * math.cos(angle), scale * math.sin(angle)],
        [-side * scale * math.sin(angle), scale * math.cos(angle)],
    ]
    right, top = width + 0.5, height + 0.5
    return wcs.wcs_pix2world([[0.5, top], [right, top], [right, 0.5], [0.5, 0.5]], 1)


print("sample,panel,ra_deg,dec_deg,position_angle_deg,corner,corner_ra_deg,corner_dec_deg")
for folder in map(pathlib.Path, sys.argv[1:]):
    name = folder.name
    with open(folder / "report.json", encoding="utf-8") as file:
        report = json.load(file)
    for panel in report["panels"]:
        for number, (ra, dec) in enumerate(corners(report, panel), 1):
            print(
                f"{name},{panel['number']},{panel['centre']['raDeg']!r},{panel['centre']['decDeg']!r},"
                f"{panel['positionAngleDeg']!r},{number},{ra!r},{dec!r}"
            )
