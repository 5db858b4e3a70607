"""What an inspector would leaf through, row by row, as plain values."""

from reports.calc.shapes.books.goods import CountedStock, Crop, Gone, Kept
from reports.calc.shapes.books.inputs import Delivered, Heap, Licence, Product, Put
from reports.calc.shapes.books.land import Ground, Side, Statement
from reports.calc.shapes.books.seed import Lot, Moved, Part, Partner, Search
from reports.calc.shapes.books.sheets import Laid
from reports.calc.shapes.books.stands import EndOf, Flock, Line, Stand
from reports.calc.shapes.books.upkeep import Cleaned, Entry, Mishap, Task, Trained

__all__ = [
    "Cleaned",
    "CountedStock",
    "Crop",
    "Delivered",
    "EndOf",
    "Entry",
    "Flock",
    "Gone",
    "Ground",
    "Heap",
    "Kept",
    "Laid",
    "Licence",
    "Line",
    "Lot",
    "Mishap",
    "Moved",
    "Part",
    "Partner",
    "Product",
    "Put",
    "Search",
    "Side",
    "Stand",
    "Statement",
    "Task",
    "Trained",
]
