"""The headers of an upload, as tus 1.0.0 spells them."""

import base64
import hashlib


def metadata_of(job: str, sha256: str) -> str:
    """``Upload-Metadata`` of a JPEG."""
    named = {"job": job, "sha256": sha256, "type": "image/jpeg"}
    return ",".join(f"{name} {base64.b64encode(value.encode()).decode()}" for name, value in named.items())


def piece_at(offset: int, piece: bytes) -> dict[str, str]:
    """Those of a PATCH."""
    digest = base64.b64encode(hashlib.sha256(piece).digest()).decode()
    return {"Upload-Offset": str(offset), "Upload-Checksum": f"sha256 {digest}",
            "Content-Type": "application/offset+octet-stream"}  # fmt: skip
