"""Small FITS files and header cards, with the answers of cfitsio and wcslib. See README.md."""
import ctypes
import json
import os
import sys
import warnings

import numpy
from astropy.io import fits
from astropy.wcs import WCS

cfitsio = ctypes.CDLL("libcfitsio.so.10")
TFLOAT, TDOUBLE = 42, 82
WIDTH, HEIGHT = 7, 5


def read(path, hdu, count, kind):
    """All samples of an image as cfitsio gives them; NaN where it calls them undefined."""
    file, status, anynul = ctypes.c_void_p(), ctypes.c_int(0), ctypes.c_int(0)
    cfitsio.ffopen(ctypes.byref(file), path.encode(), 0, ctypes.byref(status))
    cfitsio.ffmahd(file, hdu + 1, None, ctypes.byref(status))
    number = ctypes.c_double if kind == TDOUBLE else ctypes.c_float
    values = (number * count)()
    undefined = number(float("nan"))
    cfitsio.ffgpv(file, kind, ctypes.c_longlong(1), ctypes.c_longlong(count), ctypes.byref(undefined), values,
                  ctypes.byref(anynul), ctypes.byref(status))
    assert status.value == 0, (path, status.value)
    cfitsio.ffclos(file, ctypes.byref(status))
    return list(values)


def stored(bitpix, planes, random):
    shape = (planes, HEIGHT, WIDTH) if planes > 1 else (HEIGHT, WIDTH)
    if bitpix > 0:
        kind = {8: "u1", 16: ">i2", 32: ">i4", 64: ">i8"}[bitpix]
        info = numpy.iinfo(kind)
        data = random.integers(info.min, info.max, size=shape, dtype=numpy.dtype(kind).newbyteorder("="), endpoint=True)
        data.flat[0], data.flat[1], data.flat[2] = info.min, info.max, 0 if info.min < 0 else 1
        return data.astype(kind)
    kind = ">f4" if bitpix == -32 else ">f8"
    data = random.normal(0, 1000, size=shape)
    data.flat[0], data.flat[3] = 0.0, numpy.nan
    return data.astype(kind)


