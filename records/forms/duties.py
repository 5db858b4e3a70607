"""A duty: what, where, by when, and who is to do it."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import ModelChoiceField, RecordForm
from farm.models import Farm, User
from records.models import Duty, Planting


class AnyPlanting(ModelChoiceField[Planting]):
    """A planting sown or planned, told by field, kinds and day."""

    def __init__(self, **options: Any) -> None:
        rows = Planting.objects.select_related("field").prefetch_related("lines__kind")
        super().__init__(rows.order_by("-sown_on", "-planned_on", "pk"), **options)

    def label_from_instance(self, obj: Any) -> str:
        kinds = " + ".join(str(line.kind) for line in obj.lines.all())
        return f"{obj} · {kinds}"


class DutyForm(RecordForm[Duty]):
    HAPPENED = ("done_on",)

    planting = AnyPlanting(label=_("Planting"), required=False)
    who_for = forms.TypedChoiceField(
        label=_("For whom"),
        required=False,
        empty_value=None,
        help_text=_("Leave empty for whoever comes to it."),
    )

    class Meta:
        model = Duty
        fields = [
            "what",
            "words",
            "field",
            "planting",
            "earliest_on",
            "latest_on",
            "who_for",
            "from_window",
            "done_on",
            "done_by",
            "notes",
        ]

    def __init__(self, *args: Any, **options: Any) -> None:
        super().__init__(*args, **options)
        people = {str(user.pk): user for user in people_of(self.farm, self.today)}
        choices = [(key, str(user)) for key, user in people.items()]
        who: Any = self.fields["who_for"]
        who.choices, who.coerce = [("", "—"), *choices], people.__getitem__

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        planting, field = cleaned.get("planting"), cleaned.get("field")
        if planting and field and planting.field_id != field.pk:
            self.add_error("planting", _("This planting lies in another field."))
        first, last = cleaned.get("earliest_on"), cleaned.get("latest_on")
        if first and last and last < first:
            self.add_error("latest_on", _("It would be over before it begins."))
        return cleaned

    def open_twin(self) -> Duty | None:
        """The open duty that asks for the same of the same planting in these days."""
        told = {key: self.cleaned_data[key] for key in ("what", "planting", "field")}
        first, last = (self.cleaned_data[f"{end}_on"] for end in ("earliest", "latest"))
        rows = Duty.objects.on(self.farm).open().filter(**told)
        meeting = rows.filter(earliest_on__lte=last, latest_on__gte=first)
        found: Duty | None = meeting.first()
        return found


def people_of(farm: Farm, today: Any) -> list[User]:
    """Everybody on the farm that day."""
    members = farm.memberships.on(today).select_related("user").order_by("since", "pk")
    return [member.user for member in members]
