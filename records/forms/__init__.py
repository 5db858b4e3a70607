"""What people type about plantings, seed and everything done to them."""

from records.forms.assumptions import OwnAssumptionForm
from records.forms.calibrations import CalibrationForm
from records.forms.care import GrazingForm, IrrigationForm, SoilTestForm
from records.forms.composts import CompostBatchForm
from records.forms.crops import FarmFigureForm, KindForm
from records.forms.dressings import SeedDressingForm
from records.forms.duties import DutyForm
from records.forms.harvests import HarvestLotForm, SaleForm, StorageForm
from records.forms.input_lots import InputLotForm
from records.forms.inputs import ApplicationForm, InputProductForm
from records.forms.licences import ApplicatorLicenceForm
from records.forms.moves import LotMoveForm
from records.forms.mulch_sheets import MulchSheetForm
from records.forms.observations import BiomassSampleForm, ObservationForm
from records.forms.offers import SeedOfferForm
from records.forms.orders import SeedOrderForm
from records.forms.plantings import PlantingForm
from records.forms.rulings import (
    CertifierNumberForm,
    ChangeToldForm,
    FindingReplyForm,
    RulesFollowedForm,
)
from records.forms.searches import SeedSearchForm
from records.forms.seeds import SeedLotForm
from records.forms.terminations import TerminationForm
from records.forms.trade import EquipmentForm, SupplierForm
from records.forms.upkeep import (
    CleanOutForm,
    IncidentForm,
    StockCountForm,
    TrainingForm,
)
from records.forms.weather import (
    ColumnsForm,
    SaveForm,
    StationForm,
    WeatherFileForm,
)

__all__ = [
    "ApplicationForm",
    "ApplicatorLicenceForm",
    "BiomassSampleForm",
    "CalibrationForm",
    "CertifierNumberForm",
    "CleanOutForm",
    "ColumnsForm",
    "CompostBatchForm",
    "DutyForm",
    "EquipmentForm",
    "FarmFigureForm",
    "ChangeToldForm",
    "FindingReplyForm",
    "GrazingForm",
    "HarvestLotForm",
    "IncidentForm",
    "InputLotForm",
    "InputProductForm",
    "IrrigationForm",
    "KindForm",
    "LotMoveForm",
    "MulchSheetForm",
    "ObservationForm",
    "OwnAssumptionForm",
    "PlantingForm",
    "RulesFollowedForm",
    "SaleForm",
    "SaveForm",
    "SeedDressingForm",
    "SeedLotForm",
    "SeedOfferForm",
    "SeedOrderForm",
    "SeedSearchForm",
    "SoilTestForm",
    "StationForm",
    "StockCountForm",
    "StorageForm",
    "SupplierForm",
    "TerminationForm",
    "TrainingForm",
    "WeatherFileForm",
]
