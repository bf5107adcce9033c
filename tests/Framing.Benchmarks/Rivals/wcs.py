#!/usr/bin/python3
"""wcs.py HEADER.fits POINTS CHUNK RUNS SEED: pixels to sky and back by wcslib, one thread.

Debian: libwcs7, python3-numpy. Each call of wcsp2s and wcss2p takes CHUNK points; nothing but these calls is timed. The points are
the same ones that we take: draw 2i of the seed is x, 2i + 1 is y, over 6248 x 4176 pixels.
Prints "name = number" lines; times are medians over all points in milliseconds.
"""
import ctypes
import statistics
import sys
import time

import numpy as np

path, points, chunk, runs, seed = sys.argv[1], *(int(text) for text in sys.argv[2:6])
lib = ctypes.CDLL("libwcs.so.7")
D = ctypes.POINTER(ctypes.c_double)


def uniform(first, step):
    """SplitMix: every step-th draw of the seed, 0 to less than 1."""
    with np.errstate(over="ignore"):
        z = np.uint64(seed) + (np.arange(points, dtype="u8") * np.uint64(step) + np.uint64(first + 1)) * np.uint64(0x9E3779B97F4A7C15)
        z = (z ^ (z >> np.uint64(30))) * np.uint64(0xBF58476D1CE4E5B9)
        z = (z ^ (z >> np.uint64(27))) * np.uint64(0x94D049BB133111EB)
    return ((z ^ (z >> np.uint64(31))) >> np.uint64(11)) * 2.0**-53


cards = open(path, "rb").read()
rejected, count, wcs = ctypes.c_int(), ctypes.c_int(), ctypes.c_void_p()
assert not lib.wcspih(cards, len(cards) // 80, 0xFFFFF, 0, ctypes.byref(rejected), ctypes.byref(count), ctypes.byref(wcs))
assert count.value == 1 and not lib.wcsset(wcs)
pixel = np.stack([0.5 + 6248 * uniform(0, 2), 0.5 + 4176 * uniform(1, 2)], 1)
sky, back = np.zeros_like(pixel), np.zeros_like(pixel)
plane, phi, theta = np.zeros((chunk, 2)), np.zeros(chunk), np.zeros(chunk)
stat = np.zeros(chunk, "i4")


def pointer(array):
    return array.ctypes.data_as(D)


def measure(call, given, first, second, third, found):
    times = []
    for _ in range(runs):
        sum = 0.0
        for at in range(0, points, chunk):
            arguments = [pointer(a) for a in (given[at:], first, second, third, found[at:])]
            status = stat.ctypes.data_as(ctypes.POINTER(ctypes.c_int))
            start = time.perf_counter()
            failed = call(wcs, chunk, 2, *arguments, status)
            sum += time.perf_counter() - start
            assert not failed, failed
        times.append(sum * 1e3)
    return statistics.median(times), min(times)


there = measure(lib.wcsp2s, pixel, plane, phi, theta, sky)
again = measure(lib.wcss2p, sky, phi, theta, plane, back)
print(f"there = {there[0]:.4f}")
print(f"back = {again[0]:.4f}")
print(f"there least = {there[1]:.4f}")
print(f"back least = {again[1]:.4f}")
print(f"round trip = {np.abs(back - pixel).max():.3e}")
np.concatenate([sky.ravel(), back.ravel()]).tofile(path + ".answers")
