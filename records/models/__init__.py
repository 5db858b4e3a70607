"""What was intended and what happened, one file a noun."""

from records.models.assumptions import OwnAssumption
from records.models.attachments import Attachment
from records.models.calendars import CalendarAddress
from records.models.calibrations import Calibration
from records.models.care import Grazing, Irrigation, SoilTest, SoilValue
from records.models.composts import CompostBatch, CompostDay
from records.models.crops import FarmFigure, Kind, KindFigure
from records.models.dressings import SeedDressing
from records.models.duties import Duty
from records.models.harvests import HarvestLot, Sale, Storage
from records.models.input_lots import InputLot
from records.models.inputs import Application, InputProduct
from records.models.kept_findings import KeptFindings
from records.models.licences import ApplicatorLicence
from records.models.moves import LotMove
from records.models.mulch_sheets import MulchSheet
from records.models.observations import BiomassSample, Observation, SampleFrame
from records.models.offers import OfferComponent, OfferPrice, SeedOffer
from records.models.orders import OrderComponent, OrderDressing, OrderLine, SeedOrder
from records.models.plantings import Planting, SeedLine
from records.models.prints import PrintedPaper, PrintJob
from records.models.rulings import (
    CertifierNumber,
    ChangeTold,
    FindingReply,
    RulesFollowed,
)
from records.models.searches import SeedSearch, SourceAsked
from records.models.seeds import LotComponent, NoxiousWeed, SeedLot
from records.models.sent import SentEntry
from records.models.terminations import Termination
from records.models.trade import Equipment, Supplier
from records.models.upkeep import CleanOut, Incident, StockCount, Training
from records.models.weather import WeatherDay, WeatherStation

__all__ = [
    "Application",
    "ApplicatorLicence",
    "Attachment",
    "BiomassSample",
    "Calibration",
    "CalendarAddress",
    "CertifierNumber",
    "ChangeTold",
    "CleanOut",
    "CompostBatch",
    "CompostDay",
    "Duty",
    "Equipment",
    "FarmFigure",
    "FindingReply",
    "Grazing",
    "HarvestLot",
    "Incident",
    "InputLot",
    "InputProduct",
    "Irrigation",
    "KeptFindings",
    "Kind",
    "KindFigure",
    "LotComponent",
    "LotMove",
    "MulchSheet",
    "NoxiousWeed",
    "Observation",
    "OfferComponent",
    "OfferPrice",
    "OrderComponent",
    "OrderDressing",
    "OrderLine",
    "OwnAssumption",
    "Planting",
    "PrintJob",
    "PrintedPaper",
    "RulesFollowed",
    "Sale",
    "SampleFrame",
    "SeedDressing",
    "SeedLine",
    "SeedLot",
    "SeedOffer",
    "SeedOrder",
    "SeedSearch",
    "SentEntry",
    "SoilTest",
    "SoilValue",
    "SourceAsked",
    "StockCount",
    "Storage",
    "Supplier",
    "Termination",
    "Training",
    "WeatherDay",
    "WeatherStation",
]
