"""The frame of both embedded tables: a mark, the number of sections, and where each section lies.

    offset  0   8 bytes   the mark
            8   uint32    number of sections
           12   uint32 x 2 for each section: offset from the start of the file, length in bytes

All numbers are little endian; every section starts at a multiple of eight bytes.
"""
import hashlib
import struct


def write(path, mark, sections):
    """Write the file whole and say what it holds."""
    head = 12 + 8 * len(sections)
    offset = -(-head // 8) * 8
    index, body = b'', b''
    parts = []
    for section in sections:
        index += struct.pack('<II', offset, len(section))
        padded = bytes(section) + bytes(-len(section) % 8)
        parts.append(padded)
        offset += len(padded)
    start = mark.encode('ascii').ljust(8, b'\0') + struct.pack('<I', len(sections)) + index
    start += bytes(-len(start) % 8)
    body = start + b''.join(parts)
    with open(path, 'wb') as f:
        f.write(body)
    print(path.split('/')[-1], len(body), 'bytes, sha256', hashlib.sha256(body).hexdigest())
    for i, section in enumerate(sections):
        print('  section', i, len(section))


class Strings:
    """A pool of texts: uint16 length and UTF-8 bytes; equal texts share a place. Offset 0 is the empty text."""

    def __init__(self):
        self.pool, self.known = bytearray(b'\0\0'), {'': 0}

    def add(self, text):
        if text not in self.known:
            raw = text.encode('utf-8')
            self.known[text] = len(self.pool)
            self.pool += struct.pack('<H', len(raw)) + raw
        return self.known[text]
