"""Digits that nobody would draw, to take time or memory: contours by the name of what is wrong. Some
are past a limit and are refused, some lie just below all of them and are made."""

import math
import random

HIGH = 700  # units of 1000


def rectangle(x0, y0, x1, y1):
    return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]


def hole(contour):
    return contour[::-1]


def round_of(points):
    """Whole units, none twice in a row."""
    whole = []
    for x, y in points:
        p = (round(x), round(y))
        if not whole or p != whole[-1]:
            whole.append(p)
    return whole


def random_points(count):
    drawn = random.Random(count)
    return [[(drawn.randrange(500), drawn.randrange(HIGH)) for _ in range(count)]]


def random_curves(count):
    drawn = random.Random(count)
    return [[(drawn.randrange(500), drawn.randrange(HIGH), k % 2 == 0) for k in range(2 * count)]]


def comb(teeth, wide=3000):
    step = wide / teeth
    points = [(0, 0), (wide, 0)]
    for k in reversed(range(teeth)):
        points += [((k + 0.9) * step, HIGH), ((k + 0.4) * step, HIGH), ((k + 0.4) * step, 60),
                   (k * step, 60)]
    return [round_of(points)]


def zigzag(teeth, deep):
    """A bar whose long sides have teeth."""
    points = [(k % 2 * deep, HIGH * k / teeth) for k in range(teeth)]
    points += [(500 - k % 2 * deep, HIGH * (1 - k / teeth)) for k in range(teeth)]
    return [hole(round_of(points))]


def spiral(turns, corners=24):
    """An arm that winds in, as wide as the gap beside it."""
    pitch = 350 / turns
    out, back = [], []
    for k in range(turns * corners + 1):
        angle, radius = 2 * math.pi * k / corners, pitch * k / corners
        way = (math.cos(angle), math.sin(angle))
        out.append((350 + radius * way[0], 350 + radius * way[1]))
        back.append((350 + (radius + pitch / 2) * way[0], 350 + (radius + pitch / 2) * way[1]))
    return [hole(round_of(out + back[::-1]))]


def star(points, skip):
    """Each corner joined to the one so many further on: all its edges cross many others."""
    at = [2 * math.pi * k * skip / points for k in range(points)]
    return [round_of((350 + 350 * math.cos(a), 350 + 350 * math.sin(a)) for a in at)]


def spikes(count, inner):
    at = [math.pi * k / count for k in range(2 * count)]
    return [round_of((350 + (350 if k % 2 else inner) * math.cos(a),
                      350 + (350 if k % 2 else inner) * math.sin(a)) for k, a in enumerate(at))]


def nested(rings):
    step = 340 / rings / 2
    contours = []
    for k in range(rings):
        for inside in (0, 1):
            by = (2 * k + inside) * step
            contour = rectangle(round(by), round(by), round(HIGH - by), round(HIGH - by))
            contours.append(hole(contour) if inside else contour)
    return contours


def islands(count, corners, radius):
    """A plate with round holes of many corners."""
    contours = [rectangle(0, 0, 500, HIGH)]
    for k in range(count):
        middle = (500 * (k % 2 + 0.5) / 2, HIGH * (k // 2 + 0.5) / ((count + 1) // 2))
        contours.append(hole(round_of(
            (middle[0] + (radius - 4 * (i % 2)) * math.cos(2 * math.pi * i / corners),
             middle[1] + (radius - 4 * (i % 2)) * math.sin(2 * math.pi * i / corners))
            for i in range(corners))))
    return contours


def dots(count):
    across = math.ceil(math.sqrt(count))
    size = 600 // across
    return [rectangle(size * (k % across), size * (k // across), size * (k % across) + size // 2,
                      size * (k // across) + size // 2) for k in range(count)] + [
                          rectangle(0, 660, 600, 700)]


def to_and_fro(times):
    """A line walked again and again, with a plate beside it."""
    line = [(600, 0 if k % 2 else HIGH) for k in range(times)]
    return [rectangle(0, 0, 500, HIGH), line + [(601, 0)]]


def stacked(times):
    """The same plate on itself."""
    return [rectangle(0, 0, 500, HIGH)] * times


def loops(count):
    """An upright line of tiny curves that cross themselves."""
    points = [(0, 0), (500, 0)]
    for k in range(count):
        y = HIGH * k / count
        points += [(500, round(y)), (560, round(y + 2), False), (440, round(y + 2), False)]
    return [[(*p, True)[:3] for p in points] + [(500, HIGH, True), (0, HIGH, True)]]


def waves(count):
    """Curves side by side: each is broken into many chords."""
    points = []
    for k in range(count):
        points += [(500 if k % 2 else 0, round(HIGH * k / count), True),
                   (250, round(HIGH * (k + 0.5) / count) + 3, False)]
    points += [(800, HIGH, True), (800, 0, True)]
    return [points]


def turned(contours, degrees):
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return [round_of((x * c - y * s, x * s + y * c) for x, y in contour) for contour in contours]


PAST_LIMITS = {
    "150 curves that cross": random_curves(150),
    "500 random points": random_points(500),
    "2000 random points": random_points(2000),
    "comb of 400 teeth": comb(400, 30000),
    "comb of 200 teeth, slanted": turned(comb(200), 15),
    "spiral of 80 turns": spiral(80),
    "star of 1999 points": star(1999, 998),
    "star of 99 points": star(99, 49),
    "1500 spikes": spikes(1500, 100),
    "nested rings, 200": nested(170),
    "900 dots": dots(900),
    "a line 2000 times": to_and_fro(2000),
    "a plate 60 times on itself": stacked(60),
    "2000 tiny loops": loops(2000),
    "16000 points": zigzag(8000, 200),
    "300 waves": waves(300),
    "4 islands of 500 corners": islands(4, 500, 90),
    "60 holes of 24 corners": islands(60, 24, 12),
    "zigzag": zigzag(690, 12),
    "wide": [rectangle(0, 0, 2200, HIGH)],
}
BELOW_LIMITS = {
    "22 random points": random_points(22),
    "comb of 27 teeth": comb(27, 800),
    "comb of 27 teeth, slanted": turned(comb(27, 800), 15),
    "teeth": zigzag(50, 12),
    "spiral of 14 turns": spiral(14, 100),
    "spikes": spikes(52, 60),
    "short spikes": spikes(90, 320),
    "nested rings, 2 islands": nested(3),
    "4 islands of many corners": islands(4, 20, 90),
    "50 holes": islands(50, 4, 12),
    "58 dots": dots(58),
    "small loops": loops(58),
}
