"""Other records that a cell names: by key, or by a name that only one has."""

from __future__ import annotations

from typing import Any

from django.core.exceptions import ValidationError
from django.db import models
from django.utils.translation import gettext as _

from farm.models import Farm, User
from records.tables.cells import seen
from records.tables.columns import is_record, key_field
from records.tables.layout import near

Model = type[models.Model]


class Links:
    """What the cells of one farm's tables may name; each kind is fetched once."""

    def __init__(self, farm: Farm) -> None:
        self.farm = farm
        self.keyed: dict[Model, dict[str, Any]] = {}
        self.named: dict[Model, dict[str, list[Any]]] = {}

    def by_key(self, model: Model, key: str) -> Any:
        found = self._keyed(model).get(key.lower())
        if found is None:
            raise ValidationError(_("Nothing here has the key “%s”.") % seen(key))
        return found

    def by_name(self, model: Model, name: str) -> Any:
        found = self._named(model).get(name.strip().casefold(), [])
        if not found:
            raise ValidationError(_("Nothing here is called “%s”.") % seen(name))
        if len(found) > 1:
            raise ValidationError(
                _("More than one is called “%s”: give the key.") % seen(name)
            )
        return found[0]

    def add(self, row: models.Model) -> None:
        """Let later rows name a record that has just been written."""
        self._keyed(type(row))[_key(row)] = row
        names = self.named.get(type(row))
        if names is not None and row not in names.get(str(row).casefold(), []):
            names.setdefault(str(row).casefold(), []).append(row)

    def _keyed(self, model: Model) -> dict[str, Any]:
        if model not in self.keyed:
            self.keyed[model] = {_key(row): row for row in self._rows(model)}
        return self.keyed[model]

    def _named(self, model: Model) -> dict[str, list[Any]]:
        if model not in self.named:
            names: dict[str, list[Any]] = {}
            for row in self._keyed(model).values():
                if getattr(row, "voided_at", None) is None:
                    names.setdefault(str(row).casefold(), []).append(row)
            self.named[model] = names
        return self.named[model]

    def _rows(self, model: Model) -> Any:
        rows: Any = model._default_manager.all()
        if is_record(model):
            return rows.filter(farm=self.farm).select_related(*near(model))
        if model is User:
            return rows.filter(memberships__farm=self.farm)
        return rows.open_to(self.farm)


def _key(row: models.Model) -> str:
    return str(getattr(row, key_field(type(row)) or "pk")).lower()
