"""Names that are typed."""

from __future__ import annotations

from django import forms
from django.utils.translation import gettext as _

from farm.names import honest


def named(text: str) -> str:
    """A name in which something can be seen."""
    name = honest(text)
    if not name:
        raise forms.ValidationError(_("Write a name that can be seen."))
    return name
