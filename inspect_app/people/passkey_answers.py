"""What a browser answers for a passkey, checked by ``webauthn`` (W3C Web Authentication, level 2: 7.1 and 7.2).

Only this file speaks to the library. What it refuses is said as a code of ours; nothing here keeps anything.
"""

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from webauthn import (
    generate_authentication_options,
    generate_registration_options,
    verify_authentication_response,
    verify_registration_response,
)
from webauthn.helpers import base64url_to_bytes, bytes_to_base64url, parse_client_data_json
from webauthn.helpers.options_to_json_dict import options_to_json_dict
from webauthn.helpers.structs import (
    AuthenticatorSelectionCriteria,
    PublicKeyCredentialDescriptor,
    ResidentKeyRequirement,
    UserVerificationRequirement,
)

from inspect_app.errors import BadInput, NotAllowed

PREFERRED = UserVerificationRequirement.PREFERRED  # a finger or a PIN where the phone has one


class Party(NamedTuple):
    """Who asks for the passkey: the host's name, and the origins that a browser may give for it."""

    rp_id: str
    origins: tuple[str, ...]


class Made(NamedTuple):
    """A new credential: id and public key in base64url, and its counter."""

    id: str
    public_key: str
    sign_count: int


def to_make(party: Party, person: str, login: str, name: str, challenge: bytes, held: list[str]) -> dict[str, Any]:
    """Options for ``navigator.credentials.create``, bytes in base64url. A passkey must be found without a login, so
    it is kept by the authenticator; ``held`` are the ids that this person has already."""
    return options_to_json_dict(
        generate_registration_options(
            rp_id=party.rp_id, rp_name="Seamwalk", user_id=person.encode(), user_name=login, user_display_name=name,
            challenge=challenge, exclude_credentials=[
                PublicKeyCredentialDescriptor(id=base64url_to_bytes(one)) for one in held
            ],
            authenticator_selection=AuthenticatorSelectionCriteria(
                resident_key=ResidentKeyRequirement.REQUIRED, user_verification=PREFERRED
            ),
        )
    )  # fmt: skip


def to_use(party: Party, challenge: bytes) -> dict[str, Any]:
    """Options for ``navigator.credentials.get``: any passkey of this host, so that nobody learns who has one."""
    return options_to_json_dict(
        generate_authentication_options(rp_id=party.rp_id, challenge=challenge, user_verification=PREFERRED)
    )


def made(answer: Mapping[str, Any], challenge: bytes, party: Party) -> Made:
    """The credential of the answer. Raises ``NotAllowed`` ``passkey_elsewhere`` (another origin), ``BadInput``
    ``passkey_not_proved``."""
    checked = _checked(
        answer, party, lambda: verify_registration_response(
            credential=dict(answer), expected_challenge=challenge, expected_rp_id=party.rp_id,
            expected_origin=list(party.origins),
        ),
    )  # fmt: skip
    return Made(
        bytes_to_base64url(checked.credential_id), bytes_to_base64url(checked.credential_public_key), checked.sign_count
    )


def used(answer: Mapping[str, Any], challenge: bytes, party: Party, public_key: str) -> int:
    """The counter that the answer carries, once its signature is this key's. Raises as ``made``."""
    # The counter is compared where it is kept: a copied passkey is told apart from a bad signature there.
    checked = _checked(
        answer, party, lambda: verify_authentication_response(
            credential=dict(answer), expected_challenge=challenge, expected_rp_id=party.rp_id,
            expected_origin=list(party.origins), credential_public_key=base64url_to_bytes(public_key),
            credential_current_sign_count=0,
        ),
    )  # fmt: skip
    return int(checked.new_sign_count)


def _checked(answer: Mapping[str, Any], party: Party, verify: Callable[[], Any]) -> Any:
    try:
        origin = parse_client_data_json(base64url_to_bytes(answer["response"]["clientDataJSON"])).origin
        if origin in party.origins:
            return verify()
    # Hostile bytes make its parsers (JSON, CBOR, X.509) raise what they please; all of it means the same.
    except Exception as error:
        raise BadInput("passkey_not_proved", "credential", type(error).__name__) from error
    raise NotAllowed("passkey_elsewhere", "origin", origin)