def images(folder):
    random = numpy.random.default_rng(20261205)
    answers = []
    scalings = [{}, {"BSCALE": 0.25, "BZERO": -12.5}, {"BSCALE": 1.0 / 3.0, "BZERO": 1000.1}]
    unsigned = {8: -128, 16: 32768, 32: 2147483648, 64: 9223372036854775808}
    for bitpix in (8, 16, 32, 64, -32, -64):
        cases = [(cards, 1, 0) for cards in scalings] + [({}, 3, 0), ({}, 1, 1)]
        if bitpix > 0:
            cases += [({"BSCALE": 1, "BZERO": unsigned[bitpix]}, 1, 0), ({"BLANK": "third"}, 1, 0),
                      ({"BLANK": "third", "BSCALE": 0.5, "BZERO": 3.0}, 1, 1)]
        for number, (cards, planes, hdu) in enumerate(cases):
            data = stored(bitpix, planes, random)
            header = {key: (int(data.flat[2]) if value == "third" else value) for key, value in cards.items()}
            raw = [f"BITPIX  = {bitpix:>20}", f"NAXIS   = {data.ndim:>20}"]
            raw += [f"NAXIS{i + 1}  = {length:>20}" for i, length in enumerate(reversed(data.shape))]
            if hdu:
                raw = ["XTENSION= 'IMAGE   '"] + raw + [f"PCOUNT  = {0:>20}", f"GCOUNT  = {1:>20}"]
            else:
                raw = [f"SIMPLE  = {'T':>20}"] + raw
            raw += [f"{key:<8}= {value!r:>20}" for key, value in header.items()] + ["END"]
            unit = "".join(card.ljust(80) for card in raw)
            unit = unit.ljust(-(-len(unit) // 2880) * 2880).encode() + data.tobytes()
            unit += bytes(-len(unit) % 2880)
            primary = b""
            if hdu:
                empty = f"SIMPLE  = {'T':>20}".ljust(80) + f"BITPIX  = {8:>20}".ljust(80) + f"NAXIS   = {0:>20}".ljust(80)
                primary = (empty + "END").ljust(2880).encode()
            name = f"{'m' if bitpix < 0 else ''}{abs(bitpix)}-{number}.fits"
            with open(os.path.join(folder, name), "wb") as file:
                file.write(primary + unit)
            path = os.path.join(folder, name)
            with warnings.catch_warnings():
                warnings.simplefilter("ignore")
                with fits.open(path) as check:
                    assert check[hdu].data.shape == data.shape
            answers.append({
                "file": name, "planes": planes, "bitpix": bitpix,
                "doubles": [None if numpy.isnan(v) else v for v in read(path, hdu, data.size, TDOUBLE)],
                "floats": [None if numpy.isnan(v) else v for v in read(path, hdu, data.size, TFLOAT)],
            })
    with open(os.path.join(folder, "answers.json"), "w") as file:
        json.dump(answers, file, indent=0)


def number(value):
    return repr(float(value)).upper()


def one_header(random, index):
    """Cards of a random linear solution: every form, both parities and orders of axes, some with LONPOLE."""
    form = index % 5
    swapped = random.random() < 0.25
    lon, lat = (2, 1) if swapped else (1, 2)
    dec = random.choice([90.0, -90.0, 89.97, -89.9, random.uniform(-85, 85), random.uniform(-85, 85)])
    ra = random.choice([0.0, 359.99, random.uniform(0, 360)])
    scale = 10 ** random.uniform(-4.3, -1.3)
    turn = random.uniform(0, 2 * numpy.pi)
    parity = -1 if random.random() < 0.5 else 1
    skew = 1 + random.uniform(-0.1, 0.1)
    unit = random.choice(["deg", "deg", "arcsec", None])
    factor = 3600.0 if unit == "arcsec" else 1.0
    cards = {f"CTYPE{lon}": "'RA---TAN'", f"CTYPE{lat}": "'DEC--TAN'"}
    cards["CRPIX1"], cards["CRPIX2"] = number(random.uniform(-3000, 9000)), number(random.uniform(-3000, 9000))
    cards[f"CRVAL{lon}"], cards[f"CRVAL{lat}"] = number(ra * factor), number(dec * factor)
    if unit:
        cards["CUNIT1"] = cards["CUNIT2"] = f"'{unit}'"
    rotation = numpy.array([[numpy.cos(turn), -numpy.sin(turn)], [numpy.sin(turn), numpy.cos(turn)]])
    delta = numpy.array([parity * scale * skew, scale]) * factor
    if form in (0, 3):
        matrix = numpy.diag(delta) @ rotation
        for i in range(2):
            for j in range(2):
                if not (form == 3 and index % 2 and i != j):
                    cards[f"CD{i + 1}_{j + 1}"] = number(matrix[i, j])
        if form == 3:
            cards.update({"CDELT1": "-0.5", "CDELT2": "0.5", "CROTA1": "77.0", "CROTA2": "77.0"})
    else:
        cards["CDELT1"], cards["CDELT2"] = number(delta[0]), number(delta[1])
    if form == 1:
        for i in range(2):
            for j in range(2):
                if not (index % 2 and i == j):
                    cards[f"PC{i + 1}_{j + 1}"] = number(rotation[i, j] if i != j or not index % 2 else 1.0)
    if form == 2:
        cards[f"CROTA{lat}"] = number(numpy.degrees(turn))
    if random.random() < 0.3:
        cards["LONPOLE"] = number(random.choice([0.0, 180.0, 90.0, random.uniform(-180, 360)]))
    return [f"{key:<8}= {value:>20}" for key, value in cards.items()]


def coordinates(folder):
    random = numpy.random.default_rng(20261206)
    answers = []
    for index in range(300):
        cards = one_header(random, index)
        wcs = WCS(fits.Header.fromstring("\n".join(cards), sep="\n"))
        swapped = wcs.wcs.lng == 1
        pixels = random.uniform(0.5, 6000.5, size=(6, 2))
        world = wcs.wcs_pix2world(pixels, 1)
        back = wcs.wcs_world2pix(world, 1)
        assert numpy.abs(back - pixels).max() < 1e-4, (index, cards, back - pixels)
        if swapped:
            world = world[:, ::-1]
        answers.append({"cards": cards, "points": [[*map(float, p), *map(float, w)] for p, w in zip(pixels, world)]})
    with open(os.path.join(folder, "answers.json"), "w") as file:
        json.dump(answers, file, indent=0)


if __name__ == "__main__":
    data = sys.argv[1]
    for name, make in (("images", images), ("wcs", coordinates)):
        os.makedirs(os.path.join(data, name), exist_ok=True)
        make(os.path.join(data, name))
