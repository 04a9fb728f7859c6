"""Which part may import which: the one table of both languages, printed in DEVELOPERS.md and held by the tests."""

PYTHON = {
    "rules": [],
    "record": ["rules"],
    "entry": [],
    "checklist": ["rules"],
    "apart": [],
    "clock": [],
    "errors": [],
    "words": [],
    "settings": ["errors"],
    "evidence": ["apart", "entry", "record"],
    "store": ["clock", "entry", "errors", "record"],
    "people": ["clock", "entry", "errors", "record", "store"],
    "intake": ["clock", "entry", "errors", "people", "store"],
    "upkeep": ["clock", "entry", "errors", "intake", "record", "store"],
    "report": ["apart", "clock", "entry", "evidence", "record", "rules", "store"],
    "web": ["checklist", "clock", "entry", "errors", "intake", "people", "record", "report", "rules", "settings",
            "store", "words"],
    "application": ["checklist", "clock", "entry", "errors", "intake", "people", "report", "settings", "store", "web",
                    "words"],
    "demo": ["entry", "intake", "people", "record", "store", "web"],
    "commands": ["application", "checklist", "clock", "demo", "entry", "errors", "evidence", "intake", "people",
                 "report", "rules", "settings", "store", "upkeep", "web", "words"],
    "command_line": ["commands", "errors", "settings", "store", "words"],
}  # fmt: skip

JAVASCRIPT = {
    "vendor": [],
    "words": [],
    "entry": [],
    "checklist": [],
    "rules": ["vendor"],
    "storage": ["vendor", "words"],
    "server": ["entry", "words"],
    "people": ["entry", "server", "storage", "words"],
    "outbox": ["entry", "people", "server", "storage", "words"],
    "photo": ["people", "storage", "words"],
    "record": ["entry", "people", "rules", "storage", "words"],
    "sync": ["entry", "outbox", "people", "photo", "server", "storage", "words"],
    "copy": ["entry", "outbox", "people", "photo", "server", "storage", "words"],
    "shell": ["entry", "outbox", "people", "photo", "record", "storage", "sync", "words"],
    "frame": ["outbox", "record", "shell", "storage", "vendor", "words"],
    "instruments": ["frame", "photo", "words"],
    "doubt": ["frame", "record", "words"],
    "roof": ["checklist", "doubt", "frame", "rules", "words"],
    "draw": ["entry", "frame", "roof", "rules", "words"],
    "walk": ["checklist", "doubt", "entry", "frame", "instruments", "photo", "roof", "rules", "server", "vendor",
             "words"],
    "day_record": ["entry", "frame", "photo", "rules", "walk", "words"],
    "day": ["checklist", "day_record", "entry", "frame", "instruments", "outbox", "roof", "rules", "walk", "words"],
    "phone": ["copy", "frame", "outbox", "people", "server", "shell", "storage", "sync", "words"],
    "finding": ["card", "checklist", "day", "entry", "frame", "instruments", "phone", "photo", "record", "roof",
                "rules", "server", "storage", "walk", "words"],
    "office": ["copy", "frame", "people", "phone", "record", "server", "sync", "words"],
    "jobs": ["day", "doubt", "finding", "frame", "office", "phone", "record", "roof", "sync", "words"],
    "lot": ["checklist", "day", "frame", "jobs", "roof", "rules", "storage", "sync", "walk", "words"],
    "report": ["frame", "people", "words"],
    "trends": ["card", "finding", "frame", "lot", "people", "roof", "rules", "words"],
    "card": ["frame", "phone", "roof", "rules", "words"],
    "fit": ["frame", "roof", "rules", "server", "walk", "words"],
    "screens": ["card", "day", "day_record", "doubt", "draw", "finding", "fit", "frame", "jobs", "lot", "office",
                "phone", "report", "roof", "trends", "walk"],
    "main": ["frame", "people", "phone", "screens", "shell", "sync", "words"],
    "sw": [],
}  # fmt: skip


def printed(language: str, table: dict[str, list[str]]) -> list[str]:
    """The lines of the table as DEVELOPERS.md shows them."""
    return [f"| {language} | may import |", "|---|---|"] + [
        f"| `{part}` | {' '.join(f'`{one}`' for one in others) or '—'} |" for part, others in table.items()
    ]
