#!/usr/bin/env python3
"""World coordinates of random headers and the corners of random frames, answered by wcslib.

Debian: apt-get install python3-astropy (written with astropy 5.2.1, which carries wcslib 7.12).
Run:    /usr/bin/python3 tests/reference/wcs/make_answers.py
Writes: tests/Framing.Sky.Tests/Data/wcs-headers.json and panel-corners.json

The same seed gives the same files. Angles are degrees, pixels count as FITS does (first centre 1).
"""
import json
import pathlib

import astropy
import numpy
from astropy import wcs

DATA = pathlib.Path(__file__).resolve().parents[2] / "Framing.Sky.Tests" / "Data"
ARCSEC_PER_RADIAN = 180.0 / numpy.pi * 3600.0
SOURCE = f"astropy {astropy.__version__} (wcslib {wcs._wcs.__version__})"


def solver(cards):
    """A wcslib object for header cards; nothing that the cards do not say is set."""
    w = wcs.WCS(naxis=2)
    w.wcs.ctype = ["RA---TAN", "DEC--TAN"]
    w.wcs.cunit = ["deg", "deg"]
    w.wcs.crpix = [cards["CRPIX1"], cards["CRPIX2"]]
    w.wcs.crval = [cards["CRVAL1"], cards["CRVAL2"]]
    if "CD1_1" in cards:
        w.wcs.cd = [[cards["CD1_1"], cards["CD1_2"]], [cards["CD2_1"], cards["CD2_2"]]]
    else:
        w.wcs.cdelt = [cards["CDELT1"], cards["CDELT2"]]
        if "CROTA2" in cards:
            w.wcs.crota = [0.0, cards["CROTA2"]]
        elif "PC1_1" in cards:
            w.wcs.pc = [[cards["PC1_1"], cards["PC1_2"]], [cards["PC2_1"], cards["PC2_2"]]]
    if "LONPOLE" in cards:
        w.wcs.lonpole = cards["LONPOLE"]
    w.wcs.set()
    return w


def reference_point(random, i):
    """The whole sky evenly, with every eighth at or beside a pole and every eighth at right ascension 0h."""
    ra = random.uniform(0.0, 360.0)
    dec = numpy.degrees(numpy.arcsin(random.uniform(-1.0, 1.0)))
    if i % 8 == 1:
        dec = (90.0, -90.0, 89.999, -89.9999, 88.0, -88.5)[i // 8 % 6]
    if i % 8 == 2:
        ra = float(random.choice([0.0, 1e-7, 359.9999999, 0.2]))
    return ra, dec


def headers(count):
    random = numpy.random.RandomState(20261205)
    answers = []
    for i in range(count):
        ra, dec = reference_point(random, i)
        scale = 10.0 ** random.uniform(-5.0, -1.5)
        stretch = random.uniform(0.8, 1.25)
        sign = float(random.choice([-1.0, 1.0]))
        turn = random.uniform(-180.0, 180.0)
        cards = {
            "CRPIX1": random.uniform(-500.0, 4000.0),
            "CRPIX2": random.uniform(-500.0, 3000.0),
            "CRVAL1": ra,
            "CRVAL2": dec,
        }
        form = ("CROTA", "PC", "CD")[i % 3]
        if form == "CROTA":
            cards.update(CDELT1=sign * scale, CDELT2=scale * stretch, CROTA2=turn)
        elif form == "PC":
            cos, sin = numpy.cos(numpy.radians(turn)), numpy.sin(numpy.radians(turn))
            skew = random.uniform(-0.05, 0.05)
            cards.update(CDELT1=sign * scale, CDELT2=scale * stretch)
            cards.update(PC1_1=cos, PC1_2=-sin + skew, PC2_1=sin, PC2_2=cos)
        else:
            m = random.normal(size=(2, 2)) * scale
            while abs(numpy.linalg.det(m)) < 0.1 * scale**2:
                m = random.normal(size=(2, 2)) * scale
            cards.update(CD1_1=m[0, 0], CD1_2=m[0, 1], CD2_1=m[1, 0], CD2_2=m[1, 1])
        # At the pole itself every other header says LONPOLE; elsewhere one in five does.
        if i // 48 % 2 == 1 if dec == 90.0 else i % 5 == 3:
            cards["LONPOLE"] = float(random.choice([180.0, 0.0, 123.456]))
        reach = 0.5 / scale  # pixels: up to about half a degree, further for the coarse ones
        pixels = [[cards["CRPIX1"], cards["CRPIX2"] + 1.0]]
        for _ in range(4):
            pixels.append(
                [
                    cards["CRPIX1"] + random.uniform(-reach, reach),
                    cards["CRPIX2"] + random.uniform(-reach, reach),
                ]
            )
        sky = solver(cards).wcs.p2s(pixels, 1)["world"]
        answers.append({"cards": cards, "pixels": pixels, "sky": sky.tolist()})
    return answers


def corners(count):
    random = numpy.random.RandomState(20270314)
    answers = []
    for i in range(count):
        ra, dec = reference_point(random, i)
        columns, rows = int(random.randint(600, 9600)), int(random.randint(400, 6500))
        pixel = round(random.uniform(1.5, 9.0), 2)
        focal = round(10.0 ** random.uniform(1.7, 3.4), 1)
        binning = int(random.choice([1, 1, 2, 3]))
        mirrored = bool(i % 2)
        turn = random.uniform(0.0, 360.0)
        w, h = columns // binning, rows // binning
        scale = pixel * binning / (1000.0 * focal) * ARCSEC_PER_RADIAN / 3600.0
        # The older form: CROTA2 is minus the position angle of up, for both parities (WCS Paper II, section 6.1).
        cards = {
            "CRPIX1": (w + 1) / 2.0,
            "CRPIX2": (h + 1) / 2.0,
            "CRVAL1": ra,
            "CRVAL2": dec,
            "CDELT1": scale if mirrored else -scale,
            "CDELT2": scale,
            "CROTA2": -turn,
            "LONPOLE": 180.0,
        }
        edges = [[0.5, h + 0.5], [w + 0.5, h + 0.5], [w + 0.5, 0.5], [0.5, 0.5]]
        sky = solver(cards).wcs.p2s(edges, 1)["world"]
        answers.append(
            {
                "ra": ra,
                "dec": dec,
                "positionAngle": turn,
                "mirrored": mirrored,
                "widthPx": columns,
                "heightPx": rows,
                "pixelMicrometres": pixel,
                "focalLengthMillimetres": focal,
                "binning": binning,
                "corners": sky.tolist(),
            }
        )
    return answers


def write(name, about, answers):
    lines = ",\n".join("  " + json.dumps(answer) for answer in answers)
    text = f'{{\n "about": {json.dumps(about)},\n "source": {json.dumps(SOURCE)},\n "answers": [\n{lines}\n ]\n}}\n'
    json.loads(text)
    (DATA / name).write_text(text)
    print(name, len(answers), "answers,", len(text), "bytes")


if __name__ == "__main__":
    write(
        "wcs-headers.json",
        "Pixels of random TAN headers (CDELT+CROTA2, PC+CDELT, CD; both parities; poles) and where wcslib puts them.",
        headers(300),
    )
    write(
        "panel-corners.json",
        "Outer corners (top-left, top-right, bottom-right, bottom-left as displayed) of random frames.",
        corners(200),
    )
