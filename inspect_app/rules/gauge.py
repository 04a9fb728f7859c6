"""Sheet gauges, in inches. A gauge is a number of a named system: "22 gauge" is five different thicknesses.

* ``MSG`` Manufacturers' Standard Gauge for uncoated steel sheet, 41.82 lb/ft² per inch: 18, 20, 22, 24, 26 and 28,
  nominal and minimum, as CSSBI Facts 10-12 print them; the others from memory.
* ``GSG`` Galvanized Sheet Gauge: the nominal includes the zinc, 20 as published, the others from memory. Its base
  metal is the sheet of the same number in MSG (from memory), so that is where its minimum comes from.
* ``USS`` 15 U.S.C. 206: 18 to 22 from the statute, 24 and 26 from memory.
* ``BS`` Brown & Sharpe, aluminium: 20 as published, the others from memory.
* ``mil`` cold-formed framing, design and minimum of AISI S100 A2.4.
"""

from inspect_app.rules.refused import Refused

LEAST_SHARE = 0.95  # AISI S100 A2.4: the minimum delivered base steel is 95 % of the design thickness

NOMINAL = {
    "MSG": {
        "16": 0.0598, "18": 0.0478, "20": 0.0359, "22": 0.0299, "23": 0.0269, "24": 0.0239, "25": 0.0209,
        "26": 0.0179, "28": 0.0149, "29": 0.0135, "30": 0.0120,
    },
    "GSG": {"16": 0.0635, "18": 0.0516, "20": 0.0396, "22": 0.0336, "24": 0.0276, "26": 0.0217, "28": 0.0187},
    "USS": {"18": 0.05, "19": 0.04375, "20": 0.0375, "21": 0.034375, "22": 0.03125, "24": 0.025, "26": 0.01875},
    "BS": {"18": 0.0403, "20": 0.0320, "22": 0.0253, "24": 0.0201, "26": 0.0159},
    "mil": {
        "18": 0.0188, "27": 0.0283, "30": 0.0312, "33": 0.0346, "43": 0.0451, "54": 0.0566, "68": 0.0713,
        "97": 0.1017, "118": 0.1242,
    },
}  # fmt: skip
# Where a minimum is published to four places, that figure holds: 95 % of 0.0239 is 0.022705, but the published
# 0.0227 is what a mill and an inspector go by.
PUBLISHED_MINIMUM = {
    "MSG": {"18": 0.0454, "20": 0.0341, "22": 0.0284, "24": 0.0227, "26": 0.0170, "28": 0.0142},
    "mil": {
        "18": 0.0179, "27": 0.0269, "30": 0.0296, "33": 0.0329, "43": 0.0428, "54": 0.0538, "68": 0.0677,
        "97": 0.0966, "118": 0.1180,
    },
}  # fmt: skip
BASE_SYSTEM = {"GSG": "MSG"}


def thicknesses(gauge: str, system: str) -> tuple[float, float]:
    """``(nominal, minimum)`` in inches; the minimum is of bare base metal. Raises Refused ``unknown_gauge``."""
    if gauge not in NOMINAL[system]:
        raise Refused("unknown_gauge", "gauge", gauge)
    base = BASE_SYSTEM.get(system, system)
    published = PUBLISHED_MINIMUM.get(base, {}).get(gauge)
    return NOMINAL[system][gauge], NOMINAL[base][gauge] * LEAST_SHARE if published is None else published
