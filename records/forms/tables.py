"""Files of tables, as they are handed in and as they are set aside."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

MOST_BYTES = 10 * 1024 * 1024


class TablesForm(forms.Form):
    """One file for each table of a noun; only the first is needed."""

    def __init__(
        self, data: Any = None, files: Any = None, *, titles: Mapping[str, str]
    ) -> None:
        super().__init__(data, files)
        self.names = list(titles)
        for place, (name, title) in enumerate(titles.items()):
            self.fields[name] = forms.FileField(
                label=title[:1].upper() + title[1:],
                required=place == 0,
                help_text=_("A workbook (.xlsx) or comma-separated text (.csv).")
                if place == 0
                else _("Leave empty where the workbook holds it, or nothing changes."),
            )

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        for name in self.names:
            file = cleaned.get(name)
            if file and file.size > MOST_BYTES:
                self.add_error(name, _("The file is larger than 10 MB."))
        return cleaned

    def files_given(self) -> dict[str, tuple[str, bytes]]:
        """Name and content of every file, by the table it is said to hold."""
        given = {name: self.cleaned_data.get(name) for name in self.names}
        return {name: (file.name, file.read()) for name, file in given.items() if file}
