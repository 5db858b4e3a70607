"""The store of sessions, where Django looks for it."""

from farm.models.sign_ins import SessionStore

__all__ = ["SessionStore"]
