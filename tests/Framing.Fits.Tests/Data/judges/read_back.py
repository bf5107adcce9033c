#!/usr/bin/python3
"""read_back.py FILE... : reads the picture of each FITS file with astropy and with cfitsio, and prints one JSON list.

Debian packages: python3-astropy, libcfitsio10. Each entry: file, and for both readers the shape, the kind of samples, the
SHA-256 of the samples (little-endian, row after row), and the values of the keywords of a solution.
"""
import ctypes, hashlib, json, sys
import numpy as np
from astropy.io import fits

KEYS = ["CRVAL1", "CRVAL2", "CRPIX1", "CRPIX2", "CD1_1", "CD1_2", "CD2_1", "CD2_2"]
lib = ctypes.CDLL("libcfitsio.so.10")
KINDS = {(8, 0): (11, "u1"), (8, 1): (12, "i1"), (16, 0): (21, "i2"), (16, 1): (20, "u2"), (32, 0): (31, "i4"),
         (32, 1): (30, "u4"), (64, 0): (81, "i8"), (64, 1): (80, "u8"), (-32, 0): (42, "f4"), (-64, 0): (82, "f8")}


def digest(samples):
    if samples.dtype.kind == "f":  # one NaN for all
        samples = np.where(np.isnan(samples), samples.dtype.type(np.nan), samples)
    return hashlib.sha256(np.ascontiguousarray(samples).astype(samples.dtype.newbyteorder("<")).tobytes()).hexdigest()


def by_astropy(name):
    with fits.open(name) as units:
        unit = next(u for u in units if u.is_image and u.data is not None)
        return {"shape": list(unit.data.shape), "kind": unit.data.dtype.str[1:], "sha256": digest(unit.data),
                "keys": {k: unit.header[k] for k in KEYS if k in unit.header}}


def by_cfitsio(name):
    status, file = ctypes.c_int(0), ctypes.c_void_p()
    lib.ffdopn(ctypes.byref(file), name.encode(), 0, ctypes.byref(status))  # moves to the first unit with an image
    if status.value:
        raise OSError(f"cfitsio: status {status.value}")
    kind, naxis, size = ctypes.c_int(), ctypes.c_int(), (ctypes.c_long * 9)()
    lib.ffgipr(file, 9, ctypes.byref(kind), ctypes.byref(naxis), size, ctypes.byref(status))
    zero = ctypes.c_double(0)
    missing = ctypes.c_int(0)
    lib.ffgky(file, 82, b"BZERO", ctypes.byref(zero), None, ctypes.byref(missing))
    code, text = KINDS[(kind.value, int(missing.value == 0 and zero.value != 0))]
    if status.value:
        raise OSError(f"cfitsio: status {status.value}")
    shape = [size[i] for i in range(naxis.value)][::-1]
    samples = np.empty(shape, text)
    found = ctypes.c_int()
    nothing = np.array([np.nan], text).ctypes.data_as(ctypes.c_void_p) if text[0] == "f" else None
    lib.ffgpv(file, code, ctypes.c_longlong(1), ctypes.c_longlong(samples.size), nothing,
              samples.ctypes.data_as(ctypes.c_void_p), ctypes.byref(found), ctypes.byref(status))
    keys = {}
    for key in KEYS:
        value, missing = ctypes.c_double(), ctypes.c_int(0)
        lib.ffgky(file, 82, key.encode(), ctypes.byref(value), None, ctypes.byref(missing))
        if missing.value == 0:
            keys[key] = value.value
    lib.ffclos(file, ctypes.byref(status))
    if status.value:
        raise OSError(f"cfitsio: status {status.value}")
    return {"shape": shape, "kind": text, "sha256": digest(samples), "keys": keys}


def asked(reader, name):
    try:
        return reader(name)
    except Exception as problem:  # whatever a damaged file makes of the reader is an answer here
        return {"error": f"{type(problem).__name__}: {problem}"}


if __name__ == "__main__":
    print(json.dumps([{"file": n, "astropy": asked(by_astropy, n), "cfitsio": asked(by_cfitsio, n)} for n in sys.argv[1:]]))
