"""Rules followed, numbers of the certifier's own, replies to findings."""

from __future__ import annotations

from typing import Any, ClassVar

from django import forms
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.templatetags.measures import bare
from records.models import CertifierNumber, ChangeTold, FindingReply, RulesFollowed
from records.rules_called import called, typed_as


class RulesFollowedForm(RecordForm[RulesFollowed]):
    class Meta:
        model = RulesFollowed
        fields = ["which", "since", "until", "notes"]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        since, until = cleaned.get("since"), cleaned.get("until")
        rows = RulesFollowed.objects.on(self.farm).live()
        same = rows.filter(which=cleaned.get("which")).exclude(pk=self.instance.pk)
        if until:
            same = same.filter(since__lte=until)
        if since and same.filter(Q(until=None) | Q(until__gte=since)).exists():
            told = _("These rules are followed on some of these days already.")
            self.add_error("since", told)
        return cleaned


class CertifierNumberForm(RecordForm[CertifierNumber]):
    class Meta:
        model = CertifierNumber
        fields = ["key", "low", "high", "value", "note", "document", "notes"]
        widgets: ClassVar = {
            name: forms.HiddenInput() for name in ("key", "low", "high")
        }

    def __init__(self, data: Any = None, **options: Any) -> None:
        super().__init__(data, **options)
        told = {**self.initial, **(data.dict() if hasattr(data, "dict") else {})}
        if key := told.get("key"):
            told_range = _("From %(low)s to %(high)s.") % {
                name: bare(told.get(name)) for name in ("low", "high")
            }
            about = ", ".join(filter(None, (called(key), typed_as(key))))
            self.fields["value"].help_text = f"{about}. {told_range}"

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        told = [cleaned[name] for name in ("low", "value", "high") if name in cleaned]
        if told != sorted(told):
            self.add_error("value", _("The value lies outside the range."))
        return cleaned


class FindingReplyForm(RecordForm[FindingReply]):
    HAPPENED = ("replied_on",)

    class Meta:
        model = FindingReply
        fields = ["key", "finding", "reply", "replied_on", "done_by", "notes"]
        widgets: ClassVar = {
            "key": forms.HiddenInput(),
            "finding": forms.HiddenInput(),
            "reply": forms.Textarea(attrs={"rows": 3}),
        }

    def __init__(self, data: Any = None, **options: Any) -> None:
        super().__init__(data, **options)
        told = data.get("finding") if hasattr(data, "get") else None
        self.fields["reply"].help_text = told or self.initial.get("finding", "")


class ChangeToldForm(RecordForm[ChangeTold]):
    HAPPENED = ("told_on",)

    class Meta:
        model = ChangeTold
        fields = ["key", "change", "told_on", "how", "done_by", "notes"]
        widgets: ClassVar = {
            "key": forms.HiddenInput(),
            "change": forms.HiddenInput(),
        }

    def __init__(self, data: Any = None, **options: Any) -> None:
        super().__init__(data, **options)
        told = data.get("change") if hasattr(data, "get") else None
        self.fields["told_on"].help_text = told or self.initial.get("change", "")
