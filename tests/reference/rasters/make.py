"""JPEG and TIFF files of known samples, and those samples (answers.json).

Written by tifffile, libtiff's tiffcp and Pillow; the answers are the samples the files were made from, never read back.
Run: /usr/bin/python3 make.py FOLDER
"""
import json
import os
import struct
import subprocess
import sys
import zlib

import numpy as np
import tifffile
from PIL import Image
from PIL.TiffImagePlugin import IFDRational

folder = sys.argv[1]
os.makedirs(folder, exist_ok=True)
rng = np.random.default_rng(20261206)
H, W = 13, 37
answers = []


def path(name):
    return os.path.join(folder, name)


def note(name, planes, fmt, shown, tolerance=0):
    shown = np.asarray(shown)
    if shown.ndim == 2:
        shown = shown[:, :, None]
    height, width, step = shown.shape
    values = [float(v) if np.issubdtype(shown.dtype, np.floating) else int(v) for v in shown.ravel()]
    values = [None if v != v else v for v in values]
    same = next((a["file"] for a in answers if a.get("samples") == values), None)
    answers.append({
        "file": name, "width": width, "height": height, "planes": planes, "step": step, "format": fmt,
        "tolerance": tolerance, **({"as": same} if same else {"samples": values}),
    })


def samples(dtype, step):
    shape = (H, W) if step == 1 else (H, W, step)
    dtype = np.dtype(dtype)
    if dtype.kind == "f":
        data = (rng.normal(1000.0, 300.0, shape)).astype(dtype)
    else:
        info = np.iinfo(dtype)
        data = rng.integers(info.min, info.max, shape, dtype=dtype, endpoint=True)
        data.ravel()[:2] = [info.min, info.max]
    return data


def by_hand(name, order, body, more):
    """A grey TIFF of one strip, written out byte by byte."""
    tags = sorted([(256, W), (257, H), (262, 1), (273, 8), (277, 1), (278, H), (279, len(body)), *more])
    body += b"\0" * (len(body) % 2)
    out = struct.pack(order + "2sHI", b"II" if order == "<" else b"MM", 42, 8 + len(body)) + body
    out += struct.pack(order + "H", len(tags))
    for tag, value in tags:
        out += struct.pack(order + "HHII", tag, 4, 1, value)
    open(path(name), "wb").write(out + b"\0\0\0\0")


NAMES = {"u1": "uint8", "u2": "uint16", "u4": "uint32", "i1": "int8", "i2": "int16", "i4": "int32",
         "f2": "float32", "f4": "float32", "f8": "float64"}

# Every kind of sample, grey and colours, both byte orders, strips and tiles, planes together and apart, classic and wide.
bases = {}
for kind in NAMES:
    for step in (1, 3):
        data = samples(kind, step)
        for order, mark in (("<", "le"), (">", "be")):
            name = f"{kind}-{step}-{mark}.tif"
            tifffile.imwrite(path(name), data, byteorder=order, photometric="rgb" if step == 3 else "minisblack",
                             rowsperstrip=8, bigtiff=kind in ("i1", "f8"), metadata=None)
            note(name, step, NAMES[kind], data)
            bases[name] = (data, step, NAMES[kind])
for kind in ("u1", "u2", "f4"):
    data = samples(kind, 3)
    name = f"{kind}-apart-tiles.tif"
    tifffile.imwrite(path(name), np.moveaxis(data, 2, 0), photometric="rgb", planarconfig="separate", tile=(16, 16),
                     byteorder=">", metadata=None)
    note(name, 3, NAMES[kind], data)

# Transparency, and samples that are nothing known.
data = samples("u2", 4)
data[0, 0, 3] = 0
tifffile.imwrite(path("u2-alpha.tif"), data, photometric="rgb", extrasamples=["unassalpha"], metadata=None)
note("u2-alpha.tif", 3, "uint16", data)
data = samples("u1", 2)
tifffile.imwrite(path("u1-grey-extra.tif"), data, photometric="minisblack", planarconfig="contig",
                 extrasamples=["unspecified"], metadata=None)
note("u1-grey-extra.tif", 1, "uint8", data[:, :, :1])

# White is zero; palette; fewer than 8 bits.
for kind, most in (("u1", 255), ("u2", 65535)):
    data = samples(kind, 1)
    tifffile.imwrite(path(f"{kind}-white.tif"), data, photometric="miniswhite", metadata=None)
    note(f"{kind}-white.tif", 1, NAMES[kind], most - data.astype(int))
