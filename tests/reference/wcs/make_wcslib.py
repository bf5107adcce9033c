#!/usr/bin/env python3
"""100,000 random points each way through random headers of every projection that is read, answered by wcslib.

Debian: apt-get install libwcs7 python3-numpy (written with wcslib 7.12).
Run:    /usr/bin/python3 tests/reference/wcs/make_wcslib.py
Writes: tests/Framing.Fits.Tests/Data/wcs/wcslib.bin.gz

The same seed gives the same file. Pixels count as FITS does. Layout, little-endian, one block a header:
  uint16 length, that many bytes of header cards (newlines between them)
  uint16 n, n times: int32 x, int32 y in 1/1024 px; uint48 right ascension in 360/2^48 degrees,
             uint48 declination + 90 in 180/2^47 degrees; both all ones where wcslib finds no answer
  uint16 n, n times: uint32 right ascension in 360/2^32 degrees, uint32 declination + 90 in 180/2^31 degrees;
             float64 x, float64 y; not a number where wcslib finds no answer
"""
import ctypes
import gzip
import pathlib
import struct

import numpy

OUT = pathlib.Path(__file__).resolve().parents[2] / "Framing.Fits.Tests" / "Data" / "wcs" / "wcslib.bin.gz"
LIB = ctypes.CDLL("libwcs.so.7")
HEADERS = 500
POINTS = 200
RELAX_ALL = 0x000FFFFF
D = ctypes.POINTER(ctypes.c_double)
I = ctypes.POINTER(ctypes.c_int)


class Wcs:
    """A header in wcslib, through its own parser."""

    def __init__(self, cards):
        text = "".join(card.ljust(80) for card in cards).encode() + b"END".ljust(80)
        nreject, nwcs = ctypes.c_int(), ctypes.c_int()
        self.all = ctypes.c_void_p()
        status = LIB.wcspih(text, len(text) // 80, RELAX_ALL, 0, ctypes.byref(nreject), ctypes.byref(nwcs),
                            ctypes.byref(self.all))
        if status or nwcs.value != 1 or nreject.value or LIB.wcsset(self.all):
            raise ValueError(cards)

    def __del__(self):
        if self.all:
            LIB.wcsvfree(ctypes.byref(ctypes.c_int(1)), ctypes.byref(self.all))

    def p2s(self, pixel):
        """World coordinates and whether each is one; None where the call as a whole fails."""
        return self._call(LIB.wcsp2s, pixel, 8, to_sky=True)

    def s2p(self, world):
        return self._call(LIB.wcss2p, world, 9, to_sky=False)

    def _call(self, function, given, partly, to_sky):
        given = numpy.ascontiguousarray(given, dtype=float)
        n = len(given)
        first, found = numpy.zeros((n, 2)), numpy.zeros((n, 2))
        phi, theta = numpy.zeros(n), numpy.zeros(n)
        stat = numpy.zeros(n, dtype=numpy.int32)
        d = lambda a: a.ctypes.data_as(D)
        middle = [first, phi, theta] if to_sky else [phi, theta, first]
        status = function(self.all, n, 2, d(given), *[d(a) for a in middle], d(found), stat.ctypes.data_as(I))
        return (found, stat == 0) if status in (0, partly) else None


def number(value):
    return repr(float(value))


def matrix_cards(random, scale, extra):
    """A matrix in one of the three forms, both parities, skewed a little now and then.

    TPV comes with CD alone: wcslib applies its terms before CDELT, the convention after it (they agree where CDELT is 1).
    """
    form = 0 if extra == "TPV" else random.integers(3)
    turn = random.uniform(0.0, 2.0 * numpy.pi)
    sign = random.choice([-1.0, 1.0])
    sx, sy = scale * sign, scale * random.choice([1.0, random.uniform(0.5, 2.0)])
    c, s = numpy.cos(turn), numpy.sin(turn)
    if form == 0:
        skew = random.choice([0.0, 0.1])
        return [f"CD1_1   = {number(sx * c)}", f"CD1_2   = {number(-sy * s + skew * scale)}",
                f"CD2_1   = {number(sx * s)}", f"CD2_2   = {number(sy * c)}"]
    deltas = [f"CDELT1  = {number(sx)}", f"CDELT2  = {number(sy)}"]
    if form == 1:
        return deltas + [f"PC1_1   = {number(c)}", f"PC1_2   = {number(-s)}",
                         f"PC2_1   = {number(s)}", f"PC2_2   = {number(c)}"]
    return deltas


