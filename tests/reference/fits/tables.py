#!/usr/bin/python3
"""tables.py FOLDER : FITS tables of every kind of column, written by astropy 5.2.1, with the values put into them.

Debian package: python3-astropy. FOLDER is tests/Framing.Fits.Tests/Data/tables; answers.json holds for each column the
numbers of every cell (null where undefined) as cfitsio reads them (fits_read_col as double or as text), so writer and
reader are two.
"""
import ctypes, json, os, sys
import numpy as np
from astropy.io import fits

folder = sys.argv[1]
os.makedirs(folder, exist_ok=True)
rng = np.random.default_rng(20262)
N = 9
lib = ctypes.CDLL("libcfitsio.so.10")


def arrays(kind, count):
    out = np.empty(N, object)
    for i in range(N):
        out[i] = (rng.normal(0, 100, (i * 3) % 5)).astype(kind)
    return out


columns = [
    fits.Column("flag", "L", array=rng.integers(0, 2, N).astype(bool)),
    fits.Column("flags", "3L", array=rng.integers(0, 2, (N, 3)).astype(bool)),
    fits.Column("bits", "11X", array=rng.integers(0, 2, (N, 11)).astype(bool)),
    fits.Column("byte", "B", array=rng.integers(0, 255, N).astype("u1")),
    fits.Column("signed", "B", array=rng.integers(0, 255, N).astype("u1")),  # given its offset below
    fits.Column("short", "I", null=-999, array=np.array([1, -999, 3, -4, 5, -999, 32767, -32768, 0], "i2")),
    fits.Column("ushort", "I", bzero=32768, array=rng.integers(0, 65535, N).astype("u2")),
    fits.Column("int", "2J", array=rng.integers(-2**31, 2**31 - 1, (N, 2)).astype("i4"), dim="(2)"),
    fits.Column("long", "K", array=rng.integers(-2**53, 2**53, N).astype("i8")),
    fits.Column("scaled", "I", unit="mag", array=np.arange(N).astype("i2")),
    fits.Column("float", "E", unit="deg", array=np.where(np.arange(N) == 4, np.nan, rng.normal(0, 5, N)).astype("f4")),
    fits.Column("double", "D", array=rng.normal(0, 5, N)),
    fits.Column("cube", "6D", dim="(3,2)", array=rng.normal(0, 5, (N, 2, 3))),
    fits.Column("complex", "C", array=(rng.normal(0, 5, N) + 1j * rng.normal(0, 5, N)).astype("c8")),
    fits.Column("complexes", "2M", array=rng.normal(0, 5, (N, 2)) + 1j * rng.normal(0, 5, (N, 2))),
    fits.Column("name", "12A", array=np.array([f"star {i} of {N}"[:12] for i in range(N)])),
    fits.Column("vshort", "PI()", array=arrays("i2", N)),
    fits.Column("vdouble", "QD()", array=arrays("f8", N)),
    fits.Column("vfloat", "PE()", array=arrays("f4", N)),
]
binary = fits.BinTableHDU.from_columns(columns, name="STARS")
# astropy cannot write these scalings by itself: the cards get their names after writing.
binary.header["AZERO5"], binary.header["ASCAL10"], binary.header["AZERO10"] = -128, 0.25, 10.0
text = fits.TableHDU.from_columns([
    fits.Column("star", "A10", array=np.array([f"HD {i * 1111}" for i in range(N)])),
    fits.Column("count", "I8", null="-1", array=np.array([1, -1, 3, 400, 50000, 6, 7, -8, 99999], "i4")),
    fits.Column("ra", "F12.6", unit="deg", array=rng.uniform(0, 360, N)),
    fits.Column("mag", "E14.6", array=rng.normal(10, 3, N)),
    fits.Column("far", "D25.17", array=rng.normal(0, 1, N) * 1e-200),
], name="TEXTS")
path = os.path.join(folder, "tables.fits")
fits.HDUList([fits.PrimaryHDU(), binary, text]).writeto(path, overwrite=True)
with open(path, "rb+") as out:
    held = out.read()
    out.seek(0)
    out.write(held.replace(b"AZERO5 ", b"TZERO5 ").replace(b"ASCAL10 ", b"TSCAL10 ").replace(b"AZERO10 ", b"TZERO10 "))

