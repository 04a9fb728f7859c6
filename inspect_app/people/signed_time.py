"""Signed values that carry their time, by ``itsdangerous``, with the clock handed in."""

from datetime import UTC, datetime

from itsdangerous import TimestampSigner

from inspect_app.clock import Clock


def signer_with(clock: Clock) -> type[TimestampSigner]:
    """A kind of ``TimestampSigner`` that reads this clock, for ``itsdangerous`` serializers too."""

    class ClockedSigner(TimestampSigner):
        def get_timestamp(self) -> int:
            return int(clock().timestamp())

        def timestamp_to_datetime(self, ts: int) -> datetime:
            return datetime.fromtimestamp(ts, UTC)

    return ClockedSigner
