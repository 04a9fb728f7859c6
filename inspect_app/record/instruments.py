"""How far each instrument may be off, at 95 %: what the job states, else our own default.

The defaults are ours, common practice and no source, but for the level: a 4 ft level read to 1/8 in stands within
0.15 degrees (arithmetic).
"""

OURS = {
    "US": {
        "tape": ("0.0625", "in"),
        "rule": ("0.03125", "in"),
        "feeler": ("0.001", "in"),
        "micrometer": ("0.0005", "in"),
        "depth_gauge": ("0.005", "in"),
        "level": ("0.15", "deg"),
        "inclinometer": ("0.5", "deg"),
        "contact": ("4", "dF"),
        "infrared": ("10", "dF"),
        "estimate": ("20", "dF"),
    },
    "SI": {
        "tape": ("1.5", "mm"),
        "rule": ("0.8", "mm"),
        "feeler": ("0.025", "mm"),
        "micrometer": ("0.013", "mm"),
        "depth_gauge": ("0.13", "mm"),
        "level": ("0.15", "deg"),
        "inclinometer": ("0.5", "deg"),
        "contact": ("2", "dC"),
        "infrared": ("5", "dC"),
        "estimate": ("10", "dC"),
    },
}


def instruments(job: dict) -> dict:
    """Every instrument by name, our defaults in the job's own units: ``{"uncertainty": quantity, "source": text,
    "own": whether the job states it}``."""
    stated = job.get("instruments") or {}
    ours = OURS["SI" if job.get("units") == "SI" else "US"]
    told = {}
    for name in ours:
        own = stated.get(name) or {}
        if own.get("uncertainty"):
            told[name] = {"uncertainty": own["uncertainty"], "source": own.get("source") or "", "own": True}
        else:
            value, unit = ours[name]
            told[name] = {"uncertainty": {"value": value, "unit": unit}, "source": "", "own": False}
    return told
