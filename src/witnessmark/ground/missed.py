"""What happens if a thing is forgotten, and where a proof can be given: two short ladders."""

from enum import IntEnum


class IfMissed(IntEnum):
    """What happens if it is missed, heaviest first."""

    LETS_GO = 0
    WARNS_FIRST = 1
    WRECKS = 2
    WETS = 3
    LOOKS = 4

    @property
    def key(self) -> str:
        """The word used in data and JSON.

        >>> IfMissed.LETS_GO.key
        'lets_go'
        """
        return self.name.lower()

    @property
    def words(self) -> str:
        """The words shown to a person.

        >>> IfMissed.WARNS_FIRST.words
        'warns first'
        """
        return self.key.replace("_", " ")


MEANINGS = {
    IfMissed.LETS_GO: "one joint is enough: control, fire, restraint, crush",
    IfMissed.WARNS_FIRST: "gives warning, or needs a second failure",
    IfMissed.WRECKS: "mechanical damage",
    IfMissed.WETS: "water, corrosion",
    IfMissed.LOOKS: "comfort, looks",
}


class Stage(IntEnum):
    """Where a closing check can be given, in the order a vehicle comes to it."""

    WORKBENCH = 0
    STANDS = 1
    WHEELS = 2
    CREEPING = 3
    ROAD = 4

    @property
    def key(self) -> str:
        return self.name.lower()

    @property
    def words(self) -> str:
        """The words shown to a person.

        >>> Stage.STANDS.words
        'on stands'
        """
        return _STAGE_WORDS[self]


_STAGE_WORDS = {
    Stage.WORKBENCH: "on the workbench",
    Stage.STANDS: "on stands",
    Stage.WHEELS: "on its wheels",
    Stage.CREEPING: "creeping on private ground",
    Stage.ROAD: "on the road",
}


def if_missed(key: str) -> IfMissed:
    """Read the word used in data ("lets_go") or on a screen ("lets go")."""
    return IfMissed[key.strip().upper().replace(" ", "_")]


def stage(key: str) -> Stage:
    """Read a stage's key, "stands"."""
    return Stage[key.strip().upper()]
