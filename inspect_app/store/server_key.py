"""The server's own signing key: made at the first start, kept in the data folder for its owner only."""

import os
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple
from uuid import uuid4

from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.thumbprint import thumbprint
from inspect_app.store.vault_disk import Disk


class ServerKey(NamedTuple):
    """P-256 key, its public JWK and its name."""

    private: ec.EllipticCurvePrivateKey
    jwk: dict[str, str]
    kid: str


def server_key(file: Path) -> ServerKey:
    """The key in ``file`` (PKCS#8, PEM), made if there is none. ``RuntimeError`` when it holds something
    else: a server that quietly made a new key would orphan every receipt it ever gave."""
    private = serialization.load_pem_private_key(kept_secret(file, _new), password=None)
    if not isinstance(private, ec.EllipticCurvePrivateKey) or private.curve.name != "secp256r1":
        raise RuntimeError(f"{file} holds no P-256 key")
    jwk = public_jwk(private)
    return ServerKey(private, jwk, thumbprint(jwk))


def kept_secret(file: Path, make: Callable[[], bytes]) -> bytes:
    """The bytes of a secret file, written once with ``make()``, mode 0600. Of two starts at once, one makes
    it and both read it."""
    if not file.exists():
        temporary = file.with_name(f"{file.name}.{uuid4().hex}.new")
        with open(os.open(temporary, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as out:
            out.write(make())
            out.flush()
            os.fsync(out.fileno())
        try:
            os.link(temporary, file)  # never replaces a key that another start has made meanwhile
        except FileExistsError:
            pass
        except OSError:  # a file system without links
            if not file.exists():
                os.replace(temporary, file)
        finally:
            temporary.unlink(missing_ok=True)
        Disk().sync_folder(file.parent)
    return file.read_bytes()


def _new() -> bytes:
    return ec.generate_private_key(ec.SECP256R1()).private_bytes(
        serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    )
