#!/usr/bin/env python3
"""Packs deep-sky.csv and star-names.csv, and the keys by which both are found, into the embedded table objects.bin.
Python 3 alone; a few seconds (stars.csv.gz tells which of several stars of one name is the brightest).

Sections (little endian); a text is an offset into section 3, 0 for none
  0  objects     52 bytes a row, in the order of deep-sky.csv: uint32 id, other ids, members, name, source (lists with
                 bars between); int32 right ascension and declination of the place, the same of the middle of the
                 box, 1e-4 degrees; int32 major and minor size in 0.01 arcmin, -1 if unknown; int16 position angle in
                 degrees, -1 if unknown; int16 V in 0.1 mag, -32768 if unknown; uint8 type, uint8 size quality; 2 spare
  1  star names  20 bytes a row, by Hipparcos number: uint32 number, proper name, Bayer letter spelled out, the letter
                 itself; uint16 Flamsteed number, 0 for none; uint8 constellation (1 to 88 in the order of
                 name_keys.py, 0 for none); 1 spare
  2  keys        8 bytes a row, sorted by the bytes of the key: uint32 key (text), uint32 what it means: a row of
                 section 0, or 0x80000000 + a row of section 1, and 0x40000000 more if the key is the star's letter or
                 number in its constellation.  A key that stands on several rows is ambiguous
  3  texts       uint16 length and UTF-8 bytes each
"""
import argparse
import collections
import csv
import gzip
import math
import os
import re
import struct

import name_keys
import tables

HERE = os.path.dirname(os.path.abspath(__file__))
TYPES = ['open-cluster', 'globular-cluster', 'galaxy', 'galaxy-group', 'planetary-nebula', 'emission-nebula',
         'reflection-nebula', 'dark-nebula', 'supernova-remnant', 'star-cloud', 'group']
QUALITIES = ['', 'measured', 'catalogue', 'approximate', 'unverified']
STAR, IN_CONSTELLATION = 0x80000000, 0x40000000

# How much a key says about a row; of two rows the one of the lower rank has it.
DESIGNATION, NAME, VARIANT, LETTER, MEMBER, LOOSE, SHORTENED = range(7)
NOTES = ('with ', 'core', 'double star', 'head of', 'four stars')
GENERAL = {'nebula', 'galaxy', 'cluster', 'region', 'complex', 'remnant', 'supernova'}
CONSTELLATION_WORDS = {c[1] for c in name_keys.CONSTELLATIONS} | {'coma', 'ursa', 'canis'}


def read_csv(name):
    with open(os.path.join(HERE, name), encoding='utf-8', newline='') as f:
        return list(csv.DictReader(line for line in f if not line.startswith('#')))


def separation(a, b):
    """Arcmin between two (ra, dec) in degrees."""
    r1, d1, r2, d2 = (math.radians(x) for x in a + b)
    h = math.sin((d2 - d1) / 2) ** 2 + math.cos(d1) * math.cos(d2) * math.sin((r2 - r1) / 2) ** 2
    return math.degrees(2 * math.asin(min(1, math.sqrt(h)))) * 60


def members_only(row, other):
    """In a row for several objects the designations of the objects are members, not other names (Messier 40 and 73 are one)."""
    prefix = re.match(r'[A-Za-z]*', other)[0]
    return (row['type'] in ('group', 'galaxy-group') and not re.fullmatch(r'M \d+', row['id'])
            and prefix not in ('ACO', 'HCG', 'Cr', 'Mel', 'C'))


# ---------------------------------------------------------------- names

def spellings(name):
    """A name as it stands, without its remark in parentheses, and with the other name given there."""
    found = [(name, NAME)]
    m = re.search(r'\(([^)]*)\)', name)
    if m:
        inside, before, after = m[1], name[:m.start()].strip(), name[m.end():].strip()
        outside = (before + ' ' + after).strip()
        if outside:
            found.append((outside, NAME))
        if not inside.startswith(NOTES) and inside not in ('stem', 'bowl', 'ET', 'Box'):
            found.append(((inside + ' ' + after).strip(), VARIANT))
        if inside.startswith(('four', 'double')):
            found.pop(0)
    return found


