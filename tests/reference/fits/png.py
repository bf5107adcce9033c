"""PNG files of every colour type and depth, plain and interlaced, with the samples they were made from. See README.md.

Written chunk by chunk after the PNG specification (Third Edition), so that the samples are known by construction;
a second library (Pillow) must read the 8-bit ones the same way.
"""
import json
import os
import random
import struct
import sys
import zlib

from PIL import Image

WIDTH, HEIGHT = 11, 7
CHANNELS = {0: 1, 2: 3, 3: 1, 4: 2, 6: 4}
PASSES = ((0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4), (0, 2, 2, 4), (1, 0, 2, 2), (0, 1, 1, 2))


def chunk(kind, data):
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


def packed(samples, depth):
    """A row of samples as bytes, most significant bit first."""
    if depth == 16:
        return b"".join(struct.pack(">H", s) for s in samples)
    bits = "".join(f"{s:0{depth}b}" for s in samples)
    bits += "0" * (-len(bits) % 8)
    return bytes(int(bits[i:i + 8], 2) for i in range(0, len(bits), 8))


def rows(pixels, depth, interlaced, colour, draw):
    """Filtered rows. Filters 0, 1 and 2 are used in turn."""
    size = max(1, CHANNELS[colour] * depth // 8)
    out = b""
    for x0, y0, dx, dy in PASSES if interlaced else ((0, 0, 1, 1),):
        if x0 >= WIDTH:
            continue
        before = None
        for y in range(y0, HEIGHT, dy):
            row = packed([s for x in range(x0, WIDTH, dx) for s in pixels[y][x]], depth)
            before = before or bytes(len(row))
            kind = draw.randrange(3)
            if kind == 1:
                data = bytes((row[i] - (row[i - size] if i >= size else 0)) & 255 for i in range(len(row)))
            elif kind == 2:
                data = bytes((row[i] - before[i]) & 255 for i in range(len(row)))
            else:
                data = row
            out += bytes([kind]) + data
            before = row
    return out


def make(folder):
    draw = random.Random(20261205)
    answers = []
    kinds = [(0, d) for d in (1, 2, 4, 8, 16)] + [(2, 8), (2, 16), (3, 4), (3, 8), (4, 8), (4, 16), (6, 8), (6, 16)]
    for colour, depth in kinds:
        for interlaced in (False, True):
            count = CHANNELS[colour]
            palette = [[draw.randrange(256) for _ in range(3)] for _ in range(13)]
            top = 12 if colour == 3 else (1 << depth) - 1
            pixels = [[[draw.randint(0, top) for _ in range(count)] for _ in range(WIDTH)] for _ in range(HEIGHT)]
            file = b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", WIDTH, HEIGHT, depth, colour, 0, 0, interlaced))
            if colour == 3:
                file += chunk(b"PLTE", bytes(v for entry in palette for v in entry))
            data = zlib.compress(rows(pixels, depth, interlaced, colour, draw))
            file += chunk(b"IDAT", data[:9]) + chunk(b"IDAT", data[9:]) + chunk(b"IEND", b"")
            name = f"type{colour}-{depth}{'-interlaced' if interlaced else ''}.png"
            with open(os.path.join(folder, name), "wb") as out:
                out.write(file)
            scale = 255 // ((1 << depth) - 1) if depth < 8 and colour == 0 else 1
            shown = [[palette[p[0]] if colour == 3 else [s * scale for s in p] for p in row] for row in pixels]
            if depth == 8:
                mode = {0: "L", 2: "RGB", 3: "RGB", 4: "LA", 6: "RGBA"}[colour]
                flat = [tuple(p) for row in shown for p in row]
                seen = list(Image.open(os.path.join(folder, name)).convert(mode).getdata())
                assert seen == (flat if len(mode) > 1 else [p[0] for p in flat]), name
            answers.append({"file": name, "depth": depth, "rows": shown})
    with open(os.path.join(folder, "answers.json"), "w") as out:
        json.dump(answers, out)


if __name__ == "__main__":
    make(sys.argv[1])
