"""Sides and corners, as the driver sits facing forward; whole names are "hub nut, left rear"."""

from __future__ import annotations

CORNERS = ("left front", "right front", "left rear", "right rear")
HALVES = ("left", "right", "front", "rear")
SIDES = CORNERS + HALVES
OTHER = {"left": "right", "right": "left", "front": "rear", "rear": "front"}

# The driver's seat is on the off side; which hand that is depends on the country.
OFFSIDE_RIGHT = frozenset({"GB", "IE", "NZ", "AU", "ZA", "IN", "JP", "MT", "CY", "KE", "SG", "MY", "TH"})


def whole_name(name: str, side: str = "") -> str:
    """The name a record uses.

    >>> whole_name("Hub  nut", "left rear"), whole_name("gearbox")
    ('hub nut, left rear', 'gearbox')
    """
    plain = " ".join(name.lower().split())
    return f"{plain}, {side}" if side else plain


def parted(whole: str) -> tuple[str, str]:
    """A whole name taken apart again.

    >>> parted("hub nut, left rear"), parted("gearbox")
    (('hub nut', 'left rear'), ('gearbox', ''))
    """
    name, comma, side = whole.rpartition(", ")
    return (name, side) if comma and side in SIDES else (whole, "")


def other_side(whole: str) -> str | None:
    """The same thing on the other side of the vehicle, or None where there is none.

    >>> other_side("hub nut, left rear")
    'hub nut, right rear'
    """
    name, side = parted(whole)
    words = side.split()
    if not words or words[0] not in ("left", "right"):
        return None
    return whole_name(name, " ".join([OTHER[words[0]], *words[1:]]))


def near_or_off(word: str, country: str) -> str | None:
    """Left or right for "nearside" or "offside", once the country is known.

    >>> near_or_off("nearside", "GB"), near_or_off("offside", "DE"), near_or_off("offside", "")
    ('left', 'left', None)
    """
    if not country:
        return None
    off = "right" if country in OFFSIDE_RIGHT else "left"
    if word.startswith("off"):
        return off
    return OTHER[off]