def sip_cards(random, size):
    """Terms that move the corners of the picture by up to 1 % of its size; each order less."""
    cards, half = [], size / 2.0
    for name in ("A", "B"):
        order = int(random.integers(2, 6))
        cards.append(f"{name}_ORDER = {order}")
        for p in range(order + 1):
            for q in range(order + 1 - p):
                if p + q >= 2 and random.random() < 0.8:
                    most = 0.004 * half / half ** (p + q) / (order - 1)
                    cards.append(f"{name}_{p}_{q}   = {number(random.uniform(-most, most))}")
    if random.random() < 0.5:
        # A rough reverse, as headers have it: the same terms with the other sign.
        for card in list(cards):
            key, value = card.split("=")
            key = key.strip().replace("A_", "AP_").replace("B_", "BP_")
            cards.append(f"{key.ljust(8)}= {value.strip() if 'ORDER' in key else number(-float(value))}")
    return cards


def tpv_cards(random, half):
    """Terms of a degree up to 7, each of which moves a place that far from the middle by up to 0.2 % of the way.

    A lens does not fold its picture over, so the distance is the farthest that a pixel of the picture can have.
    """
    cards = []
    powers = [0, 1, 1, 1, 2, 2, 2, 3, 3, 3, 3, 3, 4, 4, 4, 4, 4, 5, 5, 5, 5, 5, 5, 5,
              6, 6, 6, 6, 6, 6, 6, 7, 7, 7, 7, 7, 7, 7, 7, 7]
    last = int(random.choice([11, 17, 23, 39]))
    for axis in (1, 2):
        for m in range(last + 1):
            if m == 1:
                cards.append(f"PV{axis}_1   = {number(1.0 + random.uniform(-0.01, 0.01))}")
            elif random.random() < 0.7:
                most = 0.002 * half / half ** powers[m]
                cards.append(f"PV{axis}_{m}".ljust(8) + f"= {number(random.uniform(-most, most))}")
    return cards


