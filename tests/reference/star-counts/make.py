#!/usr/bin/env python3
"""Star counts: real ones from Tycho-2, carried on to V 16 by a model of the Milky Way (galaxy.py).

    /usr/bin/python3 make.py --tycho FOLDER

FOLDER holds tyc2.dat.00 .. .19 and suppl_1.dat of the Debian source package tycho2, unpacked (see ../catalogue/README.md).
Needs python3-numpy, python3-scipy, python3-erfa; five minutes. Writes
    src/Framing.Catalogue/Tables/star-counts.bin                 what the program uses
    tests/Framing.Catalogue.Tests/Data/star-counts.csv           what the tests hold it against
    fit.csv                                                      the fitted model and its residuals, to be read

Sections of star-counts.bin (frame: ../catalogue/tables.py, little endian)
  0  parameters   int32: latitudes, longitudes, bins, colour bands, colours a band; first V and step of the bins in 0.01 mag
  1  latitudes    int32 each: galactic latitude of the nodes in 0.001 degrees, south to north
  2  counts       int16: 1000 log10 of the stars per square degree in a bin; bin after bin for each longitude (equal steps
                  from 0 round the circle) of each latitude
  3  colours      int16: a band is its upper limit of |b| in 0.01 degrees and then B-V in 0.01 mag at equal steps of the
                  share of stars bluer, from the bluest to the reddest
  4  limits       uint8: for each cell in which the catalogue was thinned out (../catalogue/build_stars.py, counting_cells)
                  the V down to which it holds every star, in 0.01 mag above 10; read from stars.bin
"""
import argparse
import csv
import glob
import os
import struct
import sys

import erfa
import numpy as np
from scipy.optimize import least_squares

import galaxy

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.join(HERE, '..', '..', '..')
sys.path.insert(0, os.path.join(HERE, '..', 'catalogue'))
import tables                                            # noqa: E402

BANDS = [0, 5, 10, 20, 30, 40, 60, 90]                   # of |b|, for the tests
LATITUDES = [0, 2.5, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 90]
LATITUDES = [-b for b in LATITUDES[:0:-1]] + LATITUDES
LONGITUDES = 24
FIRST, STEP, BINS = 10.0, 0.5, 12
TIED = (9.5, 11.0)                                       # V over which the level is tied; Tycho-2 is 99 % complete to 11.0

# Stars of the whole sky brighter than a visual magnitude: the classical totals (F. H. Seares and P. J. van Rhijn,
# Mount Wilson Contr. 301, 1925; van Rhijn, Groningen Publ. 43, 1929), as reprinted since; from memory.
WHOLE_SKY = {6: 4850, 7: 14300, 8: 41000, 9: 117000, 10: 324000, 11: 870000, 12: 2270000, 13: 5700000, 14: 13800000,
             15: 32000000, 16: 71000000}


def square_degrees(south, north, share=1.0):
    return 2 * np.pi * (np.sin(np.radians(north)) - np.sin(np.radians(south))) * np.degrees(1.0) ** 2 * share


def read_tycho(folder):
    rows = []
    for name in sorted(glob.glob(os.path.join(folder, 'tyc2.dat.*'))):
        for line in open(name, encoding='latin1'):
            c = line.split('|')
            rows.append((c[24], c[25], c[17].strip() or 'nan', c[19].strip() or 'nan'))
    for line in open(os.path.join(folder, 'suppl_1.dat'), encoding='latin1'):
        c = line.rstrip('\n').split('|')
        rows.append((c[2], c[3], c[11].strip() or 'nan', c[13].strip() or 'nan'))
    ra, dec, bt, vt = np.array(rows, dtype=float).T
    colour = bt - vt                                     # as ../catalogue/build_stars.py has it
    v = np.where(np.isfinite(colour), vt - 0.090 * colour, np.where(np.isfinite(vt), vt, bt - 0.7))
    l, b = erfa.icrs2g(np.radians(ra), np.radians(dec))
    return v, 0.850 * colour, np.degrees(l) % 360, np.degrees(b)


