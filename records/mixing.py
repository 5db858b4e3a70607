"""A mix as one writes it on one line: kinds with their shares."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from django.utils.translation import gettext as _

from farm.models import Farm
from records.models import Kind

BETWEEN = re.compile(r"\s*[+;\n]\s*")
SHARE = r"(?P<share>\d+(?:[.,]\d+)?)\s*%?"
WAYS = (
    re.compile(rf"^{SHARE}\s+(?P<name>\D.*)$"),
    re.compile(rf"^(?P<name>\D.*?)\s+{SHARE}$"),
)
# Shares are written as whole per cents; three kinds at 33 % make one mix.
NEAR = 1.5
Mix = Sequence[tuple[Kind, float]]


class MixError(ValueError):
    """What is wrong with a mix as it was written, in words for the writer."""


def written(mix: Iterable[tuple[object, float]]) -> str:
    """Kinds with their shares, as one may type them again."""
    return " + ".join(f"{kind} {share * 100:.3g}" for kind, share in mix)


def mix_of(text: str, farm: Farm) -> Mix:
    """The kinds of a line with shares that add up to one; MixError where not."""
    kinds = by_name(farm)
    parts = [_part(part, kinds) for part in BETWEEN.split(text.strip())]
    chosen = [kind for kind, _share in parts]
    if len(set(chosen)) < len(chosen):
        raise MixError(_("A kind stands twice in the mix."))
    return list(zip(chosen, _shares([share for _kind, share in parts]), strict=True))


def by_name(farm: Farm) -> dict[str, Kind]:
    """The farm's kinds by their names in both languages; the English one goes first."""
    kinds = list(Kind.objects.open_to(farm))
    spanish = {kind.name_es.casefold(): kind for kind in kinds if kind.name_es}
    return spanish | {kind.name.casefold(): kind for kind in kinds}


def _part(part: str, kinds: Mapping[str, Kind]) -> tuple[Kind, float | None]:
    """A kind with its share, None where none is written; a name may end in digits."""
    if part.casefold() in kinds:
        return kinds[part.casefold()], None
    match = next((found for way in WAYS if (found := way.match(part))), None)
    if match is None and not part[:1].isalpha():
        raise MixError(_("“%(part)s” is no kind with its share.") % {"part": part})
    name = match["name"].strip() if match else part
    if name.casefold() not in kinds:
        raise MixError(_("No kind is called “%(name)s”.") % {"name": name})
    share = float(match["share"].replace(",", ".")) / 100 if match else None
    return kinds[name.casefold()], share


def _shares(shares: Sequence[float | None]) -> list[float]:
    """Shares as written, all alike where none is written."""
    if all(share is None for share in shares):
        return [1 / len(shares)] * len(shares)
    if any(share is None for share in shares):
        raise MixError(_("Give each kind of a mix its share."))
    known = [share for share in shares if share is not None]
    if abs(sum(known) - 1) * 100 > NEAR:
        told = {"sum": round(sum(known) * 100)}
        raise MixError(
            _("The shares of the mix add up to %(sum)s %%, not 100 %%.") % told
        )
    return [share / sum(known) for share in known]
