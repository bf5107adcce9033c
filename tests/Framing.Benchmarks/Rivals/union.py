#!/usr/bin/python3
"""union.py RECTANGLES.csv RUNS SCALE: area covered by rectangles (rows cx,cy,w,h,angle_deg) by Shapely's unary_union.

Debian: python3-shapely, python3-numpy. Prints "name = number" lines; times are medians in milliseconds. With the rectangles
in a tangent plane, a unit of theirs being SCALE radians at its middle, the union also has an area on the sphere.
"""
import statistics
import sys
import time

import numpy as np
from shapely.geometry import Polygon
from shapely.ops import unary_union

path, runs, scale = sys.argv[1], int(sys.argv[2]), float(sys.argv[3])
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


def excess(ring):
    """Spherical excess of a ring of the plane, by triangles with the tangent point (van Oosterom and Strackee 1983)."""
    x, y = (np.asarray(ring.coords)[:-1] - middle).T * scale
    u, v = np.roll(x, -1), np.roll(y, -1)
    r, s = np.sqrt(1 + x * x + y * y), np.sqrt(1 + u * u + v * v)
    return abs(np.sum(2 * np.arctan2(x * v - y * u, r * s + r + s + x * u + y * v + 1)))


building, polygons = median(build)
union, covered = median(lambda: unary_union(polygons))
parts = list(covered.geoms) if covered.geom_type == "MultiPolygon" else [covered]
middle = (rows[:, :2].min(0) + rows[:, :2].max(0)) / 2
sphere = sum(excess(p.exterior) - sum(excess(ring) for ring in p.interiors) for p in parts)
print(f"building = {building:.4f}")
print(f"union = {union:.4f}")
print(f"area = {covered.area:.12f}")
print(f"sphere = {sphere:.15f}")
print(f"sum = {sum(p.area for p in polygons):.12f}")
print(f"holes = {sum(len(p.interiors) for p in parts)}")
enclosed = unary_union([Polygon(ring) for p in parts for ring in p.interiors]).difference(covered)
print(f"enclosed = {enclosed.area:.12f}")
