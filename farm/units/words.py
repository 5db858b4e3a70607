"""The words growers use for units, in English and Spanish, and what they stand for."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from farm.units import factors


@dataclass(frozen=True, slots=True)
class Table:
    """Unit words of one kind of measure, each with its factor to SI."""

    factors: Mapping[str, float]
    shown: tuple[str, ...]

    def __contains__(self, word: str) -> bool:
        return word in self.factors


def _table(rows: Mapping[str, float]) -> Table:
    """Build a table from rows of words; the first word of a row is the one shown."""
    words = {word: rows[row] for row in rows for word in row.split("|")}
    return Table(MappingProxyType(words), tuple(row.split("|")[0] for row in rows))


AREA = _table(
    {
        "acres|acre|ac|acs": factors.M2_PER_ACRE,
        "hectares|hectare|ha|hectarea|hectareas": factors.M2_PER_HA,
        "sq ft|sqft|ft²|sf|square feet|square foot|sq feet|sq foot|feet²|foot²"
        "|pies cuadrados|pie cuadrado|pies²|pie²": factors.M2_PER_FT2,
        "sq m|m²|sqm|square meters|square meter|square metres|square metre"
        "|metros cuadrados|metro cuadrado": 1.0,
        "sq yd|yd²|sqyd|square yards|square yard|yardas cuadradas"
        "|yarda cuadrada": factors.M2_PER_YD2,
        "sq in|in²|sqin|square inches|square inch|pulgadas cuadradas"
        "|pulgada cuadrada": factors.M2_PER_IN2,
        "sq cm|cm²|square centimeters|square centimetres|centimetros cuadrados": 1e-4,
        "sq mi|mi²|square miles|square mile|millas cuadradas"
        "|milla cuadrada": factors.M2_PER_MI2,
    }
)

_SHORT = {
    'in|inch|inches|"|pulgada|pulgadas|pulg': factors.M_PER_IN,
    "cm|centimeter|centimeters|centimetre|centimetres|centimetro|centimetros": 0.01,
    "mm|millimeter|millimeters|millimetre|millimetres|milimetro|milimetros": 0.001,
}
_LONG = {
    "ft|foot|feet|'|pie|pies": factors.M_PER_FT,
    "m|meter|meters|metre|metres|metro|metros": 1.0,
}
DEPTH = _table({**_SHORT, **_LONG})
LENGTH = _table(
    {
        **_LONG,
        "yd|yard|yards|yarda|yardas": factors.M_PER_YD,
        **_SHORT,
        "mi|mile|miles|milla|millas": factors.M_PER_MI,
        "km|kilometer|kilometers|kilometre|kilometres|kilometro|kilometros": 1000.0,
    }
)
RAIN = _table({row: factor * 1000 for row, factor in _SHORT.items()})

MASS = _table(
    {
        "lb|lbs|pound|pounds|#|libra|libras": factors.KG_PER_LB,
        "oz|ounce|ounces|onza|onzas": factors.KG_PER_OZ,
        "kg|kgs|kilo|kilos|kilogram|kilograms|kilogramo|kilogramos": 1.0,
        "g|gr|gm|gram|grams|gramo|gramos": 0.001,
        "cwt|hundredweight": factors.KG_PER_CWT,
        # In US trade "ton" is 2000 lb; in Spanish "tonelada" is 1000 kg.
        "ton|tons|short ton|short tons|us ton|us tons": factors.KG_PER_SHORT_TON,
        "tonne|t|tonnes|metric ton|metric tons|tonelada|toneladas": 1000.0,
    }
)

VOLUME = _table(
    {
        "gal|gallon|gallons|galon|galones": factors.M3_PER_US_GALLON,
        "qt|qts|quart|quarts|cuarto|cuartos": factors.M3_PER_US_QUART,
        "pt|pint|pints|pinta|pintas": factors.M3_PER_US_PINT,
        "fl oz|fluid ounce|fluid ounces|onza liquida"
        "|onzas liquidas": factors.M3_PER_US_FL_OZ,
        "L|l|liter|liters|litre|litres|litro|litros": 1e-3,
        "mL|ml|milliliter|milliliters|millilitre|millilitres"
        "|mililitro|mililitros": 1e-6,
        "cu yd|yd³|cuyd|cubic yard|cubic yards|yarda cubica"
        "|yardas cubicas": factors.M3_PER_YD3,
        "cu ft|ft³|cuft|cubic foot|cubic feet|pie cubico"
        "|pies cubicos": factors.M3_PER_FT3,
        "cu m|m³|cubic meter|cubic meters|cubic metre|cubic metres"
        "|metro cubico|metros cubicos": 1.0,
        "bu|bushel|bushels": factors.M3_PER_US_BUSHEL,
    }
)

TEMPS = {
    "f": "F",
    "fahrenheit": "F",
    "c": "C",
    "celsius": "C",
    "centigrade": "C",
    "centigrados": "C",
}

THINGS = frozenset({"seed", "seeds", "semilla", "semillas"}) | frozenset(
    {"plant", "plants", "seedling", "seedlings", "planta", "plantas"}
)
