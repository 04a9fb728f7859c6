"""Photographs of a slot with its screw, and of a card beside it, drawn through the pinhole camera, blurred and JPEG
compressed; and the marks found again in their pixels, as a person would tap them."""

import io
import math
import re

from PIL import Image, ImageDraw, ImageFilter

from tests.rules.pinhole import CARD, HEAD

METAL, HOLE, SIDE, TOP, PLASTIC = 130, 20, 75, 235, 235  # grey levels
SLOT_WIDTH, HEAD_RADIUS, ROUNDING = 0.22, 0.215, 3.18 / 25.4  # inches; ISO/IEC 7810 for the card's (from memory)


def circle(middle, radius, height=0.0):
    return [(middle[0] + radius * math.cos(turn / 40 * math.tau), middle[1] + radius * math.sin(turn / 40 * math.tau),
             height) for turn in range(40)]  # fmt: skip


def card_outline(corners):
    """The card's edge with its rounded corners, from its four sharp ones."""
    points = []
    for at in range(4):
        here, before, after = corners[at], corners[at - 1], corners[(at + 1) % 4]
        back, on = (_toward(here, other, ROUNDING) for other in (before, after))
        hub = [back[axis] + on[axis] - here[axis] for axis in (0, 1)]
        for step in range(9):
            turn = step / 8 * math.pi / 2
            points.append((*(hub[axis] + (back[axis] - hub[axis]) * math.cos(turn)
                             + (on[axis] - hub[axis]) * math.sin(turn) for axis in (0, 1)), 0.0))  # fmt: skip
    return points


def _toward(start, end, far):
    share = far / math.dist(start, end)
    return tuple(one + (other - one) * share for one, other in zip(start, end, strict=True))


def taken(pixel, shapes, box):
    """The part ``box`` of the photograph of ``shapes`` [(grey, points in inches)], as its pixels come off a phone."""
    left, top, right, bottom = box
    picture = Image.new("L", (right - left, bottom - top), METAL)
    for grey, points in shapes:
        seen = [pixel(point) for point in points]
        ImageDraw.Draw(picture).polygon([(x - left, y - top) for x, y in seen], fill=grey)
    file = io.BytesIO()
    picture.filter(ImageFilter.GaussianBlur(1.5)).save(file, "JPEG", quality=70)
    return Image.open(file)


def screw_in_slot(slot, offset, axis):
    """The slot with its round ends, and a pancake head with its side standing on the flange."""
    end = slot / 2 - SLOT_WIDTH / 2
    hole = [*circle((end, 0), SLOT_WIDTH / 2)[-10:], *circle((end, 0), SLOT_WIDTH / 2)[:11],
            *circle((-end, 0), SLOT_WIDTH / 2)[10:31]]  # fmt: skip
    rising = [circle((offset, 0), HEAD_RADIUS, HEAD * step / 8) for step in range(8)]
    shapes = [(HOLE, hole), *((SIDE, ring) for ring in rising), (TOP, circle((offset, 0), HEAD_RADIUS, HEAD))]
    return [(grey, [(x * axis[0] - y * axis[1], x * axis[1] + y * axis[0], z) for x, y, z in points])
            for grey, points in shapes]  # fmt: skip


def found_marks(pixel, shapes, near):
    """Ridge end, eave end and middle of the head in the pixels: the darkest's two far ends, the brightest's middle.
    ``near``: the three as projected, which only say where to look, and which end is which."""
    box = (*(int(min(one[at] for one in near)) - 120 for at in (0, 1)),
           *(int(max(one[at] for one in near)) + 120 for at in (0, 1)))  # fmt: skip
    picture = taken(pixel, shapes, box)
    dark, bright = _where(picture, 0, 47), _where(picture, 186, 255)
    ends = [_far_end(dark, (near[at][0] - near[1 - at][0], near[at][1] - near[1 - at][1])) for at in (0, 1)]
    middle = tuple(sum(one[at] for one in bright) / len(bright) for at in (0, 1))
    return [(x + box[0] + 0.5, y + box[1] + 0.5) for x, y in (*ends, middle)]


def found_corners(pixel, corners):
    """The card's corners in the pixels: the tips of its roundings, half way between their two sides."""
    outline, seen = card_outline(corners), [pixel(corner) for corner in corners]
    found = []
    for number, corner in enumerate(seen):
        before, after = (_toward(corner, other, 1.0) for other in (seen[number - 1], seen[(number + 1) % 4]))
        left, top = (int(one) - 90 for one in corner)
        patch = taken(pixel, [(PLASTIC, outline)], (left, top, left + 180, top + 180))
        bright = _where(patch, 183, 255)
        tip = _far_end(bright, tuple(2 * corner[at] - before[at] - after[at] for at in (0, 1)))
        found.append((tip[0] + left + 0.5, tip[1] + top + 0.5))
    return found


def _where(picture, least, most):
    width, level = picture.width, bytes(least <= grey <= most for grey in range(256))
    return [(found.start() % width, found.start() // width)
            for found in re.finditer(b"\x01", picture.tobytes().translate(level))]  # fmt: skip


def _far_end(points, toward):
    """The middle of what lies within a pixel and a half of the farthest."""
    size = math.hypot(*toward)
    reach = [(x * toward[0] + y * toward[1]) / size for x, y in points]
    most = max(reach)
    last = [point for point, far in zip(points, reach, strict=True) if far > most - 1.5]
    return tuple(sum(one[at] for one in last) / len(last) for at in (0, 1))


def card_beside(chance, turned):
    """``(corners, middle)`` of a card lying beside a slot that is turned by ``turned``, in inches."""
    turned += chance.uniform(-0.3, 0.3)
    along, beside = (math.cos(turned), math.sin(turned)), (-math.sin(turned), math.cos(turned))
    away, shift = CARD[1] / 2 + chance.uniform(0.4, 0.7), chance.uniform(-1, 1)
    middle = [beside[at] * away + along[at] * shift for at in (0, 1)]
    corners = [(*(middle[at] + x * CARD[0] / 2 * along[at] + y * CARD[1] / 2 * beside[at] for at in (0, 1)), 0.0)
               for x, y in ((-1, -1), (1, -1), (1, 1), (-1, 1))]  # fmt: skip
    return corners, middle
