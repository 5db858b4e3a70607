"""Words for what was written down."""

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.basics import How
from reports.calc.shapes.ledger import (
    Ending,
    Group,
    Material,
    Method,
    Purpose,
    Residue,
    Seen,
)

HOW = {
    How.OBSERVED: _("seen in the field"),
    How.SAMPLED: _("cut and weighed"),
    How.HEAT: _("reckoned by heat"),
    How.DAYS: _("reckoned by days"),
    How.YEARS: _("from the years on record"),
    How.HANDBOOK: _("from a handbook"),
    How.ASSUMED: _("assumed"),
    How.UNKNOWN: _("not known"),
}
GROUP = {
    Group.GRASS: _("grass"),
    Group.LEGUME: _("legume"),
    Group.BRASSICA: _("brassica"),
    Group.BROADLEAF: _("other broadleaf"),
}
PURPOSE = {
    Purpose.COVER: _("cover crop"),
    Purpose.CASH: _("cash crop"),
    Purpose.NURSE: _("nurse crop"),
}
METHOD = {
    Method.BROADCAST: _("broadcast"),
    Method.DRILLED: _("drilled"),
    Method.TRANSPLANTED: _("transplanted"),
    Method.FROST_SEEDED: _("frost-seeded"),
    Method.SELF_SOWN: _("self-sown"),
}
RESIDUE = {
    Residue.ON_TOP: _("left on top"),
    Residue.WORKED_IN: _("worked in"),
    Residue.REMOVED: _("removed"),
    Residue.GRAZED: _("grazed"),
}
ENDING = {
    Ending.MOWN: _("mown"),
    Ending.FLAIL_MOWN: _("flail-mown"),
    Ending.ROLLER_CRIMPED: _("roller-crimped"),
    Ending.TILLED_IN: _("tilled in"),
    Ending.UNDERCUT: _("undercut"),
    Ending.TARPED: _("tarped"),
    Ending.GRAZED: _("grazed"),
    Ending.FROST_KILLED: _("frost-killed"),
    Ending.HAND_CUT: _("hand-cut"),
    Ending.SPRAYED: _("sprayed"),
    Ending.HARVESTED: _("harvested"),
    Ending.BURNED: _("burned"),
}
MATERIAL = {
    Material.POLYETHYLENE: _("polyethylene film"),
    Material.FABRIC: _("woven landscape fabric"),
    Material.TARP: _("tarp"),
    Material.BIODEGRADABLE: _("biodegradable film"),
    Material.PAPER: _("paper"),
    Material.PVC: _("PVC film or tarp"),
    Material.OTHER: _("other"),
}
SEEN = {
    Seen.EMERGED: _("emerged"),
    Seen.CANOPY: _("canopy"),
    Seen.FIRST_FLOWER: _("first flower"),
    Seen.BLOOM: _("bloom"),
    Seen.SEED_SET: _("seed set"),
    Seen.FROST_KILLED: _("frost-killed"),
    Seen.REGROWN: _("grown back"),
    Seen.WEEDS: _("weeds"),
}
# The ledger hands over what was put on as the records spell it.
INPUTS: Mapping[str, Promise] = {
    "manure": _("raw manure"),
    "compost": _("compost"),
    "lime": _("lime or mineral"),
    "fertiliser": _("fertiliser"),
    "pest": _("pest-control material"),
    "inoculant": _("inoculant"),
    "other": _("other"),
}
HEAPS: Mapping[str, Promise] = {
    "windrow": _("windrow, turned"),
    "in_vessel": _("in a vessel"),
    "static_aerated": _("static pile, aerated"),
    "other": _("other"),
}
MISHAPS: Mapping[str, Promise] = {
    "drift": _("spray drift"),
    "flood": _("flood or run-off"),
    "mix_up": _("mix-up of lots"),
    "spill": _("spill"),
    "animals": _("animals in the field"),
    "injury": _("injury"),
    "other": _("other"),
}
# Where a film or tarp went when it came off.
WENT: Mapping[str, Promise] = {
    "kept": _("kept for use again"),
    "collected": _("taken to a collection for recycling"),
    "tipped": _("taken to a waste site"),
    "worked_in": _("worked into the soil"),
    "other": _("elsewhere, told in the notes"),
}
REASONS: Mapping[str, Promise] = {
    "form": _("not to be had in a suitable form"),
    "quality": _("not to be had in suitable quality"),
    "quantity": _("not to be had in sufficient quantity"),
    "no_equivalent": _("no equivalent variety"),
}
SUBJECTS: Mapping[str, Promise] = {
    "workers": _("worker protection where something was sprayed"),
    "food": _("food safety"),
    "other": _("something else"),
}
LISTS = (HOW, GROUP, PURPOSE, METHOD, RESIDUE, ENDING, MATERIAL, SEEN)


def material_said(word: str) -> str:
    """What a sheet is made of: in words where it is a code, else as the farm wrote."""
    known = {str(code): said for code, said in MATERIAL.items()}
    return str(known.get(word, word))
