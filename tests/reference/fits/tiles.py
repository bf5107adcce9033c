#!/usr/bin/python3
"""tiles.py FOLDER : small images packed in tiles by fpack (cfitsio 4.2.0), and what cfitsio and astropy read of them.

Debian packages: libcfitsio-bin, libcfitsio10, python3-astropy. FOLDER is tests/Framing.Fits.Tests/Data/tiles; answers.json
lists for each file the kind and shape of its samples and the SHA-256 of them (little-endian, row after row, one NaN) as
cfitsio gives them; "astropy" says whether astropy 5.2.1 gives the same.
"""
import hashlib, json, os, subprocess, sys
import numpy as np
from astropy.io import fits

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "../../Framing.Fits.Tests/Data/judges"))
sys.argv, folder = sys.argv[:1], sys.argv[1]
import read_back

W, H = 61, 43
rng = np.random.default_rng(20261)
y, x = np.mgrid[0:H, 0:W]
sky = 900.0 + 2.0 * x + 3.0 * y + rng.normal(0, 12, (H, W))
sky[10:14, 20:25] += 9000.0
holes = sky.astype("f4").copy()
holes[0, 0], holes[5, 7:12], holes[20, :] = np.nan, np.nan, np.nan
zeros = sky.astype("f4").copy()
zeros[3:6, 4:40] = 0.0
whole = {
    "u8": np.clip(sky / 50, 0, 255).astype("u1"),
    "i16": (sky - 1000).astype("i2"),
    "u16": np.clip(sky * 6, 0, 65535).astype("u2"),
    "i32": (sky * 2000).astype("i4"),
    "u32": (sky * 2000 + 2**31).astype("u4"),
    "noise16": rng.integers(-32768, 32767, (H, W), endpoint=True).astype("i2"),
    "noise8": rng.integers(0, 255, (H, W), endpoint=True).astype("u1"),
    "noise32": rng.integers(-2**31, 2**31 - 1, (H, W), endpoint=True).astype("i4"),
    "flat16": np.full((H, W), 777, "i2"),
    "colours16": np.stack([(sky * k).astype("u2") for k in (3, 4, 5)]),
}
real = {"f32": sky.astype("f4"), "f64": sky, "holes": holes, "zeros": zeros, "flat": np.full((H, W), 1.5, "f4"),
        "noise": rng.normal(0, 1e-3, (H, W)).astype("f4") * 10.0 ** rng.integers(-20, 20, (H, W))}
jobs = [(n, k, f) for n in whole for k, f in (("rice", ["-r"]), ("gzip1", ["-g1"]), ("gzip2", ["-g2"]))]
jobs += [(n, "ricetiles", ["-r", "-t", "20,16" if whole[n].ndim == 2 else "20,16,2"]) for n in ("u16", "i32", "colours16")]
jobs += [(n, "gzipwhole", ["-g1", "-w"]) for n in ("u16", "u8")]
jobs += [("i16", "plain", ["-d"])]
jobs += [(n, k, f) for n in real for k, f in (
    ("rice", ["-r", "-q0", "4"]), ("dither", ["-r", "-q77", "4"]), ("ditherz", ["-r", "-qz9999", "4"]),
    ("gzip1dither", ["-g1", "-q500", "4"]), ("gzip2dither", ["-g2", "-q10000", "8"]),
    ("gzip1whole", ["-g1", "-q", "0"]), ("gzip2whole", ["-g2", "-q", "0"]),
    ("dithertiles", ["-r", "-q3", "4", "-t", "25,10"]))]

os.makedirs(folder, exist_ok=True)
answers = []
for name, kind, flags in jobs:
    data = {**whole, **real}[name]
    unit = fits.PrimaryHDU(data)
    unit.header["OBJECT"] = "a text that is long enough to run on over a second card, " * 2
    unit.header["CRVAL1"] = 12.5
    plain, packed = os.path.join(folder, "plain.fits"), os.path.join(folder, f"{name}-{kind}.fz.fits")
    unit.writeto(plain, overwrite=True)
    if os.path.exists(packed):
        os.remove(packed)
    done = subprocess.run(["fpack", "-C", *flags, "-O", packed, plain], capture_output=True, text=True)
    os.remove(plain)
    if not os.path.exists(packed):
        print("not packed:", name, kind, done.stdout.strip(), done.stderr.strip())
        continue
    one = read_back.asked(read_back.by_cfitsio, packed)
    other = read_back.asked(read_back.by_astropy, packed)
    if "error" in one:
        print("not read:", name, kind, one)
        continue
    answers.append({"file": os.path.basename(packed), "kind": one["kind"], "shape": one["shape"], "sha256": one["sha256"],
                    "astropy": one["sha256"] == other.get("sha256")})
    if not answers[-1]["astropy"]:
        print("astropy differs:", name, kind, other.get("error"), other.get("kind"))
with open(os.path.join(folder, "answers.json"), "w") as out:
    json.dump(answers, out, indent=1)
print(len(answers), "files")
