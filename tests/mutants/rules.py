"""Which changes could matter, and how many of each module are tried: the tool's part left out.

Left out are changes that cannot say anything about the tests: annotations, numbers that only set
where a slider starts and ends, the ``strict`` of a ``zip`` (a guard that never speaks when the code
is right), replacements that fail on any number (bits of floats), and pairs that mean the same
(``is`` and ``==`` on enumerations; a minus deleted or turned into a plus).
"""

import ast
import difflib
import re

LEAST_PER_MODULE = 4

Position = tuple[int, int]

_SWAPPED_AMONG_THEMSELVES = (
    {"Add", "Sub", "Mul", "Div", "FloorDiv", "Mod", "Pow"},
    {"BitOr", "BitAnd", "BitXor"},
    {"Eq", "NotEq", "Lt", "LtE", "Gt", "GtE"},
    {"Is", "IsNot"},
)
_SETS_A_SLIDER = {"Range"}
_SETS_A_SLIDER_IN_THE_CATALOGUE = {"_force", "_pull", "_place", "_length", "_angle"}
_CATALOGUE = "quantities.py"


def worth_trying(operator_name: str) -> bool:
    """Whether an operator of the tool makes changes that a test could miss."""
    name = operator_name.split("/")[-1]
    if name.startswith("ReplaceUnaryOperator"):
        return "_Delete_" in name
    swap = re.fullmatch(r"Replace(?:Binary|Comparison)Operator_(\w+)_(\w+)", name)
    return swap is None or any(set(swap.groups()) <= kin for kin in _SWAPPED_AMONG_THEMSELVES)


def hidden_spans(tree: ast.Module, file_name: str) -> list[tuple[Position, Position]]:
    """From where to where changes mean nothing: annotations, and in the catalogue slider ranges."""
    hidden: list[ast.expr | None] = []
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef):
            hidden.append(node.returns)
        elif isinstance(node, ast.arg | ast.AnnAssign):
            hidden.append(node.annotation)
        elif isinstance(node, ast.keyword) and node.arg == "strict":
            hidden.append(node.value)
        elif isinstance(node, ast.Call) and _sets_a_slider(node, file_name):
            hidden += [a for a in node.args if not _is_domain(a)]
    return [
        ((n.lineno, n.col_offset), (n.end_lineno or 0, n.end_col_offset or 0))
        for n in hidden
        if n is not None
    ]


def _sets_a_slider(call: ast.Call, file_name: str) -> bool:
    name = getattr(call.func, "id", "")
    catalogued = file_name == _CATALOGUE and name in _SETS_A_SLIDER_IN_THE_CATALOGUE
    return name in _SETS_A_SLIDER or catalogued


def _is_domain(argument: ast.expr) -> bool:
    return isinstance(argument, ast.Call) and getattr(argument.func, "id", "") == "Domain"


def compiles(source: str) -> bool:
    """Whether ``source`` is Python at all."""
    try:
        ast.parse(source)
    except SyntaxError:
        return False
    return True


def difference(source: str, changed: str) -> tuple[int, str, str]:
    """Number of the first line that differs, and what stands there before and after."""
    old, new = source.splitlines(), changed.splitlines()
    same = difflib.SequenceMatcher(None, old, new, autojunk=False).get_opcodes()
    _, first, end, new_first, new_end = next(block for block in same if block[0] != "equal")
    gone = [line for line in range(first, end) if old[line].strip()]
    before = " ".join(old[line].strip() for line in gone)
    after = " ".join(line.strip() for line in new[new_first:new_end] if line.strip())
    return (gone or [first])[0] + 1, before, after or "(removed)"


def shares(sizes: dict[str, int], count: int) -> dict[str, int]:
    """``count`` split in proportion to ``sizes``, a few at least for each, rounded up."""
    total = sum(sizes.values())
    return {
        name: min(size, max(LEAST_PER_MODULE, -(-count * size // total)))
        for name, size in sizes.items()
    }
