"""The key that seals the records, and the passphrase that may lock them."""

from __future__ import annotations

import hashlib
import hmac
import os
import secrets
from collections.abc import MutableMapping
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from dictate.errors import Damaged, Locked, MachineError, RecordError
from dictate.records.chain import digest
from dictate.records.place import write_whole
from dictate.settings import PROGRAM

KEY_FILE = "key"
KEY_BYTES = 32
NONCE_BYTES = 12  # of AES-GCM. Source: NIST SP 800-38D, 8.2
SCRYPT = {"n": 2**16, "r": 8, "p": 1}  # 64 MiB, some tenths of a second. Source: RFC 7914, section 2
SCRYPT_MEMORY = 2**27
MARK_LETTERS = 32
Facts = MutableMapping[str, str]


class Cipher(Protocol):
    """What is asked of an authenticated cipher."""

    def encrypt(self, nonce: bytes, data: bytes, associated_data: bytes | None) -> bytes:
        """Lock."""

    def decrypt(self, nonce: bytes, data: bytes, associated_data: bytes | None) -> bytes:
        """Unlock; raises when it was changed."""


@dataclass(frozen=True)
class Keys:
    """Seals, and locks where a passphrase was set."""

    seal: bytes
    cipher: Cipher | None = None

    @property
    def locked(self) -> bool:
        """Whether content is encrypted."""
        return self.cipher is not None

    def lock(self, content: bytes) -> bytes:
        """Content as it is stored."""
        if self.cipher is None:
            return content
        nonce = secrets.token_bytes(NONCE_BYTES)
        return nonce + self.cipher.encrypt(nonce, content, None)

    def unlock(self, stored: bytes) -> bytes:
        """Content as it was. Raises: Damaged when it was changed, or another key locked it."""
        if self.cipher is None:
            return stored
        from cryptography.exceptions import InvalidTag

        try:
            return self.cipher.decrypt(stored[:NONCE_BYTES], stored[NONCE_BYTES:], None)
        except (InvalidTag, ValueError) as fault:
            raise Damaged("locked content was changed behind the program's back") from fault

    def mark(self, text: str) -> str:
        """A word of the index: as it is, or where content is locked, a keyed digest that can only be compared."""
        if self.cipher is None or not text:
            return text
        return digest(self.seal, b"index", text.encode())[:MARK_LETTERS]


def open_keys(folder: Path, facts: Facts, *, passphrase: str | None, fresh: bool) -> Keys:
    """Read the keys, or make them where nothing was saved yet (then `facts` gets what must be remembered).

    Raises: Damaged when the key is lost or another one; RecordError for a missing or wrong passphrase.
    """
    seal = _read(folder, facts)
    if seal is None:
        if not fresh:
            raise Damaged(
                f"{_named(folder, facts)}: the key that seals the records is gone: put it back from a back-up; "
                "without it no record can be checked or added to"
            )
        seal = _make(folder, facts)
    check = digest(seal, b"check")
    if not hmac.compare_digest(facts.setdefault("key_check", check), check):
        raise Damaged(f"{_named(folder, facts)}: is not the key that these records were sealed with: put that one back")
    if fresh and passphrase and "lock" not in facts:
        _set_passphrase(facts, passphrase)
    if "lock" not in facts:
        if passphrase:
            raise RecordError(
                f"{folder}: these records have no passphrase: leave it out; it is set on the first saving"
            )
        return Keys(seal)
    return Keys(seal, _unlocked(folder, facts, passphrase))


def _set_passphrase(facts: Facts, passphrase: str) -> None:
    """A random key locks the content; the passphrase locks that key."""
    salt, content_key = secrets.token_bytes(16), secrets.token_bytes(KEY_BYTES)
    facts["lock_salt"] = salt.hex()
    facts["lock_cost"] = " ".join(f"{name}={cost}" for name, cost in SCRYPT.items())
    facts["lock"] = Keys(b"", _cipher(_stretched(passphrase, facts))).lock(content_key).hex()


def _unlocked(folder: Path, facts: Facts, passphrase: str | None) -> Cipher:
    if not passphrase:
        raise Locked(f"{folder}: the records are locked: give the passphrase in DICTATE_PASSPHRASE")
    outer = _cipher(_stretched(passphrase, facts))
    try:
        return _cipher(Keys(b"", outer).unlock(bytes.fromhex(facts["lock"])))
    except Damaged as fault:
        raise RecordError(
            f"{folder}: the passphrase does not open these records; a lost one cannot be recovered"
        ) from fault


def _stretched(passphrase: str, facts: Facts) -> bytes:
    cost = {name: int(number) for name, _, number in (part.partition("=") for part in facts["lock_cost"].split())}
    salt = bytes.fromhex(facts["lock_salt"])
    return hashlib.scrypt(
        passphrase.encode(), salt=salt, n=cost["n"], r=cost["r"], p=cost["p"], maxmem=SCRYPT_MEMORY, dklen=KEY_BYTES
    )


def _cipher(key: bytes) -> Cipher:
    try:
        from cryptography.hazmat.primitives.ciphers.aead import AESGCM
    except ImportError as fault:
        raise MachineError("a passphrase needs the part that encrypts: pip install 'dictate[records]'") from fault
    return AESGCM(key)


def _named(folder: Path, facts: Facts) -> str:
    return f"{folder / KEY_FILE}" if facts.get("key_place") != "keyring" else "the system's keyring"


def _read(folder: Path, facts: Facts) -> bytes | None:
    if facts.get("key_place") == "keyring":
        found = _keyring_get(facts["name"])
    else:
        path = folder / KEY_FILE
        try:
            found = path.read_text(encoding="ascii") if path.exists() else None
        except OSError as fault:
            reason = (fault.strerror or str(fault)).lower()
            raise MachineError(f"{path}: cannot be read: {reason}: check its permissions") from fault
        except UnicodeDecodeError as fault:
            raise Damaged(f"{path}: is no key: put it back from a back-up") from fault
    try:
        return None if found is None else bytes.fromhex(found)
    except ValueError as fault:
        raise Damaged(f"{_named(folder, facts)}: is no key: put it back from a back-up") from fault


def _make(folder: Path, facts: Facts) -> bytes:
    made = secrets.token_bytes(KEY_BYTES)
    if os.environ.get("DICTATE_KEYRING") == "1":
        if not _keyring_set(facts["name"], made.hex()):
            raise MachineError(
                "DICTATE_KEYRING=1: the system's keyring takes no key: unlock it, or leave the variable out to keep "
                "the key in a file of your own"
            )
        facts["key_place"] = "keyring"
    else:
        facts["key_place"] = "file"
        write_whole(folder / KEY_FILE, made.hex().encode())
    return made


def _keyring_get(name: str) -> str | None:
    try:
        import keyring
        from keyring.errors import KeyringError
    except ImportError as fault:
        raise MachineError("the key is in the system's keyring: pip install 'dictate[records]'") from fault
    try:
        return keyring.get_password(PROGRAM, name)
    except KeyringError as fault:
        raise MachineError(f"the system's keyring: cannot be read: {fault}: unlock it") from fault


def _keyring_set(name: str, secret: str) -> bool:
    """Whether the keyring took it and gives it back."""
    try:
        import keyring
        from keyring.errors import KeyringError
    except ImportError:
        return False
    try:
        keyring.set_password(PROGRAM, name, secret)
        return keyring.get_password(PROGRAM, name) == secret
    except KeyringError:
        return False