data = samples("u1", 1)
palette = rng.integers(0, 65536, (3, 256), dtype="u2")
tifffile.imwrite(path("palette.tif"), data, photometric="palette", colormap=palette, metadata=None)
note("palette.tif", 3, "uint16", np.moveaxis(palette[:, data], 0, 2))
bits = rng.integers(0, 2, (H, W)).astype(bool)
Image.fromarray(bits).save(path("bits1.tif"))
note("bits1.tif", 1, "uint8", bits * 255)
for mode, name in ((4, "bits4.tif"), (2, "bits2.tif")):
    # Packed by hand: no writer at hand packs these.
    most = 2**mode - 1
    data = rng.integers(0, most + 1, (H, W))
    rows = []
    for row in data:
        text = "".join(format(v, f"0{mode}b") for v in row)
        text += "0" * (-len(text) % 8)
        rows += [int(text[i:i + 8], 2) for i in range(0, len(text), 8)]
    by_hand(name, "<", bytes(rows), [(258, mode), (259, 1)])
    note(name, 1, "uint8", data * (255 // most))

# Compressions and layouts as libtiff writes them.
WAYS = {"lzw": ["-c", "lzw"], "lzw2": ["-c", "lzw:2"], "zip": ["-c", "zip"], "zip2": ["-c", "zip:2"],
        "packbits": ["-c", "packbits"]}
LAYOUTS = {"strips": ["-s", "-r", "5"], "tiles": ["-t", "-w", "16", "-l", "32"],
           "apart": ["-p", "separate", "-s", "-r", "5", "-B"], "wide": ["-8", "-t", "-w", "16", "-l", "16", "-B"]}
for base in ("u1-3-le.tif", "u2-3-le.tif", "u2-1-be.tif", "f4-1-le.tif", "f4-3-le.tif"):
    for way, options in WAYS.items():
        if base[0] == "f" and way.endswith("2"):
            way, options = way[:-1] + "3", [options[0], options[1][:-1] + "3"]
        for layout, more in LAYOUTS.items():
            data, step, fmt = bases[base]
            if step == 1 and layout == "apart":
                continue
            if way.endswith("3") and "-B" in more:
                # libtiff 4.5.0 cannot read back what it writes there.
                continue
            name = f"{base[:4]}-{way}-{layout}.tif"
            source = path(base)
            if layout == "apart":
                # tiffcp parts 8-bit planes only, so the others are parted before.
                source = path("parted.tmp")
                tifffile.imwrite(source, np.moveaxis(data, 2, 0), photometric="rgb", planarconfig="separate", metadata=None)
            subprocess.run(["tiffcp", *options, *more, source, path(name)], check=True)
            note(name, step, fmt, data)

# The predictor of IEEE numbers (TIFF Technical Note 3): bytes of a row by their weight, highest first, then differences.
data, _, _ = bases["f4-1-le.tif"]
for order in "<>":
    rows = []
    for row in data:
        planes = np.frombuffer(row.astype(">f4").tobytes(), "u1").reshape(W, 4).T.ravel()
        rows.append(np.diff(planes, prepend=np.zeros(1, "u1")).tobytes())
    name = "f4-1-note3-le.tif" if order == "<" else "f4-1-note3-be.tif"
    by_hand(name, order, zlib.compress(b"".join(rows)), [(258, 32), (259, 8), (317, 3), (339, 3)])
    note(name, 1, "float32", data)


def turned(stored, code):
    """What is shown of stored rows: Exif, Orientation: where stored row 0 and column 0 stand."""
    return {1: stored, 2: stored[:, ::-1], 3: stored[::-1, ::-1], 4: stored[::-1],
            5: np.swapaxes(stored, 0, 1), 6: np.swapaxes(stored[::-1], 0, 1),
            7: np.swapaxes(stored[::-1, ::-1], 0, 1), 8: np.swapaxes(stored[:, ::-1], 0, 1)}[code]


# The eight orientations, as TIFF and as JPEG (there of smooth colours, so that the loss is small).
small = samples("u2", 3)
y, x = np.mgrid[0:40, 0:56]
smooth = np.stack([x * 4, y * 6, 200 - 2 * x - y], axis=2).astype("u1")
for code in range(1, 9):
    name = f"turned-{code}.tif"
    tifffile.imwrite(path(name), small, photometric="rgb", metadata=None, extratags=[(274, 3, 1, code, True)])
    note(name, 3, "uint16", turned(small, code))
    name = f"turned-{code}.jpg"
    exif = Image.Exif()
    exif[274] = code
    exif[272] = "a camera"
    tags = {}
    tags[33434] = IFDRational(1, 8)
    tags[37386] = IFDRational(250, 1)
    tags[36867] = "2026:02:17 22:04:05"
    if code != 2:
        tags[36881] = "+01:00"
    exif[34665] = tags
    Image.fromarray(smooth).save(path(name), quality=97, subsampling=0, exif=exif, progressive=code % 2 == 0)
    note(name, 3, "uint8", turned(smooth, code), 6)
Image.fromarray(smooth[:, :, 0]).save(path("grey.jpg"), quality=97)
note("grey.jpg", 1, "uint8", smooth[:, :, 0], 4)
Image.fromarray(smooth).save(path("subsampled.jpg"), quality=95, subsampling=2)
note("subsampled.jpg", 3, "uint8", smooth, 14)

# Kinds that are refused.
Image.fromarray(smooth).convert("CMYK").save(path("refused-cmyk.jpg"))
Image.fromarray(smooth).convert("CMYK").save(path("refused-cmyk.tif"))
Image.fromarray(smooth).save(path("refused-jpeg.tif"), compression="jpeg")
Image.fromarray(bits).save(path("refused-fax.tif"), compression="group4")

os.remove(path("parted.tmp"))
with open(path("answers.json"), "w") as out:
    out.write("[\n" + ",\n".join(json.dumps(a, separators=(",", ":")) for a in answers) + "\n]\n")
print(len(answers), "files")
