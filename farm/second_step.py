"""The second step of signing in: a code by the clock, or one written on paper."""

from __future__ import annotations

import datetime as dt
import secrets
from typing import Any

import segno
from django.db import transaction
from django.http import HttpRequest
from django.utils.safestring import SafeString, mark_safe
from django.utils.translation import gettext as _
from django_otp.plugins.otp_totp.models import TOTPDevice

from farm.models import RecoveryCode, User
from farm.models.invitations import sealed

WAITING = "second_step"
PATIENCE = dt.timedelta(minutes=10)
CODES = 10
# Without letters and figures that look alike on paper: 31^16 is some 79 bits.
LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"


def device_of(user: User) -> TOTPDevice | None:
    """The telephone a person has set up, if any."""
    return TOTPDevice.objects.filter(user=user, confirmed=True).first()


def wait(request: HttpRequest, user: User, onward: str, *, now: dt.datetime) -> None:
    """Hold a person whose password was right at the second step."""
    request.session.cycle_key()
    told = {"user": user.pk, "at": now.timestamp(), "onward": onward}
    request.session[WAITING] = told


def waiting(request: HttpRequest, *, now: dt.datetime) -> User | None:
    """Whoever gave the right password here a short while ago."""
    told: Any = request.session.get(WAITING) or {}
    if now.timestamp() - told.get("at", 0) > PATIENCE.total_seconds():
        return None
    return User.objects.filter(pk=told["user"], is_active=True).first()


def onward(request: HttpRequest) -> str:
    """Where the person wanted to go, asked once."""
    return str(request.session.pop(WAITING, {}).get("onward", ""))


def verify(user: User, code: str) -> str:
    """What is wrong with a code; "" where it opens."""
    device = device_of(user)
    if device is None:
        return ""
    plain = code.replace(" ", "").replace("-", "").lower()
    if len(plain) > device.digits:
        spent, _rows = user.recovery_codes.filter(token_hash=sealed(plain)).delete()
        return "" if spent else _("This recovery code is not known, or was used.")
    allowed, _why = device.verify_is_allowed()
    if not allowed:
        return _("Too many wrong codes. Wait a minute and try the next one.")
    return "" if device.verify_token(plain) else _("This is not the code of now.")


def prepare(user: User) -> TOTPDevice:
    """A telephone that is still to be confirmed; the same square until then."""
    device, _new = TOTPDevice.objects.get_or_create(
        user=user, confirmed=False, defaults={"name": "telephone"}
    )
    return device


def square(device: TOTPDevice) -> SafeString:
    """The address a telephone reads, as a drawing."""
    code = segno.make(device.config_url, error="m", micro=False)
    drawn = code.svg_inline(scale=5, border=4, light="#fff", dark="#000")
    return mark_safe(drawn)


def confirm(user: User, code: str) -> bool:
    """Begin to ask for codes, once the telephone has shown a right one."""
    device = prepare(user)
    if not device.verify_token(code.replace(" ", "")):
        return False
    device.confirmed = True
    device.save()
    return True


def new_codes(user: User) -> list[str]:
    """Ten codes for a lost telephone, told this once; the ones before are void."""
    codes = [
        "".join(secrets.choice(LETTERS) for _n in range(16)) for _c in range(CODES)
    ]
    rows = [RecoveryCode(user=user, token_hash=sealed(code)) for code in codes]
    with transaction.atomic():
        user.recovery_codes.all().delete()
        RecoveryCode.objects.bulk_create(rows)
    return [f"{c[:4]}-{c[4:8]}-{c[8:12]}-{c[12:]}" for c in codes]


def _code() -> str:
    return "".join(secrets.choice(LETTERS) for _place in range(16))


def take_away(user: User) -> None:
    """Ask for the password alone again."""
    TOTPDevice.objects.filter(user=user).delete()
    user.recovery_codes.all().delete()
