"""Whom a certificate names: one way for whoever seals and for whoever verifies, since a report says it."""

from asn1crypto import x509 as asn1_x509
from cryptography import x509
from cryptography.x509.oid import NameOID


def certificate_name(certificate: bytes) -> str:
    """Of a certificate in DER: the first common name of its subject, else the whole subject (RFC 4514). ``ValueError``
    and others for what is no certificate."""
    try:
        subject = x509.load_der_x509_certificate(certificate).subject
        named = subject.get_attributes_for_oid(NameOID.COMMON_NAME)
        return str(named[0].value) if named else subject.rfc4514_string()
    except ValueError:  # of an odd make that we never seal with: a reader that takes more of them
        return str(asn1_x509.Certificate.load(certificate).subject.human_friendly)