TEXT, LOGICAL, BIT = ("A",), ("L",), ("X",)
answers = []
file, status = ctypes.c_void_p(), ctypes.c_int(0)
lib.ffopen(ctypes.byref(file), path.encode(), 0, ctypes.byref(status))
for number, hdu in ((2, binary), (3, text)):
    lib.ffmahd(file, number, None, ctypes.byref(status))
    for c, column in enumerate(hdu.columns, 1):
        cells = []
        for row in range(1, N + 1):
            repeat = ctypes.c_longlong(1)
            if number == 2:
                code, width = ctypes.c_int(), ctypes.c_longlong()
                lib.ffgtclll(file, c, ctypes.byref(code), ctypes.byref(repeat), ctypes.byref(width), ctypes.byref(status))
                if code.value < 0:
                    offset = ctypes.c_longlong()
                    lib.ffgdesll(file, c, ctypes.c_longlong(row), ctypes.byref(repeat), ctypes.byref(offset), ctypes.byref(status))
            any_null = ctypes.c_int()
            if column.format.strip("0123456789").startswith("A"):
                place = ctypes.create_string_buffer(80)
                pointer = ctypes.c_char_p(ctypes.addressof(place))
                lib.ffgcvs(file, c, ctypes.c_longlong(row), ctypes.c_longlong(1), ctypes.c_longlong(1), b"", ctypes.byref(pointer),
                           ctypes.byref(any_null), ctypes.byref(status))
                cells.append(place.value.decode().rstrip())
                continue
            letter = column.format.replace("(", "").strip("0123456789)") if number == 2 else ""
            count = repeat.value * (2 if letter in ("C", "M") else 1)
            if letter in ("L", "X"):
                values = (ctypes.c_char * max(count, 1))()
                read = lib.ffgcl if letter == "L" else lib.ffgcx
                if letter == "L":
                    lib.ffgcfl(file, c, ctypes.c_longlong(row), ctypes.c_longlong(1), ctypes.c_longlong(count), values,
                               (ctypes.c_char * count)(), ctypes.byref(any_null), ctypes.byref(status))
                else:
                    lib.ffgcx(file, c, ctypes.c_longlong(row), ctypes.c_longlong(1), ctypes.c_longlong(count), values, ctypes.byref(status))
                cells.append([v[0] if isinstance(v, bytes) else v for v in values][:count])
                continue
            values = (ctypes.c_double * max(count, 1))()
            if count and letter in ("C", "M"):
                lib.ffgcvm(file, c, ctypes.c_longlong(row), ctypes.c_longlong(1), ctypes.c_longlong(repeat.value), ctypes.c_double(0),
                           values, ctypes.byref(any_null), ctypes.byref(status))
            elif count:
                lib.ffgcvd(file, c, ctypes.c_longlong(row), ctypes.c_longlong(1), ctypes.c_longlong(count), ctypes.c_double(-1.25e300),
                           values, ctypes.byref(any_null), ctypes.byref(status))
            cells.append([None if v == -1.25e300 or v != v else v for v in values][:count])
        if column.name == "count":  # cfitsio compares the undefined text only at the left edge; astropy anywhere in the cell
            cells = [[None if v == -1 else v for v in cell] for cell in cells]
        assert status.value == 0, (column.name, status.value)
        answers.append({"table": hdu.name, "column": column.name, "unit": column.unit, "cells": cells})
with open(os.path.join(folder, "answers.json"), "w") as out:
    json.dump(answers, out)
print(len(answers), "columns")
