"""Writes small TrueType files whose digits are what a test draws: for fonts that nobody would make.
The layout is that of the OpenType specification, tables head, hhea, maxp, hmtx, cmap, loca, glyf, name."""

import struct

UNITS = 1000  # to the em


def _checked(data):
    data += bytes(-len(data) % 4)
    return sum(struct.unpack(f">{len(data) // 4}I", data)) & 0xFFFFFFFF


def _glyph(contours):
    """One simple glyph of contours of (x, y) or (x, y, False): a point off the curve."""
    if not contours:
        return b""
    points = [(*p, True)[:3] for contour in contours for p in contour]
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    ends, end = [], -1
    for contour in contours:
        end += len(contour)
        ends.append(end)
    data = struct.pack(">hhhhh", len(contours), min(xs), min(ys), max(xs), max(ys))
    data += struct.pack(f">{len(ends)}H", *ends) + struct.pack(">H", 0)
    data += bytes(1 if p[2] else 0 for p in points)
    for values in (xs, ys):
        last = 0
        for value in values:
            data += struct.pack(">h", value - last)
            last = value
    return data + bytes(-len(data) % 4)


def font_bytes(digits, name="Odd"):
    """A font with these digits, {"8": contours}; each point a whole number of UNITS to the em."""
    glyphs = [_glyph([])] + [_glyph(digits[d]) for d in sorted(digits)]
    advances = [UNITS] * len(glyphs)
    offsets = [0]
    for glyph in glyphs:
        offsets.append(offsets[-1] + len(glyph))
    codes = [ord(d) for d in sorted(digits)]
    # One segment a character, and the one that the format asks for at the end.
    count = len(codes) + 1
    ends, deltas = codes + [0xFFFF], [(k + 1 - c) & 0xFFFF for k, c in enumerate(codes)] + [1]
    sub = struct.pack(">HHHH", 2 * count, 0, 0, 0)
    sub += struct.pack(f">{count}H", *ends) + b"\0\0" + struct.pack(f">{count}H", *ends)
    sub += struct.pack(f">{count}H", *deltas) + bytes(2 * count)
    cmap = struct.pack(">HHHHI", 0, 1, 3, 1, 12) + struct.pack(">HHH", 4, len(sub) + 6, 0) + sub
    texts = [(1, name.encode("utf-16-be")), (2, "Regular".encode("utf-16-be"))]
    records, strings = b"", b""
    for number, text in texts:
        records += struct.pack(">6H", 3, 1, 0x409, number, len(text), len(strings))
        strings += text
    points = max((sum(len(c) for c in digits[d]) for d in digits), default=0)
    parts = max((len(digits[d]) for d in digits), default=0)
    tables = {
        b"cmap": cmap,
        b"glyf": b"".join(glyphs),
        b"head": struct.pack(">IIIIHHQQhhhhHHhhh", 0x10000, 0x10000, 0, 0x5F0F3CF5, 0, UNITS, 0, 0,
                             0, 0, UNITS, UNITS, 0, 8, 2, 1, 0),
        b"hhea": struct.pack(">IhhhHhhhhhhhhhhhH", 0x10000, 800, -200, 0, UNITS, 0, 0, UNITS, 1, 0, 0,
                             0, 0, 0, 0, 0, len(glyphs)),
        b"hmtx": b"".join(struct.pack(">Hh", a, 0) for a in advances),
        b"loca": struct.pack(f">{len(offsets)}I", *offsets),
        b"maxp": struct.pack(">I14H", 0x10000, len(glyphs), min(points, 65535), parts, 0, 0, 2, 0, 0,
                             0, 0, 0, 0, 0, 0),
        b"name": struct.pack(">HHH", 0, len(texts), 6 + 12 * len(texts)) + records + strings,
    }
    at = 12 + 16 * len(tables)
    head = struct.pack(">IHHHH", 0x10000, len(tables), 128, 3, 16 * len(tables) - 128)
    body = b""
    for tag in sorted(tables):
        data = tables[tag]
        head += tag + struct.pack(">III", _checked(data), at + len(body), len(data))
        body += data + bytes(-len(data) % 4)
    return head + body
