"""What a roof is to the layout: plain values, made by ``roof.read_roof``. Lengths are in the outline's own unit."""

from collections import namedtuple

# ``area``; ``left`` and ``right``: the least and the greatest x; ``turned``: whether the panels start at the right;
# ``sides`` and ``corners``: see ``chord``; ``coverage`` and ``count`` of the panels; ``cosine`` of the slope;
# ``strips`` and ``meeting``: see ``zone_strips``; ``drawn``: ``[(zone, sides)]``, the later over the earlier;
# ``names`` of the field, edge and corner zones; ``spacings`` by zone, ``closest`` the least of them, None where none is
# known; ``near``: a length that is none; ``lines``: the u of the starting edge and of each panel's leading side.
Roof = namedtuple("Roof", (
    "unit", "area", "left", "right", "turned", "sides", "corners", "coverage", "count", "cosine", "strips", "meeting",
    "drawn", "names", "spacings", "closest", "near", "lines",
))  # fmt: skip
