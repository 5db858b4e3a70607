"""A weather file, and the columns and units its reader is told."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from records.models import WeatherStation

MOST_BYTES = 25 * 1024 * 1024


class StationForm(RecordForm[WeatherStation]):
    class Meta:
        model = WeatherStation
        fields = [
            "name",
            "station_id",
            "latitude",
            "longitude",
            "elevation_m",
            "is_main",
            "whole_fahrenheit",
            "source",
            "notes",
        ]


class WeatherFileForm(forms.Form):
    file = forms.FileField(
        label=_("File of daily readings"),
        help_text=_(
            "NOAA daily files (.dly, by-station csv or csv.gz, the wide archive csv), "
            "or any table (csv or a workbook, .xlsx) with a day, a lowest and a "
            "highest temperature, and rain."
        ),
    )

    def clean_file(self) -> Any:
        file = self.cleaned_data["file"]
        if file.size > MOST_BYTES:
            raise forms.ValidationError(
                _("The file is larger than 25 MB: too large for one station.")
            )
        return file


class ColumnsForm(forms.Form):
    """Which column holds what, in which unit: confirmed, never guessed in silence."""

    held = forms.CharField(widget=forms.HiddenInput)
    date = forms.ChoiceField(label=_("Day"))
    tmin = forms.ChoiceField(label=_("Lowest temperature"))
    tmax = forms.ChoiceField(label=_("Highest temperature"))
    rain = forms.ChoiceField(label=_("Rain"), required=False)
    date_order = forms.ChoiceField(
        label=_("Days are written"),
        choices=[
            ("", _("choose")),
            ("iso", _("2018-07-05")),
            ("ymd", _("20180705")),
            ("mdy", _("7/5/2018, the month first")),
            ("dmy", _("5/7/2018, the day first")),
        ],
    )
    temp_unit = forms.ChoiceField(
        label=_("Temperatures are in"),
        choices=[
            ("", _("choose")),
            ("C", _("°C")),
            ("F", _("°F")),
            ("C/10", _("tenths of °C")),
        ],
    )
    rain_unit = forms.ChoiceField(
        label=_("Rain is in"),
        required=False,
        choices=[
            ("", _("choose")),
            ("mm", _("mm")),
            ("in", _("inches")),
            ("mm/10", _("tenths of mm")),
        ],
    )

    def __init__(self, data: Any = None, *, columns: list[str], **options: Any) -> None:
        super().__init__(data, **options)
        offered = [("", _("none")), *((name, name) for name in columns)]
        for name in ("date", "tmin", "tmax", "rain"):
            field = self.fields[name]
            assert isinstance(field, forms.ChoiceField)
            field.choices = offered

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if cleaned.get("rain") and not cleaned.get("rain_unit"):
            self.add_error("rain_unit", _("Say which unit the rain is in."))
        return cleaned


class SaveForm(forms.Form):
    """Which of the farm's stations the readings belong to, or the new one's name."""

    held = forms.CharField(widget=forms.HiddenInput)
    known = forms.ModelChoiceField(
        WeatherStation.objects.order_by("name"),
        label=_("Add to station"),
        required=False,
        empty_label=_("a new station"),
    )
    name = forms.CharField(
        label=_("Name of the new station"), required=False, max_length=120
    )
    is_main = forms.BooleanField(
        label=_("Reckon the farm’s seasons with this station"), required=False
    )
    whole_fahrenheit = forms.BooleanField(
        label=_("Its thermometer is read in whole degrees Fahrenheit"),
        required=False,
        help_text=_("So it is at most stations in the United States."),
    )
    which = forms.ChoiceField(label=_("Station in the file"), required=False)

    def __init__(self, data: Any = None, *, taken: Any) -> None:
        self.taken = taken
        found = taken.file.stations
        super().__init__(data, initial={**self._first_guess(), "held": taken.held})
        mine = WeatherStation.objects.on(taken.farm).live().order_by("name")
        choice, which = self.fields["known"], self.fields["which"]
        assert isinstance(choice, forms.ModelChoiceField)
        assert isinstance(which, forms.ChoiceField)
        choice.queryset = mine
        which.choices = [(str(n), one.station_id) for n, one in enumerate(found)]
        if len(found) == 1:
            which.widget = forms.HiddenInput()
        for name, value in self._columns().items():
            self.fields[name] = forms.CharField(
                widget=forms.HiddenInput, required=False, initial=value
            )

    def _columns(self) -> dict[str, Any]:
        """Carried along unseen, so that saving reads what the preview showed."""
        told = self.taken.columns
        names = ("date", "tmin", "tmax", "rain", "date_order", "temp_unit", "rain_unit")
        return {name: getattr(told, name) for name in names} if told else {}

    def _first_guess(self) -> dict[str, Any]:
        one = self.taken.file.stations[0]
        mine = WeatherStation.objects.on(self.taken.farm).live()
        known = (
            mine.filter(station_id=one.station_id).first() if one.station_id else None
        )
        return {
            "known": known and known.pk,
            "name": one.name or one.station_id or self.taken.name.split(".")[0],
            "is_main": not mine.filter(is_main=True).exists(),
            "whole_fahrenheit": self.taken.farm.units == "us",
            "which": "0",
        }

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if cleaned.get("known") is None and not cleaned.get("name"):
            self.add_error("name", _("Give the new station a name."))
        mine = WeatherStation.objects.on(self.taken.farm).live()
        if cleaned.get("known") is None:
            if mine.filter(name=cleaned.get("name")).exists():
                self.add_error("name", _("Another station has this name."))
            if cleaned.get("is_main") and mine.filter(is_main=True).exists():
                self.add_error("is_main", _("The farm already reckons with another."))
        return cleaned

    def series(self) -> Any:
        return self.taken.file.stations[int(self.cleaned_data.get("which") or 0)]

    def station(self) -> WeatherStation:
        """The known station, or a new one as typed, not yet saved."""
        known: WeatherStation | None = self.cleaned_data["known"]
        if known is not None:
            return known
        one = self.series()
        return WeatherStation(
            farm=self.taken.farm,
            name=self.cleaned_data["name"],
            station_id=one.station_id or "",
            latitude=one.latitude,
            longitude=one.longitude,
            elevation_m=one.elevation_m,
            is_main=self.cleaned_data["is_main"],
            whole_fahrenheit=self.cleaned_data["whole_fahrenheit"],
            source=self.taken.name,
        )
