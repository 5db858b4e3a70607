"""What people type about plantings, seed and everything done to them."""

from records.forms.crops import FarmFigureForm, KindForm
from records.forms.inputs import ApplicationForm, InputProductForm
from records.forms.observations import BiomassSampleForm, ObservationForm
from records.forms.plantings import PlantingForm
from records.forms.seeds import SeedLotForm
from records.forms.terminations import TerminationForm
from records.forms.weather import (
    ColumnsForm,
    SaveForm,
    StationForm,
    WeatherFileForm,
)

__all__ = [
    "ApplicationForm",
    "BiomassSampleForm",
    "ColumnsForm",
    "FarmFigureForm",
    "InputProductForm",
    "KindForm",
    "ObservationForm",
    "PlantingForm",
    "SaveForm",
    "SeedLotForm",
    "StationForm",
    "TerminationForm",
    "WeatherFileForm",
]
