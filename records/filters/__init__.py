"""Narrowing a list: by field, kind, season, days and words."""

from records.filters.goods import (
    ApplicationFilter,
    CompostBatchFilter,
    FarmFigureFilter,
    GrazingFilter,
    HarvestLotFilter,
    InputProductFilter,
    IrrigationFilter,
    OwnAssumptionFilter,
    SaleFilter,
    SeedLotFilter,
    SeedSearchFilter,
    SoilTestFilter,
    StorageFilter,
)
from records.filters.land import (
    EdgeFilter,
    FieldFilter,
    LandStatementFilter,
)
from records.filters.stands import (
    BiomassSampleFilter,
    ObservationFilter,
    PlantingFilter,
    TerminationFilter,
)
from records.filters.upkeep import (
    CleanOutFilter,
    EquipmentFilter,
    IncidentFilter,
    StationFilter,
    StockCountFilter,
    SupplierFilter,
    TrainingFilter,
)

__all__ = [
    "ApplicationFilter",
    "BiomassSampleFilter",
    "CleanOutFilter",
    "CompostBatchFilter",
    "EdgeFilter",
    "EquipmentFilter",
    "FarmFigureFilter",
    "FieldFilter",
    "GrazingFilter",
    "HarvestLotFilter",
    "IncidentFilter",
    "InputProductFilter",
    "IrrigationFilter",
    "LandStatementFilter",
    "ObservationFilter",
    "OwnAssumptionFilter",
    "PlantingFilter",
    "SaleFilter",
    "SeedLotFilter",
    "SeedSearchFilter",
    "SoilTestFilter",
    "StationFilter",
    "StockCountFilter",
    "StorageFilter",
    "SupplierFilter",
    "TerminationFilter",
    "TrainingFilter",
]
