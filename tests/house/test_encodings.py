"""No text file is opened with whatever encoding the machine happens to have."""

import ast
import re

import pytest

from tests.house.source import HOUSE, PACKAGE, modules, name_of, tree

TEXT_MODE = re.compile(r"[rwax]t?\+?|[rwax]\+?t?")
BEFORE_ENCODING = {"read_text": 0, "write_text": 1}
CHILD_CALLS = {"run", "Popen", "check_output"}


def called(call: ast.Call) -> str:
    """The last word of what is called."""
    match call.func:
        case ast.Name(id=word) | ast.Attribute(attr=word):
            return word
    return ""


def keyword_names(call: ast.Call) -> set[str]:
    """The names of the keywords given; a `**` counts as having said everything."""
    return {keyword.arg or "encoding" for keyword in call.keywords}


def opens_as_text(call: ast.Call) -> bool:
    """Tell whether an `open` call is one for text: the built-in, or a path's own."""
    plain = isinstance(call.func, ast.Name)
    modes = [keyword.value for keyword in call.keywords if keyword.arg == "mode"]
    modes += call.args[1:2] if plain else call.args[:1]
    if not modes:
        return plain or not call.args
    mode = modes[0]
    return isinstance(mode, ast.Constant) and bool(TEXT_MODE.fullmatch(str(mode.value)))


def lacks_encoding(call: ast.Call) -> bool:
    """Tell whether a call reads or writes text and leaves the encoding to chance."""
    word, given = called(call), keyword_names(call)
    if "encoding" in given:
        return False
    if word in BEFORE_ENCODING:
        return len(call.args) <= BEFORE_ENCODING[word]
    if word in CHILD_CALLS:
        return bool(given & {"text", "universal_newlines"})
    return word == "open" and opens_as_text(call)


@pytest.mark.parametrize(
    "slip",
    [
        "open(p)",
        "open(p, 'w')",
        "open(p, mode='a')",
        "p.open()",
        "p.open('r')",
        "p.read_text()",
        "p.write_text(words)",
        "subprocess.run(c, text=True)",
    ],
)
def test_a_slip_is_seen(slip: str) -> None:
    call = ast.parse(slip, mode="eval").body
    assert isinstance(call, ast.Call)
    assert lacks_encoding(call)


@pytest.mark.parametrize(
    "sound",
    [
        "open(p, 'rb')",
        "open(p, encoding='utf-8')",
        "p.open('rb')",
        "archive.open('facts.jsonl')",
        "p.read_text('utf-8')",
        "p.write_text(words, encoding='utf-8')",
        "subprocess.run(c, capture_output=True)",
    ],
)
def test_a_sound_call_is_left_alone(sound: str) -> None:
    call = ast.parse(sound, mode="eval").body
    assert isinstance(call, ast.Call)
    assert not lacks_encoding(call)


def test_every_text_file_is_opened_with_its_encoding() -> None:
    files = [*modules(PACKAGE, HOUSE / "tests", HOUSE / "docs"), HOUSE / "start.py"]
    slips = [
        f"{name_of(path)}:{node.lineno}"
        for path in files
        for node in ast.walk(tree(path))
        if isinstance(node, ast.Call) and lacks_encoding(node)
    ]
    assert slips == []
