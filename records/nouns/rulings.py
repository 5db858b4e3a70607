"""Rules followed, the certifier's numbers, and replies to findings."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from farm.access import MANAGERS
from records import filters, forms, models
from records.nouns.base import Column, Noun
from records.rules_called import number_said


def value_said(row: models.CertifierNumber) -> str:
    return number_said(row.key, row.value, row.farm)


NOUNS = (
    Noun(
        "rules-followed",
        models.RulesFollowed,
        forms.RulesFollowedForm,
        filters.RulesFollowedFilter,
        (
            Column(_("rules"), "which"),
            Column(_("followed since"), "since"),
            Column(_("followed until"), "until"),
        ),
        order=("which", "pk"),
        writers=MANAGERS,
    ),
    Noun(
        "certifier-numbers",
        models.CertifierNumber,
        forms.CertifierNumberForm,
        filters.CertifierNumberFilter,
        (
            Column(_("rule"), "called", by="key"),
            Column(_("value"), value_said, by="value"),
            Column(_("what the certifier said"), "note"),
            Column(_("letter or paper"), "document"),
        ),
        order=("key", "pk"),
        writers=MANAGERS,
        begins_at="reports:rules",
        begins_with="key",
    ),
    Noun(
        "finding-replies",
        models.FindingReply,
        forms.FindingReplyForm,
        filters.FindingReplyFilter,
        (
            Column(_("what was found"), "finding"),
            Column(_("reply"), "reply"),
            Column(_("replied on"), "replied_on"),
        ),
        order=("-replied_on", "pk"),
        writers=MANAGERS,
        begins_at="reports:findings-now",
        begins_with="key",
    ),
    Noun(
        "changes-told",
        models.ChangeTold,
        forms.ChangeToldForm,
        filters.ChangeToldFilter,
        (
            Column(_("what changed"), "change"),
            Column(_("certifier told on"), "told_on"),
            Column(_("how"), "how"),
        ),
        order=("-told_on", "pk"),
        writers=MANAGERS,
        begins_at="reports:changes-now",
        begins_with="key",
    ),
)
