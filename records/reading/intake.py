"""From an uploaded weather file to a preview, and from the preview to the table."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.models import Farm, User
from records.forms.weather import ColumnsForm, SaveForm
from records.models import WeatherStation
from records.reading import holding, weather
from records.reading.books import as_csv
from records.reading.loading import Loaded, load_days
from records.reading.weather import Columns, Guess, WeatherFile, WeatherFileError
from records.reading.weather import Trouble as Bad

SENTENCES = {
    Bad.EMPTY: _("The file is empty."),
    Bad.BINARY: _("This is not a text file of readings."),
    Bad.NOT_UTF8: _("Some letters of the file cannot be read. Save it as UTF-8."),
    Bad.TOO_LARGE: _("The file is too large for one station."),
    Bad.TRUNCATED: _("Line %(line)s breaks off: the file seems cut short."),
    Bad.MONTHLY: _("These are monthly figures. Daily readings are needed."),
    Bad.DUPLICATE_DAY: _("Line %(line)s: this day stands twice (%(found)s)."),
    Bad.TMIN_ABOVE_TMAX: _(
        "Line %(line)s: the lowest temperature is above the highest (%(found)s)."
    ),
    Bad.WRONG_UNITS: _(
        "Line %(line)s: %(found)s cannot be. Look at the units once more."
    ),
    Bad.BAD_DATE: _("Line %(line)s: “%(found)s” is not a day written that way."),
    Bad.RAGGED: _("Line %(line)s has more or fewer columns than the first."),
    Bad.BAD_NUMBER: _("Line %(line)s: “%(found)s” is not a number."),
    Bad.COLUMNS_NEEDED: _("Say which column holds what, and in which unit."),
    Bad.NO_COLUMNS: _("The columns of day and temperatures were not found."),
    Bad.MIXED_STATIONS: _("The file holds several stations: %(found)s."),
}
# The same beside the number of the line, where a cell is at fault.
OF_A_CELL = {
    Bad.DUPLICATE_DAY: _("This day stands twice (%(found)s)."),
    Bad.TMIN_ABOVE_TMAX: _("The lowest temperature is above the highest (%(found)s)."),
    Bad.WRONG_UNITS: _("%(found)s cannot be. Look at the units once more."),
    Bad.BAD_DATE: _("“%(found)s” is not a day written that way."),
    Bad.BAD_NUMBER: _("“%(found)s” is not a number."),
}
OTHER = _("The file could not be read, line %(line)s: %(found)s")


@dataclass
class Taken:
    """A file set aside: read already, or waiting for its columns to be told."""

    farm: Farm
    held: str
    name: str
    guess: Guess | None = None
    columns: Columns | None = None
    file: WeatherFile | None = None
    trouble: forms.ValidationError | None = None
    asked: ColumnsForm | None = None
    # What is wrong cell by cell: line, heading and sentence.
    faults: list[tuple[int | None, str, str]] = field(default_factory=list)

    def refuse(self, error: WeatherFileError) -> None:
        self.trouble = sentence(error)
        self.faults = [
            (one.line, one.column, OF_A_CELL[one.reason] % {"found": one.found})
            for one in (error, *error.others)
            if one.reason in OF_A_CELL
        ]

    def next_form(self) -> forms.Form:
        if self.file:
            return self.station_form(None)
        return self.asked or self.columns_form(None)

    def columns_form(self, data: Any) -> ColumnsForm:
        proposed = self.guess.proposals if self.guess else None
        initial = {"held": self.held, **(vars(proposed) if proposed else {})}
        names = list(self.guess.columns) if self.guess else []
        return ColumnsForm(data, columns=names, initial=initial)

    def station_form(self, data: Any) -> SaveForm:
        return SaveForm(data, taken=self)


def take(upload: Any, farm: Farm) -> Taken:
    """Set an uploaded file aside and read it as far as it tells of itself."""
    taken = Taken(farm=farm, held="", name=upload.name)
    try:
        data = as_csv(upload.read())
    except forms.ValidationError as error:
        taken.trouble = error
        return taken
    try:
        taken.guess = weather.guess(data, upload.name)
        taken.held = holding.hold(data, name=upload.name, farm_id=farm.pk)
        if taken.guess.format is not weather.Format.GENERAL:
            taken.file = weather.read(data, name=upload.name, columns=None)
    except WeatherFileError as error:
        taken.refuse(error)
    return taken


def again(typed: Mapping[str, Any], farm: Farm) -> Taken | None:
    """Fetch a file set aside, with the columns as typed, if any were needed."""
    found = holding.fetch(typed.get("held", ""), farm_id=farm.pk)
    if found is None:
        return None
    data, name = found
    taken = Taken(farm=farm, held=typed["held"], name=name)
    try:
        taken.guess = weather.guess(data, name)
        if taken.guess.format is weather.Format.GENERAL:
            _tell_columns(taken, typed)
        if taken.columns or taken.guess.format is not weather.Format.GENERAL:
            taken.file = weather.read(data, name=name, columns=taken.columns)
    except WeatherFileError as error:
        taken.refuse(error)
        if taken.asked:
            taken.asked.add_error(None, sentence(error))
    return taken


def _tell_columns(taken: Taken, typed: Mapping[str, Any]) -> None:
    form = taken.asked = taken.columns_form(typed)
    if form.is_valid():
        told = {**form.cleaned_data}
        told.pop("held")
        taken.columns = Columns(**told)


def save(taken: Taken, form: SaveForm, *, by: User, now: dt.datetime) -> Loaded:
    """Write the station and all its days, or nothing."""
    assert taken.file is not None
    station: WeatherStation = form.station()
    series = form.series()
    return load_days(station, series.days, source=taken.name, by=by, now=now)


def sentence(error: WeatherFileError) -> forms.ValidationError:
    """What is wrong with a file, where, in plain words."""
    params = {"line": error.line or "?", "found": error.found}
    return forms.ValidationError(SENTENCES.get(error.reason, OTHER), params=params)
