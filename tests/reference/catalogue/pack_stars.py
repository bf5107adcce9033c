#!/usr/bin/env python3
"""Packs stars.csv.gz into the embedded table stars.bin.  Python 3 alone; about half a minute.

The sky is cut into bands of declination, each BAND high, and every band into equal cells of right ascension, so that a
cell holds about 1.6 square degrees.  Inside a cell the stars stand bright first (then by declination and right
ascension), so that a search down to a magnitude, or for the brightest few, stops early.

Sections (little endian)
  0  parameters    uint32 stars, cells, bands, stars with a Hipparcos number, highest Hipparcos number;
                   int32 height of a band in 1e-6 degrees, largest motion in 0.1 mas a year
  1  bands         uint32 x (bands + 1): first cell of each band, south to north
  2  cells         uint32 x (cells + 1): first star of each cell
  3  cell numbers  uint32 x (cells + 1): first row of section 6 of each cell
  4  places        uint64 a star: bits 0-20 declination above the band's edge in 1e-6 degrees; 21-41 right ascension in
                   the cell, in 2^-21 of the cell's width (the middle of the step is meant); 42 set if the star has a
                   Hipparcos number; 43-53 V in 0.01 mag from -2; 54-63 B-V in 0.01 mag from -1, 1023 if unknown
  5  motions       int16 x 2 a star: in right ascension (times the cosine of declination) and in declination, 0.1 mas a
                   year; if the first is -32768 the second is a row of section 8, row 0 standing for "unknown"
  6  numbers       uint32 a star that has one: Hipparcos numbers in the order of the stars
  7  by number     uint32 x (highest + 1): the star that has this Hipparcos number, 0xFFFFFFFF if none
  8  fast stars    int32 x 2 a row: motions too large for section 5, in 0.1 mas a year
"""
import argparse
import array
import csv
import gzip
import hashlib
import math
import os
import struct

import tables

HERE = os.path.dirname(os.path.abspath(__file__))
BAND = 1_250_000                    # micro-degrees; below 2^21
BANDS = 180_000_000 // BAND
STEPS = 1 << 21
NO_COLOUR = 1023
ESCAPE = -32768


def millionths(text):
    return round(float(text) * 1e6)


def cells_in(band):
    middle = math.radians((band + 0.5) * BAND / 1e6 - 90)
    return max(3, round(360e6 * math.cos(middle) / BAND))


def read(path):
    with open(path, 'rb') as f:
        print('stars.csv.gz sha256', hashlib.sha256(f.read()).hexdigest())
    first, total = [0], 0
    for band in range(BANDS):
        total += cells_in(band)
        first.append(total)
    stars = []
    with gzip.open(path, 'rt', encoding='ascii', newline='') as f:
        for row in csv.DictReader(f):
            ra, dec = millionths(row['ra_deg']), millionths(row['dec_deg'])
            band = min((dec + 90_000_000) // BAND, BANDS - 1)
            up = dec + 90_000_000 - band * BAND
            count = first[band + 1] - first[band]
            # exact in integers: the cell and the step inside it
            cell, rest = divmod(ra * count, 360_000_000)
            step = rest * STEPS // 360_000_000
            v = round(float(row['v_mag']) * 100) + 200
            colour = round(float(row['b_minus_v']) * 100) + 100 if row['b_minus_v'] else NO_COLOUR
            motion = None
            if row['pm_ra_cosdec_mas_yr']:
                motion = tuple(round(float(row[k]) * 10) for k in ('pm_ra_cosdec_mas_yr', 'pm_dec_mas_yr'))
            assert 0 <= up < STEPS and 0 <= step < STEPS and 0 <= v < 2048 and 0 <= colour <= NO_COLOUR
            stars.append((first[band] + cell, v, dec, ra, up, step, colour, int(row['hip'] or 0), motion))
    stars.sort(key=lambda s: s[:4])
    return first, stars


def main():
    ap = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ap.add_argument('--stars', required=True, help='stars.csv.gz, made by build_stars.py')
    ap.add_argument('--out', default=os.path.join(HERE, '../../../src/Framing.Catalogue/Tables'))
    ap.add_argument('--sample', help='also write every 400th star, and all fast or extreme ones, as CSV for the tests')
    a = ap.parse_args()

    first, stars = read(a.stars)
    highest = max(s[7] for s in stars)
    cell_start, number_start = array.array('I'), array.array('I')
    places, motions = array.array('Q'), array.array('h')
    numbers, by_number = array.array('I'), array.array('I', [0xFFFFFFFF]) * (highest + 1)
    fast, largest = [(0, 0)], 0
    for i, (cell, v, _, _, up, step, colour, hip, motion) in enumerate(stars):
        while len(cell_start) <= cell:
            cell_start.append(i)
            number_start.append(len(numbers))
        places.append(up | step << 21 | (hip > 0) << 42 | v << 43 | colour << 54)
        if hip:
            numbers.append(hip)
            by_number[hip] = i
        if motion is None:
            motions.extend((ESCAPE, 0))
        elif max(map(abs, motion)) > 32767:
            motions.extend((ESCAPE, len(fast)))
            fast.append(motion)
        else:
            motions.extend(motion)
        if motion:
            largest = max(largest, math.ceil(math.hypot(*motion)))
    while len(cell_start) <= first[-1]:
        cell_start.append(len(stars))
        number_start.append(len(numbers))

    parameters = struct.pack('<5I2i', len(stars), first[-1], BANDS, len(numbers), highest, BAND, largest)
    tables.write(os.path.join(a.out, 'stars.bin'), 'FRSTARS1', [
        parameters, array.array('I', first).tobytes(), cell_start.tobytes(), number_start.tobytes(), places.tobytes(),
        motions.tobytes(), numbers.tobytes(), by_number.tobytes(), b''.join(struct.pack('<ii', *m) for m in fast)])
    print(len(stars), 'stars,', first[-1], 'cells,', len(fast) - 1, 'fast stars, largest motion', largest / 10, 'mas a year')
    if a.sample:
        write_sample(a.stars, a.sample)


def write_sample(stars, sample):
    """Rows of the table as they are, for a test that reads them on its own."""
    with gzip.open(stars, 'rt', encoding='ascii', newline='') as f, open(sample, 'w', encoding='ascii', newline='') as out:
        out.write(next(f))
        for i, line in enumerate(f):
            c = line.rstrip('\n').split(',')
            quick = c[3] and math.hypot(float(c[3]), float(c[4])) > 3000
            edge = abs(float(c[2])) > 89.8 or not c[6] and i % 4 == 0 or float(c[5]) < 1 or not c[3] and i % 50 == 0
            if i % 400 == 0 or quick or edge:
                out.write(line)


if __name__ == '__main__':
    main()
