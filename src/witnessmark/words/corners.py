"""Sides and corners as they are typed: "n/s/f", "left rear", "back left", "LR", "offside"."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from witnessmark.vehicle.sides import near_or_off
from witnessmark.words.lexicon import hint, stem
from witnessmark.words.tokens import Token

_HANDS = {
    "left": "left",
    "lh": "left",
    "lhs": "left",
    "lefthand": "left",
    "port": "",
    "right": "right",
    "rh": "right",
}
_HANDS |= {
    "rhs": "right",
    "righthand": "right",
    "ns": "near",
    "nearside": "near",
    "nside": "near",
    "os": "off",
}
_HANDS |= {
    "offside": "off",
    "oside": "off",
    "passengerside": "near",
    "driverside": "off",
    "lside": "left",
    "rside": "right",
}
_ENDS = {"front": "front", "rear": "rear", "frt": "front", "frnt": "front"}
_LETTER_HANDS = {
    "l": "left",
    "r": "right",
    "ns": "near",
    "os": "off",
    "lh": "left",
    "rh": "right",
    "n": "near",
    "o": "off",
}
_LEAVING = (
    "running",
    "ticking",
    "soaking",
    "standing",
    "hanging",
    "curing",
    "drying",
    "draining",
    "burning",
    "sitting",
)
_BACK_AGAIN = ("to", "in", "on", "together", "up", "out", "off")
_LETTER_ENDS = {"f": "front", "r": "rear"}


class FoundSide(Struct, frozen=True):
    """A side found in a line.

    first, last  span of tokens, last excluded
    side         "left rear", "left", "rear"; "" where it could not be told
    unknown      the word stands for a side, but the country is not known
    fixed        read from a spelling that was mended
    """

    first: int
    last: int
    side: str
    unknown: bool = False


def find_sides(tokens: Sequence[Token], country: str) -> tuple[FoundSide, ...]:
    """Every side in a line, in order."""
    found: list[FoundSide] = []
    at = 0
    while at < len(tokens):
        step = _side_at(tokens, at, country)
        if step is None:
            at += 1
            continue
        found.append(step)
        at = step.last
    return tuple(found)


def _side_at(tokens: Sequence[Token], at: int, country: str) -> FoundSide | None:
    """The longest side that begins here: hand and end in either order, or one of them."""
    first = _half_at(tokens, at)
    if first is None:
        return None
    hands, ends, last = first
    if hands == "" or ends == "":
        second = _half_at(tokens, last) or _behind_hand(tokens, last)
        if second and (second[0] == "") != (hands == "") and (second[1] == "") != (ends == ""):
            hands, ends, last = hands or second[0], ends or second[1], second[2]
    last = _swallow(tokens, last, ends)
    hand = near_or_off(hands + "side", country) if hands in ("near", "off") else hands
    if hand is None:
        return FoundSide(at, last, "", unknown=True)
    return FoundSide(at, last, " ".join(w for w in (hand, ends) if w))


def _behind_hand(tokens: Sequence[Token], last: int) -> tuple[str, str, int] | None:
    """The other half behind "hand": "right hand rear"."""
    if last < len(tokens) and tokens[last].low in ("hand", "side"):
        return _half_at(tokens, last + 1)
    return None


def _half_at(tokens: Sequence[Token], at: int) -> tuple[str, str, int] | None:
    """Hand and end told by the token here, "" for what is not, and the token after it."""
    if at >= len(tokens) or tokens[at].sort != "word":
        return None
    low, text = tokens[at].low, tokens[at].text.lower()
    after = tokens[at + 1].low if at + 1 < len(tokens) else ""
    before = tokens[at - 1].low if at else ""
    if low in hint("sided") and after == "side":
        beyond = tokens[at + 2].low if at + 2 < len(tokens) else ""
        told = "near" if low.startswith(("near", "pass", "psn")) else "off"
        apart = (
            beyond
            and beyond not in _ENDS
            and beyond not in hint("side_ends")
            and before not in hint("side_ends")
        )
        return None if low == "off" and apart else (told, "", at + 2)
    if low in ("near", "off") and after in _ENDS and _is_hand(tokens, at):
        return (low, "", at + 1)
    if low == "back" and (
        after in hint("back_of")
        or stem(after) in hint("back_of")
        or before in ("left", "right", "lh", "rh", "ns", "os", "nearside", "offside")
    ):
        return ("", "rear", at + 1)
    if low in ("l", "r") and (after in _ENDS or after in ("h", "hand", "side")):
        skip = 2 if after in ("h", "hand") else 1
        return (_LETTER_HANDS[low], "", at + skip)
    if _HANDS.get(low):
        if low in ("left", "right") and _is_no_side(
            low, before, after, tokens[at + 2].low if at + 2 < len(tokens) else ""
        ):
            return None
        return (_HANDS[low], "", at + 1)
    if low in _ENDS and (before, tokens[at - 2].low if at > 1 else "") != ("to", "back"):
        return ("", _ENDS[low], at + 1)
    return _code(low, text, at)


def _is_hand(tokens: Sequence[Token], at: int) -> bool:
    """Whether "near" or "off" before an end is a hand: "the off front", not "took off front bumper"."""
    if tokens[at].low == "near":
        return True
    before = tokens[at - 1].low if at else ""
    ends = at + 2 >= len(tokens) or tokens[at + 2].sort == "mark"
    return before in ("the", "on", "my", "this", "that") or (before in (",", "-", "") and ends)


def _is_no_side(low: str, before: str, after: str, beyond: str) -> bool:
    """ "All right", "right way round", "left as it is" tell no side."""
    if after in ("hand", "side", "rear", "front", "back") and not (after == "back" and beyond in _BACK_AGAIN):
        return False
    if low == "left" and after in _LEAVING:
        return True
    return (low == "right" and before in hint("no_side_behind")) or (
        after in hint("no_side_before") and (low == "right" or not before)
    )


def _code(low: str, text: str, at: int) -> tuple[str, str, int] | None:
    """Letters run together or parted by slashes: "nsf", "l/rear", "rr", "fl"."""
    pieces = text.split("/")
    if len(pieces) > 1:
        return _from_pieces(pieces, at)
    for hand in ("ns", "os", "lh", "rh", "l", "r"):
        for end in ("f", "r"):
            if low in (hand + end, end + hand):
                return (
                    (_LETTER_HANDS[hand], _LETTER_ENDS[end], at + 1)
                    if low != "fr"
                    else ("right", "front", at + 1)
                )
    return None


def _from_pieces(pieces: Sequence[str], at: int) -> tuple[str, str, int] | None:
    hand = end = ""
    for place, piece in enumerate(pieces):
        if piece in _ENDS or (
            (piece in _LETTER_ENDS and (place == len(pieces) - 1 or piece == "f"))
            and not end
            and (hand or piece == "f")
        ):
            end = _ENDS.get(piece) or _LETTER_ENDS[piece]
        elif piece in _LETTER_HANDS and not hand:
            hand = _LETTER_HANDS[piece]
        elif piece not in ("s", "h", "side", "hand"):
            return None
    return (hand, end, at + 1) if hand or end else None


def _swallow(tokens: Sequence[Token], last: int, end: str) -> int:
    """Take in "hand", "side" and "corner" after a side."""
    while last < len(tokens) and tokens[last].low in hint("side_tail"):
        follower = tokens[last + 1] if last + 1 < len(tokens) else None
        if (
            tokens[last].low == "side"
            and follower is not None
            and follower.low in ("panel", "screen", "light", "cover", "valve")
        ):
            break
        last += 1
    return last