def make(random, kind):
    """Cards of one header, the size of its picture, and whether it has a distortion."""
    code, extra = kind
    zenithal = code in ("TAN", "STG", "SIN", "ARC", "ZEA")
    size = float(random.choice([60, 800, 4000, 9000]))
    if extra:
        field = random.choice([0.5, 3.0, 20.0])
    elif zenithal:
        field = random.choice([0.05, 1.0, 10.0, 60.0, 150.0 if code != "TAN" else 100.0, 400.0 if code != "TAN" else 100.0])
    else:
        field = random.choice([1.0, 30.0, 200.0, 420.0])
    scale = field / size
    # Declination first, except with TPV: there wcslib 7.12 does not take PV1_1 = PV2_1 = 1 for no distortion.
    swapped = random.random() < 0.28 and extra != "TPV"
    lng, lat = (2, 1) if swapped else (1, 2)
    suffix = "-SIP" if extra == "SIP" else ""
    types = {lng: f"RA---{code}{suffix}", lat: f"DEC--{code}{suffix}"}
    ra = random.uniform(0.0, 360.0)
    dec = numpy.degrees(numpy.arcsin(random.uniform(-1.0, 1.0)))
    if random.random() < 0.12:
        dec = float(random.choice([90.0, -90.0, 89.99, -89.999, 0.0]))
    cards = [f"CTYPE1  = '{types[1]}'", f"CTYPE2  = '{types[2]}'",
             f"CRPIX{lng}  = {number(random.uniform(-0.2, 1.2) * size)}",
             f"CRPIX{lat}  = {number(random.uniform(0.0, 1.0) * size)}",
             f"CRVAL{lng}  = {number(ra)}", f"CRVAL{lat}  = {number(dec)}"]
    cards += matrix_cards(random, scale, extra)
    if not any(card.startswith(("PC", "CD1_", "CD2_")) for card in cards):
        cards.append(f"CROTA{lat}  = {number(random.uniform(-180.0, 180.0))}")
    if random.random() < 0.4:
        cards.append(f"LONPOLE = {number(random.choice([0.0, 90.0, 180.0, 270.0, random.uniform(-180, 180)]))}")
    if random.random() < 0.4:
        cards.append(f"LATPOLE = {number(random.choice([90.0, -90.0, 0.0, random.uniform(-90, 90)]))}")
    if code == "SIN" and random.random() < 0.5:
        cards += [f"PV{lat}_1   = {number(random.uniform(-0.5, 0.5))}", f"PV{lat}_2   = {number(random.uniform(-0.5, 0.5))}"]
    if code == "CEA" and random.random() < 0.7:
        cards.append(f"PV{lat}_1   = {number(random.uniform(0.1, 1.0))}")
    if not extra and random.random() < 0.25:
        if zenithal:
            cards += [f"PV{lng}_1   = {number(random.uniform(-180, 180))}", f"PV{lng}_2   = {number(random.uniform(50, 90))}"]
        else:
            cards += [f"PV{lng}_1   = {number(random.uniform(-90, 90))}", f"PV{lng}_2   = {number(random.uniform(-40, 40))}"]
        if random.random() < 0.5:
            cards.append(f"PV{lng}_0   = 1.0")
    elif not extra and random.random() < 0.1:
        cards.append(f"PV{lng}_3   = {number(random.uniform(-180, 180))}")
    if extra == "SIP":
        cards += sip_cards(random, size)
    if extra == "TPV":
        cards += tpv_cards(random, 2.0 * field)
    return cards, size, bool(extra)


def q48(values, unit):
    return numpy.round(numpy.asarray(values) / unit).astype(numpy.int64)


def six(value):
    return int(value).to_bytes(8, "little")[:6]


