"""The house read as text: its modules, what they import, and their functions."""

import ast
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path

from tests.places import ROOT

STOREYS = ("farm", "records", "reports")


@dataclass(frozen=True)
class Module:
    path: Path

    @property
    def place(self):
        return self.path.relative_to(ROOT).as_posix()

    @property
    def name(self):
        parts = self.path.relative_to(ROOT).with_suffix("").parts
        return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)

    @cached_property
    def text(self):
        return self.path.read_text(encoding="utf-8")

    @cached_property
    def tree(self):
        return ast.parse(self.text)

    @property
    def line_count(self):
        return len(self.text.splitlines())

    @cached_property
    def imports(self):
        """Every name imported, also inside functions, with the line it stands on."""
        found = []
        for node in ast.walk(self.tree):
            if isinstance(node, ast.Import):
                found += [(alias.name, node.lineno) for alias in node.names]
            if isinstance(node, ast.ImportFrom):
                for alias in node.names:
                    found.append((f"{node.module}.{alias.name}", node.lineno))
        return found

    @cached_property
    def imports_at_work(self):
        """Names imported when the program runs: not those for the type checker."""
        for_types = {
            node.lineno
            for block in ast.walk(self.tree)
            if isinstance(block, ast.If) and "TYPE_CHECKING" in ast.unparse(block.test)
            for part in block.body
            for node in ast.walk(part)
            if isinstance(node, (ast.Import, ast.ImportFrom))
        }
        return [name for name, line in self.imports if line not in for_types]

    @cached_property
    def hidden_imports(self):
        """Imports that stand inside a function."""
        return [
            (ast.unparse(node), node.lineno)
            for function in self.functions
            for node in ast.walk(function)
            if isinstance(node, (ast.Import, ast.ImportFrom))
        ]

    @cached_property
    def functions(self):
        kinds = (ast.FunctionDef, ast.AsyncFunctionDef)
        return [node for node in ast.walk(self.tree) if isinstance(node, kinds)]

    @cached_property
    def calls(self):
        """Every call as it is written, without what it is given."""
        return [
            (ast.unparse(node.func), node.lineno)
            for node in ast.walk(self.tree)
            if isinstance(node, ast.Call)
        ]

    def at(self, line):
        return f"{self.place}:{line}"


def modules(*places):
    """The modules under these folders or files, migrations left out."""
    found = []
    for place in places or STOREYS:
        path = ROOT / place
        found += [path] if path.suffix == ".py" else sorted(path.rglob("*.py"))
    return [module_at(path) for path in found if "migrations" not in path.parts]


@cache
def module_at(path):
    """One module, read once however many rules are held against it."""
    return Module(path)


def within(name, *rooms):
    """Tell whether a dotted name lies in one of these rooms."""
    return any(name == room or name.startswith(f"{room}.") for room in rooms)


def body_length(function):
    """Lines of a function from its name to its end, without its docstring."""
    first, *rest = function.body
    documented = isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant)
    start = rest[0].lineno if documented and rest else first.lineno
    return function.end_lineno - start + 1
