#!/usr/bin/python3
"""union.py RECTANGLES.csv RUNS: area covered by rectangles (rows cx,cy,w,h,angle_deg) by Shapely's unary_union.

Debian: python3-shapely, python3-numpy. Prints "name = number" lines; times are medians in milliseconds.
"""
import statistics
import sys
import time

import numpy as np
from shapely.geometry import Polygon
from shapely.ops import unary_union

path, runs = sys.argv[1], int(sys.argv[2])
rows = np.loadtxt(path, delimiter=",", skiprows=1)
cos, sin = np.cos(np.radians(rows[:, 4])), np.sin(np.radians(rows[:, 4]))


def build():
    corners = []
    for u, v in ((-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5)):
        x, y = u * rows[:, 2], v * rows[:, 3]
        corners.append(np.stack([rows[:, 0] + cos * x - sin * y, rows[:, 1] + sin * x + cos * y], 1))
    return [Polygon(corner) for corner in np.stack(corners, 1)]


def median(work):
    times, result = [], work()
    for _ in range(runs):
        start = time.perf_counter()
        result = work()
        times.append((time.perf_counter() - start) * 1e3)
    return statistics.median(times), result


building, polygons = median(build)
union, covered = median(lambda: unary_union(polygons))
parts = list(covered.geoms) if covered.geom_type == "MultiPolygon" else [covered]
print(f"building = {building:.4f}")
print(f"union = {union:.4f}")
print(f"area = {covered.area:.12f}")
print(f"sum = {sum(p.area for p in polygons):.12f}")
print(f"holes = {sum(len(p.interiors) for p in parts)}")
print(f"hole area = {sum(Polygon(ring).area for p in parts for ring in p.interiors):.12f}")
