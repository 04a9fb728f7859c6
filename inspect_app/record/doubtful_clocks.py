"""What a phone's clock shows against the server's last word and against itself. It orders nothing and refuses nothing:
a time is only what the phone said it was."""

from inspect_app.record.moment import moment

APART = 120_000  # ms; ours: less is common between clocks that nobody set by hand
MINUTE = 60_000


def clocks(chain: dict, days: "dict | None" = None) -> list:
    """``chain``: one key's entries of a job, ``{digest: payload}``; ``days``: as of ``moment``.

    ``[{"code", "minutes", "digests"}]``, at most one of each code: ``clock_fast`` and ``clock_slow``, the phone's time
    beyond or behind the last server time it knew plus the time since (``clock.server``, ``clock.age``); ``clock_back``,
    an entry told as earlier than the one it names as before it. ``minutes``: the greatest difference, whole.
    """
    order = sorted([(chain[digest]["seq"], digest) for digest in chain])
    told: dict = {}
    times: dict = {}
    days = {} if days is None else days
    servers: dict = {}
    for _, digest in order:
        times[digest] = moment(chain[digest]["at"], days)
    for _, digest in order:
        payload = chain[digest]
        clock = payload["clock"]
        if isinstance(clock.get("server"), str) and isinstance(clock.get("age"), int):
            if clock["server"] not in servers:
                servers[clock["server"]] = moment(clock["server"], days)
            server = servers[clock["server"]]
            ahead = times[digest] - server - clock["age"]
            if server and times[digest] and abs(ahead) > APART:
                _tell(told, "clock_fast" if ahead > 0 else "clock_slow", abs(ahead), digest)
        before = times.get(payload["prev"])
        if before and times[digest] and before - times[digest] > APART:
            _tell(told, "clock_back", before - times[digest], digest)
    return [told[code] for code in sorted(told)]


def _tell(told: dict, code: str, apart: int, digest: str) -> None:
    one = told.setdefault(code, {"code": code, "minutes": 0, "digests": []})
    one["minutes"] = max(one["minutes"], (apart + MINUTE // 2) // MINUTE)
    one["digests"].append(digest)