# ---------------------------------------------------------------- the fit

FIT_BANDS = [0, 2.5, 5, 10, 20, 30, 40, 60, 90]
FIT_V = [6, 7, 8, 9, 10, 11]


def places(low, high, sector):
    """Directions that stand for a band of |b| and a third of the way from the centre (0) to the anticentre (2)."""
    s = np.sin(np.radians([low, high]))
    b1, b2 = np.degrees(np.arcsin(s[0] + (s[1] - s[0]) * np.array([0.25, 0.75])))
    l = 60 * sector
    return [(l + 15, b1), (l + 15, -b2), (l + 45, b1), (l + 45, -b2), (l + 30, -b1), (l + 30, b2)]


def fit(v, l, b):
    away = np.abs((l + 180) % 360 - 180)
    regions = [(low, high, s) for low, high in zip(FIT_BANDS, FIT_BANDS[1:]) for s in range(3)]
    real = np.array([[(v[inside] < m).sum() / square_degrees(low, high, 2 / 3) for m in FIT_V]
                     for low, high, s in regions
                     for inside in [(np.abs(b) >= low) & (np.abs(b) < high) & (away // 60.001 == s)]])
    # what dust clouds and clusters do to a region, and no smooth model can follow
    rough = np.array([0.15 if low < 5 else 0.10 if low < 10 else 0.06 for low, _, _ in regions])
    weight = 1.0 / np.hypot(rough, 0.03)[:, None]
    sigma = np.concatenate([galaxy.LUMINOSITY_SIGMA, [s for _, _, s in galaxy.PARAMETERS]])

    def predicted(steps, magnitudes):
        p = galaxy.values(steps)
        return np.array([np.mean([galaxy.brighter_than(p, *place, magnitudes) for place in places(*region)], axis=0)
                         for region in regions])

    def residuals(steps):
        return np.concatenate([(np.log(predicted(steps, FIT_V) / real) * weight).ravel(), steps / sigma])

    found = least_squares(residuals, np.zeros(len(sigma)), diff_step=1e-3, max_nfev=12)
    return found.x, regions, real, predicted(found.x, FIT_V)


# ---------------------------------------------------------------- the table

def edges_of(i):
    south = -90.0 if i == 0 else (LATITUDES[i - 1] + LATITUDES[i]) / 2
    north = 90.0 if i == len(LATITUDES) - 1 else (LATITUDES[i] + LATITUDES[i + 1]) / 2
    return south, north


def tabulate(p, v, l, b):
    """Stars per square degree in each bin at each node; the level is that of the real sky around the node."""
    magnitudes = FIRST + STEP * np.arange(BINS + 1)
    tied = (v >= TIED[0]) & (v < TIED[1])
    counts = np.zeros((len(LATITUDES), LONGITUDES, BINS))
    ratios = np.zeros((len(LATITUDES), LONGITUDES))
    for i, latitude in enumerate(LATITUDES):
        south, north = edges_of(i)
        level = tied & (b >= south) & (b < north)
        pole = abs(latitude) == 90
        half = 180.0 if pole else 15.0 if abs(latitude) >= 50 else 7.5
        s = np.sin(np.radians([south, north]))
        rows = np.degrees(np.arcsin(s[0] + (s[1] - s[0]) * np.array([1, 3, 5]) / 6))
        for j in range(LONGITUDES):
            longitude = 360.0 * j / LONGITUDES
            if pole and j > 0:
                counts[i, j], ratios[i, j] = counts[i, 0], ratios[i, 0]
                continue
            near = level & (np.abs((l - longitude + 180) % 360 - 180) <= half)
            real = near.sum() / square_degrees(south, north, half / 180)
            around = np.mean([galaxy.brighter_than(p, longitude + step * half, row, TIED)
                              for row in rows for step in (-2 / 3, 0, 2 / 3)], axis=0)
            ratios[i, j] = real / (around[1] - around[0])
            counts[i, j] = np.diff(galaxy.brighter_than(p, longitude, latitude, magnitudes)) * ratios[i, j]
    return counts, ratios


COLOUR_BANDS, COLOURS = (10.0, 30.0, 90.0), 33


def colours(v, bv, b):
    """B-V of stars about V 10, in equal shares; the outermost 1 % on either side are left out (they are errors)."""
    out = b''
    low = 0.0
    for high in COLOUR_BANDS:
        chosen = bv[(v >= 9.5) & (v < 10.5) & (np.abs(b) >= low) & (np.abs(b) < high) & np.isfinite(bv)]
        row = np.quantile(chosen, np.linspace(0.01, 0.99, COLOURS))
        out += struct.pack('<%dh' % (COLOURS + 1), round(high * 100), *(int(round(x * 100)) for x in row))
        low = high
    return out


# ---------------------------------------------------------------- where the catalogue ends

CELL, KEPT_PER_SQUARE_DEGREE, FAINTEST_LIMIT = 1.8, 15.0, 12.0


def catalogue():
    """Right ascension, declination and V of the embedded stars (layout: ../catalogue/pack_stars.py)."""
    with open(os.path.join(ROOT, 'src', 'Framing.Catalogue', 'Tables', 'stars.bin'), 'rb') as f:
        raw = f.read()
    start = [struct.unpack_from('<I', raw, 12 + 8 * i)[0] for i in range(5)]
    stars, cells, bands = struct.unpack_from('<3I', raw, start[0])
    height = struct.unpack_from('<i', raw, start[0] + 20)[0] / 1e6
    first_cell = np.frombuffer(raw, '<u4', bands + 1, start[1]).astype(int)
    first_star = np.frombuffer(raw, '<u4', cells + 1, start[2]).astype(int)
    packed = np.frombuffer(raw, '<u8', stars, start[4])
    cell = np.repeat(np.arange(cells), np.diff(first_star))
    band = np.searchsorted(first_cell, cell, 'right') - 1
    dec = band * height - 90 + (packed & 0x1FFFFF).astype(float) / 1e6
    step = ((packed >> np.uint64(21)) & np.uint64(0x1FFFFF)).astype(float) + 0.5
    ra = 360.0 / np.diff(first_cell)[band] * (cell - first_cell[band] + step / 2 ** 21)
    v = ((packed >> np.uint64(43)) & np.uint64(0x7FF)).astype(float) / 100 - 2
    return ra, dec, v


def limits():
    ra, dec, v = catalogue()
    bands = round(180 / CELL)
    band = np.clip(((dec + 90) / CELL).astype(int), 0, bands - 1)
    edges = np.sin(np.radians(np.arange(bands + 1) * CELL - 90))
    middle = np.radians((np.arange(bands) + 0.5) * CELL - 90)
    per_band = np.maximum(1, np.round(360 * np.cos(middle) / CELL)).astype(int)
    first = np.concatenate([[0], np.cumsum(per_band)])
    area = np.repeat(np.diff(edges) * np.degrees(1.0) * 360 / per_band, per_band)
    cell = first[band] + np.minimum((ra / 360 * per_band[band]).astype(int), per_band[band] - 1)
    order = np.lexsort((v, cell))
    start = np.searchsorted(cell[order], np.arange(first[-1] + 1))
    out = bytearray()
    for i in range(first[-1]):
        there = v[order[start[i]:start[i + 1]]]
        # the last of those kept for their number; a star kept for its name alone comes after it
        last = there[min(int(np.ceil(KEPT_PER_SQUARE_DEGREE * area[i])), len(there)) - 1]
        out.append(int(round(100 * (np.clip(last, 10.0, FAINTEST_LIMIT) - 10.0))))
    return bytes(out)


def main():
    ap = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ap.add_argument('--tycho', required=True)
    v, bv, l, b = read_tycho(ap.parse_args().tycho)
    steps, regions, real, predicted = fit(v, l, b)
    p = galaxy.values(steps)
    with open(os.path.join(HERE, 'fit.csv'), 'w', newline='', encoding='ascii') as f:
        w = csv.writer(f, lineterminator='\n')
        w.writerow(['what', 'value'])
        w.writerows((name, '%.6g' % p[name]) for name, _, _ in galaxy.PARAMETERS)
        w.writerows(('ln luminosity at M %g' % m, '%.3f' % s) for m, s in zip(galaxy.KNOTS, p['luminosity_steps']))
        for (low, high, s), model, counted in zip(regions, predicted, real):
            w.writerow(('model / Tycho-2, |b| %g-%g, third %d, V 6 to 11' % (low, high, s + 1),
                        ' '.join('%.2f' % x for x in model / counted)))

    counts, ratios = tabulate(p, v, l, b)
    print('level of the real sky over the model: %.2f to %.2f, median %.3f' % (ratios.min(), ratios.max(), np.median(ratios)))
    logs = np.round(1000 * np.log10(counts)).astype(int)
    tables.write(os.path.join(ROOT, 'src', 'Framing.Catalogue', 'Tables', 'star-counts.bin'), 'FRCOUNT1', [
        struct.pack('<7i', len(LATITUDES), LONGITUDES, BINS, len(COLOUR_BANDS), COLOURS, round(FIRST * 100), round(STEP * 100)),
        struct.pack('<%di' % len(LATITUDES), *(round(x * 1000) for x in LATITUDES)),
        struct.pack('<%dh' % logs.size, *logs.ravel()),
        colours(v, bv, b),
        limits(),
    ])

    path = os.path.join(ROOT, 'tests', 'Framing.Catalogue.Tests', 'Data', 'star-counts.csv')
    with open(path, 'w', newline='', encoding='ascii') as f:
        w = csv.writer(f, lineterminator='\n')
        w.writerow(['source', 'l_from', 'l_to', 'b_from', 'b_to', 'v', 'per_sq_deg'])
        at_11 = {}
        for low, high in zip(BANDS, BANDS[1:]):
            inside = (np.abs(b) >= low) & (np.abs(b) < high)
            for m in range(6, 12):
                density = (v[inside] < m).sum() / (2 * square_degrees(low, high))
                w.writerow(('tycho-2', 0, 360, low, high, m, '%.5g' % density))
                at_11[low] = density
        for low, high in zip(BANDS, BANDS[1:]):
            if low >= 20:
                spread = [(15 * i, x) for i in range(24)
                          for x in np.degrees(np.arcsin(np.linspace(*np.sin(np.radians([low, high])), 21)[1::2]))]
                mean = {m: np.mean([galaxy.bahcall_soneira(m, *place) for place in spread]) for m in (11, 12, 13, 14)}
                for m in (12, 13, 14):
                    w.writerow(('tycho-2 to V 11, grown as Bahcall & Soneira', 0, 360, low, high, m,
                                '%.5g' % (at_11[low] * mean[m] / mean[11])))
        for sector in range(0, 360, 30):
            for low, high in ((0, 10), (10, 30)):
                inside = (np.abs(b) >= low) & (np.abs(b) < high) & (l >= sector) & (l < sector + 30) & (v < 11)
                w.writerow(('tycho-2', sector, sector + 30, low, high, 11,
                            '%.5g' % (inside.sum() / (2 * square_degrees(low, high, 1 / 12)))))
        for m, n in WHOLE_SKY.items():
            w.writerow(('seares & van rhijn', 0, 360, 0, 90, m, '%.5g' % (n / square_degrees(-90, 90))))


if __name__ == '__main__':
    main()