def name_variants(name, rank):
    """(key, rank) for a common name: in full, without possessive or 'and', without the general words at its end."""
    texts = {name, re.sub(r"['’]s?\b", '', name), re.sub(r'\band\b', ' ', name)}
    for text in sorted(texts):
        yield name_keys.key(text), rank if text == name else max(rank, VARIANT)
        words, cut, cluster = name_keys.words(text), 0, False
        while len(words) > 1 and words[-1] in GENERAL:
            cluster = cluster or words[-1] == 'cluster'
            words, cut = words[:-1], cut + 1
            short = name_keys.glue(words)
            # "Leo Cluster" must not make a target of a constellation; "Orion" for its nebula is what people say
            if len(short) > 2 and not short.isdigit() and not (cluster and short in CONSTELLATION_WORDS):
                yield name_keys.key(' '.join(words)), SHORTENED + cut


class Keys:
    def __init__(self):
        self.by_key = collections.defaultdict(dict)

    def add(self, key, rank, target):
        if key:
            old = self.by_key[key].get(target)
            self.by_key[key][target] = rank if old is None else min(old, rank)

    def settled(self, place, weight):
        """For each key the rows of the best rank; rows that lie together count as the largest or brightest of them."""
        for key in sorted(self.by_key, key=lambda k: k.encode('ascii')):
            ranks = self.by_key[key]
            best = min(ranks.values())
            rows = sorted((t for t, r in ranks.items() if r == best), key=lambda t: (-weight(t), t))
            first = rows[0]
            apart = [t for t in rows[1:] if separation(place(first), place(t)) > max(5, weight(first) / 2)]
            yield key, best, [first] + apart


def object_keys(keys, rows, find):
    for i, row in enumerate(rows):
        keys.add(name_keys.key(row['id']), DESIGNATION, i)
        for abell in re.findall(r'ACO (\d+)', row['other_ids']):
            keys.add(name_keys.key('A ' + abell), VARIANT, i)      # "Abell 426" is a cluster, "Abell 31" a planetary
        for other in filter(None, row['other_ids'].split('|')):
            keys.add(name_keys.key(other), MEMBER if members_only(row, other) else DESIGNATION, i)
        names = spellings(row['name']) if row['name'] else []
        # an id that is a name is shortened like one
        if not re.search(r'\d', row['id']):
            names.append((row['id'], NAME))
        for text, rank in names:
            for key, r in name_variants(text, rank):
                keys.add(key, r, i)
    # A large field keeps the name it was chosen by, also where a smaller thing inside it is named the same.
    for large in read_csv('large-targets.csv'):
        for text, rank in spellings(large['name']) if large['name'] else []:
            for key, r in name_variants(text, rank):
                keys.add(key, r, find[large['id']])
    for extra in read_csv('other-names.csv'):
        for key, r in name_variants(extra['name'], VARIANT):
            keys.add(key, r, find[extra['id']])


def star_keys(keys, names, place, bright):
    groups = collections.defaultdict(list)
    for i, n in enumerate(names):
        target = STAR + i
        if n['proper_name']:
            for key, r in name_variants(n['proper_name'], NAME):
                if r < SHORTENED:
                    keys.add(key, r, target)
        con = n['constellation']
        if con and n['bayer']:
            keys.add(name_keys.key(n['bayer'] + ' ' + con), LETTER, target)
            groups[n['bayer'].split()[0] + ' ' + con].append(target)
        if con and n['flamsteed']:
            keys.add(name_keys.key(n['flamsteed'] + ' ' + con), LETTER, target)
            groups[n['flamsteed'] + ' ' + con].append(target)
    for text, targets in groups.items():
        targets = sorted(set(targets), key=bright)
        for t in targets:
            keys.add(name_keys.key(text), LOOSE if len(targets) > 1 else LETTER, t)
        # parts of a double: "61 Cyg A", "61 Cyg B"
        near = all(separation(place(targets[0]), place(t)) < 2 for t in targets)
        if near and 1 < len(targets) < 5:
            for letter, t in zip('abcd', targets):
                keys.add(name_keys.key(text) + letter, LOOSE, t)


