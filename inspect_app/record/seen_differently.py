"""The same item of the same place, told as good by one person and as bad by another."""

MENDED = ("corrected", "closed", "conceded", "withdrawn")


def seen_differently(record: dict) -> list:
    """``[(name, {"item", "area", "panel"}, digests)]``, sorted: places (area, panel, distance as it was typed) that
    different people reached, where one answer passed and another, by somebody else, failed. A failure taken up since
    (``MENDED``) is none: the second look saw something else."""
    seen: dict = {}
    for subject in sorted(record["answers"]):
        answer = record["answers"][subject]
        station = record["stations"].get(answer.get("station"))
        if station is None or station["reached"] != "yes" or answer["result"] not in ("pass", "fail"):
            continue
        finding = record["findings"].get(subject)
        if finding and finding["state"] in MENDED:
            continue
        low = station["from_low_end"]
        item = subject[len(answer["station"]) + 1 :]
        place = (station["area"], station["panel"], low["value"] + " " + low["unit"], item)
        seen.setdefault(place, {"pass": [], "fail": []})[answer["result"]].append(answer)
    found = []
    for place in sorted(seen):
        both = seen[place]
        good = {one["by"]: True for one in both["pass"]}
        if [one for one in both["fail"] for by in good if by != one["by"]]:
            area, panel, low, item = place
            digests = sorted([one["digest"] for one in both["pass"] + both["fail"]])
            facts = {"item": item, "area": area, "panel": panel}
            found.append(("/".join([area, str(panel), low, item]), facts, digests))
    return found
