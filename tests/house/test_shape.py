"""Files and functions stay small enough to be read; `__init__` files are maps, not code."""

import ast
from collections.abc import Iterator

from tests.house.source import HOUSE, PACKAGE, modules, name_of, tree

LONGEST_FILE = 500
LONGEST_FUNCTION = 60


def test_no_file_is_longer_than_a_person_reads_at_one_go() -> None:
    lengths = {
        name_of(path): len(path.read_text(encoding="utf-8").splitlines())
        for path in [*modules(PACKAGE), HOUSE / "start.py"]
    }
    assert {name: n for name, n in lengths.items() if n > LONGEST_FILE} == {}


def functions(module: ast.Module) -> Iterator[tuple[str, int]]:
    """Each function of a module with its number of lines."""
    for node in ast.walk(module):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield node.name, (node.end_lineno or node.lineno) - node.lineno + 1


def test_no_function_is_longer_than_one_look() -> None:
    long = [
        f"{name_of(path)}: {name} has {lines} lines"
        for path in [*modules(PACKAGE), HOUSE / "start.py"]
        for name, lines in functions(tree(path))
        if lines > LONGEST_FUNCTION
    ]
    assert long == []


def holds_code(module: ast.Module) -> bool:
    """Tell whether a module holds anything but one docstring."""
    return len(module.body) != 1 or ast.get_docstring(module) is None


def test_a_map_with_an_import_is_seen_as_code() -> None:
    assert holds_code(ast.parse('"""A map."""\nimport math\n'))
    assert holds_code(ast.parse(""))
    assert not holds_code(ast.parse('"""A map."""\n'))


def test_init_files_hold_a_few_lines_of_prose_and_no_code() -> None:
    maps = [path for path in modules(PACKAGE) if path.name == "__init__.py"]
    assert [name_of(path) for path in maps if holds_code(tree(path))] == []


def test_every_folder_of_modules_has_its_map() -> None:
    folders = {path.parent for path in modules(PACKAGE)}
    assert sorted(name_of(folder) for folder in folders if not (folder / "__init__.py").exists()) == []
