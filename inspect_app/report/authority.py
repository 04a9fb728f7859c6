"""Ask an authority for time stamps (RFC 3161 over HTTP, its section 3.4).

What it answers is checked before it goes into a report: a token that does not hold is worth no more than silence.
"""

import asyncio
from typing import NamedTuple

import aiohttp
from asn1crypto import cms, tsp
from pyhanko.sign.timestamps.api import TimeStamper

from inspect_app.apart import apart
from inspect_app.evidence.der import canonical
from inspect_app.evidence.time_stamp import Stamp, read_stamp

SECONDS = 10.0  # for one answer, all in all
LARGEST = 64 * 1024  # bytes of one answer; a token with its certificates takes some five thousand
HASH = "sha256"
QUERY, REPLY = "application/timestamp-query", "application/timestamp-reply"


class AuthoritySilent(Exception):
    """No time stamp came that can be used: ``url`` and ``reason``, the kind of error."""

    def __init__(self, url: str, reason: str) -> None:
        super().__init__(url, reason)
        self.url, self.reason = url, reason


class Authority(NamedTuple):
    """Where to ask."""

    url: str
    seconds: float = SECONDS

    def stamper(self) -> "Stamper":
        """One for a single signature: it asks once for a trial and once for the signature."""
        return Stamper(self.url, self.seconds)


class Stamper(TimeStamper):
    """As pyHanko wants it. Every call raises ``AuthoritySilent`` and nothing else."""

    def __init__(self, url: str, seconds: float) -> None:
        super().__init__()  # type: ignore[no-untyped-call]
        self.url, self.seconds = url, seconds

    def trial(self) -> Stamp:
        """Have a hash of nothing stamped: who the authority is, and that it answers."""
        token = apart(lambda: asyncio.run(self.async_dummy_response(HASH)))
        return read_stamp(token.dump())

    async def async_timestamp(self, message_digest: bytes, md_algorithm: str) -> cms.ContentInfo:
        try:
            token = await super().async_timestamp(message_digest, md_algorithm)
            stamp = read_stamp(token.dump())
            if stamp.imprint != (md_algorithm, message_digest) or not canonical(token.dump()):
                raise ValueError("other_token")
            return token
        except AuthoritySilent:
            raise
        except Exception as reason:  # whatever an answer from anywhere does to its parser
            raise AuthoritySilent(self.url, type(reason).__name__) from reason

    async def async_request_tsa_response(self, req: tsp.TimeStampReq) -> tsp.TimeStampResp:
        limit = aiohttp.ClientTimeout(total=self.seconds)
        heads = {"Content-Type": QUERY, "Accept": REPLY}
        async with (
            aiohttp.ClientSession(timeout=limit, trust_env=True) as session,
            # Whoever set the address chose whom to ask: nobody sends us on to another, least of all to one in here.
            session.post(self.url, data=req.dump(), headers=heads, allow_redirects=False) as answer,
        ):
            if answer.status != 200 or answer.content_type != REPLY:
                raise ValueError("no_reply")
            data = b""
            async for piece in answer.content.iter_chunked(8192):
                data += piece
                if len(data) > LARGEST:
                    raise ValueError("too_large")
        return tsp.TimeStampResp.load(data, strict=True)
