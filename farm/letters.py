"""Letters to people, where e-mail is set up."""

from __future__ import annotations

import logging
from smtplib import SMTPException

from django.conf import settings
from django.core.mail import send_mail
from django.template.loader import render_to_string
from django.utils.translation import gettext as _
from django.utils.translation import override

from farm.language import of_person
from farm.models import Invitation

log = logging.getLogger(__name__)


def invitation(one: Invitation, link: str) -> bool:
    """Send a link to the person it is for; False where it has to be handed over."""
    if not settings.MAIL_IS_SET_UP or not one.email:
        return False
    told = {"invitation": one, "link": link}
    with override(one.language or of_person(one.made_by)):
        subject = _("%(who)s invites you to %(farm)s")
        # A name with a line break in it would write lines of the letter's head.
        head = " ".join((subject % {"who": one.made_by, "farm": one.farm}).split())
        text = render_to_string("farm/letters/invitation.txt", told)
    try:
        send_mail(head, text, None, [one.email])
    except (SMTPException, OSError):
        log.warning("An invitation could not be sent by e-mail.")
        return False
    return True
