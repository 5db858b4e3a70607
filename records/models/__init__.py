"""What was intended and what happened, one file a noun."""

from records.models.crops import FarmFigure, Kind, KindFigure
from records.models.inputs import Application, InputProduct
from records.models.observations import BiomassSample, Observation, SampleFrame
from records.models.plantings import Planting, SeedLine
from records.models.seeds import SeedLot
from records.models.terminations import Termination
from records.models.weather import WeatherDay, WeatherStation

__all__ = [
    "Application",
    "BiomassSample",
    "FarmFigure",
    "InputProduct",
    "Kind",
    "KindFigure",
    "Observation",
    "Planting",
    "SampleFrame",
    "SeedLine",
    "SeedLot",
    "Termination",
    "WeatherDay",
    "WeatherStation",
]
