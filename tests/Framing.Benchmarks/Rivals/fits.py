#!/usr/bin/python3
"""fits.py IMAGE.fits RUNS: the samples of a FITS image as float, by cfitsio, into memory that was touched before.

Debian: libcfitsio10, python3-numpy. One call of fits_open_file, fits_read_img and fits_close_file is timed, no Python within.
Prints "name = number" lines; times are in milliseconds, "processor" being those the thread was really at work.
"""
import ctypes
import sys
import time

import numpy as np

path, runs = sys.argv[1].encode(), int(sys.argv[2])
lib = ctypes.CDLL("libcfitsio.so.10")
file, status, size = ctypes.c_void_p(), ctypes.c_int(0), (ctypes.c_long * 2)()
lib.ffopen(ctypes.byref(file), path, 0, ctypes.byref(status))
lib.ffgisz(file, 2, size, ctypes.byref(status))
lib.ffclos(file, ctypes.byref(status))
values = np.ones(size[0] * size[1], "f4")
pointer, count, found = values.ctypes.data_as(ctypes.c_void_p), ctypes.c_longlong(values.size), ctypes.c_int()
times, busy = [], []
for _ in range(runs + 1):
    work, start = time.thread_time(), time.perf_counter()
    lib.ffopen(ctypes.byref(file), path, 0, ctypes.byref(status))
    lib.ffgpv(file, 42, ctypes.c_longlong(1), count, None, pointer, ctypes.byref(found), ctypes.byref(status))
    lib.ffclos(file, ctypes.byref(status))
    times.append((time.perf_counter() - start) * 1e3)
    busy.append((time.thread_time() - work) * 1e3)
assert status.value == 0, status.value
times, busy = sorted(times[1:]), sorted(busy[1:])
print(f"least = {times[0]:.4f}")
print(f"median = {times[len(times) // 2]:.4f}")
print(f"processor = {busy[len(busy) // 2]:.4f}")
print(f"sum = {values.sum(dtype='f8'):.1f}")
