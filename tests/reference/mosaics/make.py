#!/usr/bin/python3
"""Works out the check values of mosaics, fits and overlaps afresh and holds them against the committed ones.

Debian packages python3-numpy, python3-scipy 1.10.1, python3-shapely 1.8.5, python3-astropy 5.2.1, python3-erfa 2.0.0 made the
committed files tests/Framing.Mosaics.Tests/Data/checks.json and tables.json. The values of "ovl-diffrefr-30" (refraction)
come with those of the altitudes and are not made here. Monte-Carlo figures change with the version of the random generator.
"""
import json
import pathlib

import common
import t03_mosaic
import t04_fit
import t08_overlap

DATA = pathlib.Path(__file__).resolve().parents[2] / "Framing.Mosaics.Tests/Data"
fresh = {check["id"]: check for check in common.CHECKS}
worst = 0.0
for check in json.loads((DATA / "checks.json").read_text()):
    if check["id"] == "ovl-diffrefr-30":
        continue
    for name, value in check["expect"].items():
        again = fresh[check["id"]]["expect"][name]
        if isinstance(value, (int, float)):
            worst = max(worst, abs(value - again))
        else:
            assert value == again, (check["id"], name, value, again)
print(f"check values differ by at most {worst:.1e}")
for name, table in json.loads((DATA / "tables.json").read_text()).items():
    print(name, "the same" if common.TABLES[name] == table else "differs")
