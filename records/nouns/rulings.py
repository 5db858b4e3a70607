"""Rules followed, the certifier's numbers, and replies to findings."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from farm.access import MANAGERS
from records import filters, forms, models
from records.nouns.base import Column, Noun

NOUNS = (
    Noun(
        "rules-followed",
        models.RulesFollowed,
        forms.RulesFollowedForm,
        filters.RulesFollowedFilter,
        (
            Column(_("rules"), lambda row: row.get_which_display()),
            Column(_("followed since"), lambda row: row.since),
            Column(_("followed until"), lambda row: row.until or ""),
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
            Column(_("rule"), lambda row: row.key),
            Column(_("value"), lambda row: row.value, "number"),
            Column(_("what the certifier said"), lambda row: row.note),
            Column(_("letter or paper"), lambda row: row.document),
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
            Column(_("what was found"), lambda row: row.finding),
            Column(_("reply"), lambda row: row.reply),
            Column(_("replied on"), lambda row: row.replied_on),
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
            Column(_("what changed"), lambda row: row.change),
            Column(_("certifier told on"), lambda row: row.told_on),
            Column(_("how"), lambda row: row.how),
        ),
        order=("-told_on", "pk"),
        writers=MANAGERS,
        begins_at="reports:changes-now",
        begins_with="key",
    ),
)
