"""What was drawn from each lot, so that anybody can draw it again from the enclosed entries."""

from typing import Any


def lots(record: dict[str, Any]) -> list[dict[str, Any]]:
    """``[{"lot", "drawn": [{"area", "panel"}]}]`` in order of the lots' names, each in the order drawn. A panel that
    the record keeps sealed has neither."""
    return [
        {"lot": name, "drawn": [{key: stop[key] for key in ("area", "panel") if key in stop} for stop in lot["drawn"]]}
        for name, lot in sorted(record["lots"].items())
    ]
