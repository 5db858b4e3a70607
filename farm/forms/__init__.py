"""What people type about the farm, its land and its people."""

from farm.forms.base import RecordForm
from farm.forms.land import EdgeForm, FarmForm, FieldForm, LandStatementForm
from farm.forms.people import AccountForm, ComeInForm, MemberForm, PersonForm

__all__ = [
    "AccountForm",
    "ComeInForm",
    "EdgeForm",
    "FarmForm",
    "FieldForm",
    "LandStatementForm",
    "MemberForm",
    "PersonForm",
    "RecordForm",
]
