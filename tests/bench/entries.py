"""Reading, accepting and signing an entry, beside the bare signature by the ``cryptography`` package."""

from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.format import format_entry, parse
from tests.bench.measure import Row, ratio
from tests.entry.known import ADA, good, judged, payload_of

TIMES = 300
CHECK = "one bare ES256 check"


def rows() -> list[Row]:
    token, payload = good("station"), payload_of("station")
    message, how = token.encode(), ec.ECDSA(hashes.SHA256())
    signed, public = ADA.sign(message, how), ADA.public_key()

    def check() -> None:
        public.verify(signed, message, how)

    return [
        Row("parse an entry", CHECK, ratio(lambda: parse(token), check, TIMES), 2,
            "what a stranger can have done before any signature is looked at"),
        Row("accept an entry", CHECK, ratio(lambda: judged(token), check, TIMES), 6,
            "the signature, not our rules, should be what a batch takes its time for"),
        Row("sign an entry", CHECK, ratio(lambda: format_entry(payload, ADA), check, TIMES), 8,
            "what is written is parsed again before it is given out"),
    ]  # fmt: skip
