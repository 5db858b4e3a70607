"""Words for the parts of the papers for certification."""

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.changes import Part

PART = {
    Part.LAND: _("Fields in use"),
    Part.KINDS: _("Kinds sown"),
    Part.INPUTS: _("Inputs put on"),
    Part.STATUS: _("Land whose status is new"),
    Part.SOWINGS: _("Ways of sowing"),
    Part.ENDINGS: _("Ways of ending a stand"),
    Part.SHEETS: _("Films and tarps laid"),
    Part.SUPPLIERS: _("Suppliers of seed"),
    Part.PEOPLE: _("People who did the work"),
}
LISTS = (PART,)


def parts_said(sections: str) -> str:
    """The parts of a printed packet by name; nothing where they are all of them."""
    told = [str(title) for key, title in SECTIONS.items() if key in sections.split()]
    return "" if len(told) == len(SECTIONS) else "; ".join(told)


# The parts of the packet in the order they are printed.
SECTIONS: Mapping[str, Promise] = {
    "findings": _("Findings and replies"),
    "changes": _("Changes since last season"),
    "land": _("Fields and land"),
    "edges": _("Edges of fields"),
    "rotation": _("Rotation of thirty-six months, by field"),
    "seed": _("Seed and planting stock"),
    "searches": _("Searches for organic seed"),
    "plantings": _("Plantings and covers"),
    "endings": _("Terminations and residue"),
    "films": _("Mulch films and tarps"),
    "inputs": _("Inputs and manure"),
    "compost": _("Compost batches"),
    "pests": _("Pest-control materials"),
    "substances": _("Substances of thirty-six months, by field"),
    "grazing": _("Grazing"),
    "cleaning": _("Clean-outs"),
    "harvest": _("Harvest lots"),
    "apart": _("Lots from buffers and transition"),
    "balances": _("Balances"),
    "trace": _("A lot traced, and a balance struck"),
    "suppliers": _("Suppliers"),
    "incidents": _("Incidents"),
    "training": _("Training"),
    "attestation": _("Attestation"),
    "late": _("Entries written late"),
    "register": _("Voids and changes"),
    "attachments": _("Attachments"),
    "rules": _("Rules put to the books"),
    "assumptions": _("Assumptions in force"),
    "sources": _("Sources"),
}