# ---------------------------------------------------------------- the table

def pack_object(row, text):
    others = [o for o in row['other_ids'].split('|') if o]
    members = [o for o in others if members_only(row, o)]
    others = [o for o in others if o not in members]
    place = [round(float(row['ra_deg']) * 1e4), round(float(row['dec_deg']) * 1e4)]
    box = re.search(r'centre of the box ([0-9.]+) ([-+][0-9.]+)', row['source'])
    middle = [round(float(g) * 1e4) for g in box.groups()] if box else place
    size = [round(float(row[k]) * 100) if row[k] else -1 for k in ('major_arcmin', 'minor_arcmin')]
    return struct.pack('<5I6ihhBBxx', *(text(t) for t in (row['id'], '|'.join(others), '|'.join(members), row['name'],
                                                          row['source'])), *place, *middle, *size,
                       int(row['pa_deg'] or -1), round(float(row['v_mag']) * 10) if row['v_mag'] else -32768,
                       TYPES.index(row['type']), QUALITIES.index(row['size_quality']))


def pack_name(n, text):
    codes = [c[0] for c in name_keys.CONSTELLATIONS]
    return struct.pack('<4IHBx', int(n['hip']), text(n['proper_name']), text(n['bayer']), text(n['bayer_letter']),
                       int(n['flamsteed'] or 0), codes.index(n['constellation']) + 1 if n['constellation'] else 0)


def main():
    ap = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ap.add_argument('--stars', required=True, help='stars.csv.gz, made by build_stars.py')
    ap.add_argument('--out', default=os.path.join(HERE, '../../../src/Framing.Catalogue/Tables'))
    ap.add_argument('--report', action='store_true', help='print the keys that several rows share')
    a = ap.parse_args()

    rows, names = read_csv('deep-sky.csv'), sorted(read_csv('star-names.csv'), key=lambda n: int(n['hip']))
    wanted, stars = {n['hip'] for n in names}, {}
    with gzip.open(a.stars, 'rt', encoding='ascii', newline='') as f:
        for s in csv.DictReader(f):
            if s['hip'] in wanted:
                stars[s['hip']] = (float(s['ra_deg']), float(s['dec_deg']), float(s['v_mag']))

    def star(target):
        return stars[names[target - STAR]['hip']]

    def place(target):
        return star(target)[:2] if target >= STAR else (float(rows[target]['ra_deg']), float(rows[target]['dec_deg']))

    def weight(target):
        """Size in arcmin; of stars the brightest, which takes up no room."""
        return 1e-3 * (20 - star(target)[2]) if target >= STAR else float(rows[target]['major_arcmin'] or 0)

    keys = Keys()
    object_keys(keys, rows, {r['id']: i for i, r in enumerate(rows)})
    star_keys(keys, names, place, lambda t: (star(t)[2], t))

    strings = tables.Strings()
    objects = b''.join(pack_object(r, strings.add) for r in rows)
    named = b''.join(pack_name(n, strings.add) for n in names)
    index, shared = bytearray(), []
    for key, rank, targets in keys.settled(place, weight):
        for t in targets:
            letter = IN_CONSTELLATION if t >= STAR and rank in (LETTER, LOOSE) else 0
            index += struct.pack('<II', strings.add(key), t + letter)
        if len(targets) > 1:
            shared.append((rank, key, [rows[t]['id'] if t < STAR else 'HIP ' + names[t - STAR]['hip'] for t in targets]))
    tables.write(os.path.join(a.out, 'objects.bin'), 'FRNAMES1', [objects, named, bytes(index), bytes(strings.pool)])
    print(len(rows), 'objects,', len(names), 'named stars,', len(index) // 8, 'keys,', len(shared), 'of them ambiguous')
    if a.report:
        for rank, key, ids in sorted(shared):
            print(rank, key, ids)


if __name__ == '__main__':
    main()
