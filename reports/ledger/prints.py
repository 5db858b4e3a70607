"""Papers that were handed out, by their fingerprints."""

from records.prints import fingerprint, found, keep

__all__ = ["fingerprint", "found", "keep"]
