#!/usr/bin/python3
"""reproject_interp.py FRAME.fits CANVAS.fits RUNS: a frame drawn onto a canvas of 3840 x 2160 by reproject_interp, bilinear.

Debian: python3-reproject, python3-astropy, python3-numpy. Reading is not timed. Prints "name = number", milliseconds.
"""
import os

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(name, "1")
import statistics
import sys
import time
import warnings

import numpy as np
import reproject
from astropy.io import fits
from astropy.wcs import WCS

warnings.simplefilter("ignore")
with fits.open(sys.argv[1], memmap=False) as file:
    frame, world = file[0].data.astype(np.float32), WCS(file[0].header)
canvas = WCS(fits.getheader(sys.argv[2]))
times = []
for _ in range(int(sys.argv[3])):
    start = time.perf_counter()
    drawn, covered = reproject.reproject_interp((frame, world), canvas, shape_out=(2160, 3840), order="bilinear")
    times.append((time.perf_counter() - start) * 1e3)
print(f"whole = {statistics.median(times):.1f}")
print(f"whole least = {min(times):.1f}")
print(f"covered = {covered.mean():.6f}")
