"""Read the headers of a tus request: values in, values or ``UploadRefused`` out."""

import base64
import binascii
import hashlib
import re
from typing import NamedTuple

from inspect_app.intake.uploads_refused import UploadRefused

MOST_METADATA = 4096
SHA256 = re.compile(r"[0-9a-f]{64}")
JOB = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}")
TYPE = re.compile(r"[a-z0-9][a-z0-9.+-]{0,60}/[a-z0-9][a-z0-9.+-]{0,60}")
UNTYPED = "application/octet-stream"
ALGORITHMS = ("sha1", "sha256")  # tus asks for sha1; our phones send sha256


class Declared(NamedTuple):
    """What a phone says of a photo before its bytes: whose job, its SHA-256 (hexadecimal), its media type as
    the phone names it, and a file name or "". Claims, all but the hash, which is checked."""

    job: str
    sha256: str
    type: str
    name: str


class Checksum(NamedTuple):
    """``algorithm`` (of ``ALGORITHMS``) and the ``digest`` a request's body must have."""

    algorithm: str
    digest: bytes


def read_metadata(header: str | None) -> Declared:
    """``Upload-Metadata``: comma-separated ``key base64(value)`` (tus 1.0.0, Creation). ``job``, ``sha256``
    and ``type`` must be there, ``name`` may; others are ignored."""
    if header is not None and len(header) > MOST_METADATA:
        raise UploadRefused("upload_metadata_unreadable", "Upload-Metadata", header)
    values: dict[str, str] = {}
    for pair in (header or "").split(","):
        key, _, coded = pair.strip().partition(" ")
        if key:
            if key in values:
                raise UploadRefused("upload_metadata_unreadable", f"Upload-Metadata {key}", header)
            values[key] = _text(key, coded.strip())
    for key in ("job", "sha256", "type"):
        if key not in values:
            raise UploadRefused("upload_metadata_missing", f"Upload-Metadata {key}")
    values["type"] = values["type"].lower() or UNTYPED
    for key, shape in (("job", JOB), ("sha256", SHA256), ("type", TYPE)):
        if not shape.fullmatch(values[key]):
            raise UploadRefused("upload_metadata_value", f"Upload-Metadata {key}", values[key])
    return Declared(values["job"], values["sha256"], values["type"], values.get("name", "")[:200])


def read_checksum(header: str | None) -> Checksum | None:
    """``Upload-Checksum``: an algorithm and a base64 digest (tus 1.0.0, Checksum); None when not given."""
    if header is None:
        return None
    algorithm, _, coded = header.strip().partition(" ")
    if algorithm not in ALGORITHMS:
        raise UploadRefused("upload_checksum_algorithm", "Upload-Checksum", header)
    try:
        digest = base64.b64decode(coded.strip(), validate=True)
    except (binascii.Error, ValueError):
        digest = b""
    if len(digest) != hashlib.new(algorithm).digest_size:
        raise UploadRefused("upload_checksum_unreadable", "Upload-Checksum", header)
    return Checksum(algorithm, digest)


def read_count(field: str, header: str | None) -> int:
    """A header that must be a whole number of bytes, zero or more."""
    if header is None:
        raise UploadRefused("upload_header_missing", field)
    if not re.fullmatch(r"[0-9]{1,15}", header.strip(), re.ASCII):
        raise UploadRefused("upload_header_number", field, header)
    return int(header)


def _text(key: str, coded: str) -> str:
    try:
        return base64.b64decode(coded, validate=True).decode("utf-8")
    except ValueError:  # of base64 and of UTF-8
        raise UploadRefused("upload_metadata_unreadable", f"Upload-Metadata {key}", coded) from None