def main():
    random = numpy.random.default_rng(20261125)
    kinds = [("TAN", ""), ("TAN", "SIP"), ("TPV", "TPV"), ("SIN", ""), ("ARC", ""), ("STG", ""), ("ZEA", ""), ("CAR", ""),
             ("CEA", ""), ("MER", ""), ("AIT", ""), ("SIN", "SIP"), ("ARC", "SIP"), ("TAN", "SIP"), ("TPV", "TPV")]
    out = bytearray()
    counts = dict(headers=0, there=0, there_failed=0, back=0, back_failed=0, whole=0, given_up=0, contradicting=0)
    while counts["headers"] < HEADERS:
        cards, size, distorted = make(random, kinds[counts["headers"] % len(kinds)])
        try:
            wcs = Wcs(cards)
        except ValueError:
            # LONPOLE, LATPOLE and the fiducial point contradict each other.
            counts["contradicting"] += 1
            continue
        if wcs.p2s([[size / 2, size / 2]]) is None:
            continue
        block = bytearray()
        text = "\n".join(cards).encode()
        block += struct.pack("<H", len(text)) + text

        grid = numpy.round(random.uniform(-0.1, 1.1, (POINTS, 2)) * size * 1024.0).astype(numpy.int64)
        found, good = wcs.p2s(grid / 1024.0)
        block += struct.pack("<H", POINTS)
        failed = 0
        for (x, y), (ra, dec), ok in zip(grid, found, good):
            block += struct.pack("<ii", x, y)
            if ok:
                block += six(q48(ra % 360.0, 360.0 / 2**48) % 2**48) + six(q48(dec + 90.0, 180.0 / 2**47))
            else:
                block += b"\xff" * 12
                failed += 1

        # Half within the picture, half anywhere; with a distortion these only behind the plane, where it does not matter.
        inside = random.uniform(0.0, 1.0, (POINTS * 2 if distorted else POINTS, 2)) * size
        sky, good = wcs.p2s(inside)
        if distorted:
            # wcslib's inverse of a distortion gives up at some places that it has just drawn itself: it answers nothing
            # there. They are counted and left out.
            for k, place in enumerate(sky):
                if good[k]:
                    again = wcs.s2p([place])
                    if again is None or not again[1][0]:
                        good[k] = False
                        counts["given_up"] += 1
        plane = "-TAN" in cards[0] or "-TPV" in cards[0]
        sky = sky[good][: POINTS if distorted and not plane else POINTS // 2]
        rest = POINTS - len(sky)
        ra = random.uniform(0.0, 360.0, rest * 8)
        dec = numpy.degrees(numpy.arcsin(random.uniform(-1.0, 1.0, rest * 8)))
        anywhere = numpy.column_stack([ra, dec])
        swapped = "RA" not in cards[0]
        if distorted:
            value = {card[:8].strip(): card[9:] for card in cards}
            lng = 2 if swapped else 1
            centre = [float(value[f"CRVAL{lng}"]), float(value[f"CRVAL{3 - lng}"])]
            cos = (numpy.sin(numpy.radians(dec)) * numpy.sin(numpy.radians(centre[1]))
                   + numpy.cos(numpy.radians(dec)) * numpy.cos(numpy.radians(centre[1]))
                   * numpy.cos(numpy.radians(ra - centre[0])))
            anywhere = anywhere[cos < -0.05]
        anywhere = anywhere[:rest]
        if swapped:
            sky = sky[:, ::-1]
        world = numpy.vstack([sky, anywhere])
        ra = q48(world[:, 0] % 360.0, 360.0 / 2**32) % 2**32
        dec = q48(world[:, 1] + 90.0, 180.0 / 2**31)
        world = numpy.column_stack([ra * (360.0 / 2**32), dec * (180.0 / 2**31) - 90.0])
        answers = []
        for k, place in enumerate(world):
            given = [place[::-1] if swapped else place]
            answer = wcs.s2p(given)
            if answer is None:
                if distorted and k >= len(sky):
                    # The call as a whole fails where the distortion of a place behind the plane has no inverse.
                    answer = (numpy.array([[numpy.nan, numpy.nan]]), numpy.array([False]))
                else:
                    counts["whole"] += 1
                    continue
            answers.append((ra[k], dec[k], answer[0][0], answer[1][0]))
        block += struct.pack("<H", len(answers))
        back_failed = 0
        for r, d, (x, y), ok in answers:
            if not ok:
                x = y = float("nan")
                back_failed += 1
            block += struct.pack("<IIdd", r, d, x, y)
        # The sky of a swapped header comes as declination first.
        if swapped:
            head = 2 + len(text) + 2
            for i in range(POINTS):
                at = head + 20 * i + 8
                if block[at:at + 12] != b"\xff" * 12:
                    dec_, ra_ = found[i]
                    block[at:at + 12] = six(q48(ra_ % 360.0, 360.0 / 2**48) % 2**48) + six(q48(dec_ + 90.0, 180.0 / 2**47))
        out += block
        counts["headers"] += 1
        counts["there"] += POINTS
        counts["there_failed"] += failed
        counts["back"] += len(answers)
        counts["back_failed"] += back_failed
    with gzip.GzipFile(OUT, "wb", compresslevel=9, mtime=0) as file:
        file.write(bytes(out))
    print(counts, OUT.stat().st_size)


if __name__ == "__main__":
    main()
