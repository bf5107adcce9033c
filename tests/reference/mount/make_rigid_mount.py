#!/usr/bin/python3
"""Writes tests/Framing.Planning.Tests/Data/rigid-mount.json: a camera carried by a rigid mount near the pole (python3-erfa).

The mount turns about the true pole of date; the telescope points at apparent places. Each case: a time, the middle of a
mosaic of two panels side by side (J2000) with the camera angle there, and for both panels the J2000 position angle of the
picture's up, when the camera was set at the middle and the mount then carried it there.

By vectors: the camera is three unit vectors in the frame of date (ERFA: deflection by the Sun, aberration, IAU 2006/2000A
bias-precession-nutation). From one place to another they are turned by two matrices, one about the pole, one about the axis
of declination. What is then up in the picture is carried back to J2000, by iteration, as a point 20" above the middle.
The panels' middles lie at half a step to either side in the J2000 tangent plane of the mosaic's middle.
"""
import json
import math
import pathlib

import erfa
import numpy as np

TARGET = pathlib.Path(__file__).resolve().parents[2] / "Framing.Planning.Tests/Data/rigid-mount.json"
WIDTH = 4144 * 4.63e-3 / 250.0  # tangent of the short lens of the demo
STEP = 0.85 * WIDTH  # neighbours share 15 %
ABOVE = 20.0 / 206264.806


def frame(jd):
    heliocentric, barycentric = erfa.epv00(jd, 0.0)
    velocity = np.asarray(barycentric["v"]) * erfa.DAU / erfa.DAYSEC / erfa.CMPS
    sun_to_earth = np.asarray(heliocentric["p"])
    distance = np.linalg.norm(sun_to_earth)
    slow = math.sqrt(1.0 - velocity @ velocity)
    matrix = erfa.pnm06a(jd, 0.0)

    def apparent(direction):
        bent = erfa.ldsun(direction, sun_to_earth / distance, distance)
        return matrix @ erfa.ab(bent, velocity, distance, slow)

    def catalogue(seen):
        guess = matrix.T @ seen
        for _ in range(8):
            guess = guess + matrix.T @ (seen - apparent(guess))
            guess = guess / np.linalg.norm(guess)
        return guess

    return apparent, catalogue


def direction(ra, dec):
    ra, dec = math.radians(ra), math.radians(dec)
    return np.array([math.cos(dec) * math.cos(ra), math.cos(dec) * math.sin(ra), math.sin(dec)])


def axes(v):
    east = np.cross([0.0, 0.0, 1.0], v)
    east = east / np.linalg.norm(east)
    return east, np.cross(v, east)


def above(v, angle, by=ABOVE):
    east, north = axes(v)
    step = math.sin(angle) * east + math.cos(angle) * north
    return v * math.cos(by) + step * math.sin(by)


def angle_of(v, up):
    east, north = axes(v)
    return math.atan2(up @ east, up @ north)


def about_pole(t):
    return np.array([[math.cos(t), -math.sin(t), 0.0], [math.sin(t), math.cos(t), 0.0], [0.0, 0.0, 1.0]])


def about(axis, t):
    x = np.array([[0.0, -axis[2], axis[1]], [axis[2], 0.0, -axis[0]], [-axis[1], axis[0], 0.0]])
    return np.eye(3) + math.sin(t) * x + (1.0 - math.cos(t)) * (x @ x)


def case(rng, dec):
    jd = float(np.round(2461041.5 + rng.uniform(0.0, 1500.0), 3))
    ra, angle = (float(np.round(rng.uniform(0.0, 360.0), 3)) for _ in range(2))
    apparent, catalogue = frame(jd)
    middle = direction(ra, dec)
    east, north = axes(middle)
    up = above(middle, math.radians(angle))
    seen, seen_up = apparent(middle), apparent(up)

    # To the right of a picture with north up lies west.
    t = math.radians(angle)
    right = -math.cos(t) * east + math.sin(t) * north
    panels = []
    for side in (-0.5, 0.5):
        place = middle + side * STEP * right
        place = place / np.linalg.norm(place)
        there = apparent(place)
        turn = math.atan2(there[1], there[0]) - math.atan2(seen[1], seen[0])
        carried, carried_up = about_pole(turn) @ seen, about_pole(turn) @ seen_up
        axis, _ = axes(carried)
        lift = math.asin(there[2]) - math.asin(carried[2])
        matrix = about(-axis, lift)
        carried, carried_up = matrix @ carried, matrix @ carried_up
        assert np.linalg.norm(carried - there) < 1e-12
        panels.append(
            {
                "raDeg": math.degrees(math.atan2(place[1], place[0])) % 360.0,
                "decDeg": math.degrees(math.asin(place[2])),
                "positionAngleDeg": math.degrees(angle_of(place, catalogue(carried_up))) % 360.0,
            }
        )
    return {"jdTt": jd, "raDeg": ra, "decDeg": dec, "positionAngleDeg": angle, "panels": panels}


def main():
    rng = np.random.default_rng(20260888)
    decs = [88.0] * 40 + [-88.0] * 40 + [86.0] * 10 + [-86.0] * 10 + [60.0] * 10 + [-45.0] * 10
    cases = [case(rng, dec) for dec in decs]
    TARGET.write_text(json.dumps(cases, indent=1) + "\n")
    print(len(cases), "cases")


main()
