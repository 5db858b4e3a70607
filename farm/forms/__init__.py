"""What people type about the farm, its land and its people."""

from farm.forms.base import RecordForm
from farm.forms.land import EdgeForm, FarmForm, FieldForm, LandStatementForm
from farm.forms.people import PersonForm

__all__ = [
    "EdgeForm",
    "FarmForm",
    "FieldForm",
    "LandStatementForm",
    "PersonForm",
    "RecordForm",
]
