"""What reading a signed entry costs beside the bare signature check by the ``cryptography`` package."""

from time import perf_counter

from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.format import format_entry, parse
from tests.entry.known import good, judged, payload_of

ROUNDS = 500


def seconds(work, rounds: int = ROUNDS) -> float:
    start = perf_counter()
    for _ in range(rounds):
        work()
    return perf_counter() - start


def main() -> None:
    key = ec.generate_private_key(ec.SECP256R1())
    token = good("station")
    signed = key.sign(token.encode(), ec.ECDSA(hashes.SHA256()))
    public = key.public_key()
    bare = seconds(lambda: public.verify(signed, token.encode(), ec.ECDSA(hashes.SHA256())))
    for name, work in (
        ("parse an entry", lambda: parse(token)),
        ("accept an entry", lambda: judged(token)),
        ("sign an entry", lambda: format_entry(payload_of("station"), key)),
    ):
        print(f"{name}: {seconds(work) / bare:.2f} × one bare ES256 check")


if __name__ == "__main__":
    main()
