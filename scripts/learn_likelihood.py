"""Learn how likely each kind of fact is by the words of a line, and write the weights into the package.

    .venv/bin/pip install scikit-learn
    .venv/bin/python scripts/learn_likelihood.py           learn from every line, and write
    .venv/bin/python scripts/learn_likelihood.py --check   leave out each list, and each fifth; write nothing

scikit-learn is a tool of whoever runs this, and no part of the program. Run it after any change to
    .venv/bin/python scripts/learn_likelihood.py --check   leave out each list, then each fifth; write nothing
The same lines, reader and libraries give the same weights.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

TOP = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(TOP), str(TOP / "src")]

import numpy as np  # noqa: E402
from saying import Row, Sayer  # noqa: E402
from scipy.sparse import csr_matrix  # noqa: E402
from sklearn.linear_model import LogisticRegression  # noqa: E402

from tests.words.judging import TODAY, vehicle_knowing  # noqa: E402
from tests.words.more import LISTS, digest, kinds_of, more_rows  # noqa: E402
from witnessmark.tables.weights import ZERO  # noqa: E402
from witnessmark.words.choosing import RULES_COUNT  # noqa: E402
from witnessmark.words.line import take_apart  # noqa: E402
from witnessmark.words.matching import calls  # noqa: E402
from witnessmark.words.naming import find_names  # noqa: E402
from witnessmark.words.telltales import telltales  # noqa: E402
from witnessmark.words.trade import trade  # noqa: E402
from witnessmark.words.vocabulary import vocabulary_of  # noqa: E402

WRITTEN = TOP / "src" / "witnessmark" / "tables" / "words" / "likelihood.txt"
MADE = ("said", "own")
OWN = ("practice", "invented", "story")
SEED, TIMES, OWN_TIMES, FOLDS = 7, 3, 6, 5
# How much a line counts: one by another hand, one of the demo, one made from a way of saying,
# one in the record's own words.
BY_HAND, OF_STORY, SAID, ASKED = 1.0, 2.0, 0.5, 0.4
KEPT, PAIRS, MOST_LEVELS = 10_000, 130_000, 40
PEDIGREE = """\
# How far each telltale of a line speaks for each kind of fact: weights of a multinomial logistic regression.
# Learned from lines invented for this project by scripts/learn_likelihood.py; no other source.
# After the head: telltale, tab, pairs of signs: a level, P for none, then its kind, A for the first.
"""


class Sample:
    """One line made ready: its telltales, what the rules say of it, and the kinds it may be."""

    def __init__(self, row: Row, weight: float) -> None:
        vocabulary = vocabulary_of(vehicle_knowing(row["known"]))
        line = take_apart(row["line"], vocabulary, TODAY)
        hits = find_names(line, vocabulary)
        self.telltales = telltales(line, hits)
        self.rules = {call.tag: call.score for call in calls(line, hits)}
        self.kinds, self.weight = kinds_of(row), weight


class Model:
    """What was learned, rounded to levels as it is shipped."""

    def __init__(self, samples: Sequence[Sample]) -> None:
        seen = Counter(t for sample in samples for t in sample.telltales)
        common = sorted(t for t, count in seen.items() if count > 1)
        wide = _fitted(samples, common)
        far = np.sqrt(((wide.coef_ - np.median(wide.coef_, 0)) ** 2).sum(0))
        self.places = {
            t: i for i, t in enumerate(sorted(common[i] for i in np.argsort(-far, kind="stable")[:KEPT]))
        }
        fine = _fitted(samples, list(self.places))
        weights = fine.coef_ - np.median(fine.coef_, 0)
        self.kinds: list[str] = [str(kind) for kind in fine.classes_]
        self.rests = np.round(fine.intercept_, 3)
        self.step = float(f"{np.abs(weights).max() / MOST_LEVELS:.5f}")
        least = np.sort(np.abs(weights).ravel())[-PAIRS]
        self.levels = np.where(np.abs(weights) >= least, np.round(weights / self.step), 0).astype(int)

    def right(self, samples: Sequence[Sample], rules: float = RULES_COUNT) -> int:
        """How many samples it tells rightly, the rules counting so much."""
        scores = _matrix(samples, self.places) @ (self.levels.T * self.step) + self.rests
        scores = scores + rules * np.array([[s.rules.get(kind, 0.0) for kind in self.kinds] for s in samples])
        return sum(self.kinds[best] in s.kinds for best, s in zip(scores.argmax(1), samples, strict=True))

    def lines(self) -> Iterator[str]:
        """The rows of the file: telltale, tab, pairs."""
        for telltale, at in self.places.items():
            pairs = "".join(
                chr(ZERO + level) + chr(ord("A") + kind)
                for kind, level in enumerate(self.levels[:, at])
                if level
            )
            if pairs:
                yield f"{telltale}\t{pairs}"


def _matrix(samples: Sequence[Sample], places: Mapping[str, int]) -> csr_matrix:
    columns: list[int] = []
    ends = [0]
    for sample in samples:
        columns += [places[t] for t in sample.telltales if t in places]
        ends.append(len(columns))
    return csr_matrix((np.ones(len(columns)), columns, ends), shape=(len(samples), len(places)))


def _fitted(samples: Sequence[Sample], telltales_kept: Sequence[str]) -> LogisticRegression:
    """A line that may be of two kinds counts half for each."""
    pairs = [(sample, kind) for sample in samples for kind in sample.kinds]
    places = {t: i for i, t in enumerate(telltales_kept)}
    model = LogisticRegression(C=1.0, max_iter=200, tol=1e-3)
    return model.fit(
        _matrix([sample for sample, _ in pairs], places),
        [kind for _, kind in pairs],
        sample_weight=[sample.weight / len(sample.kinds) for sample, _ in pairs],
    )


def gathered() -> dict[str, list[Sample]]:
    """Every line to learn from, by its list; "said" are those made from the ways of saying."""
    found = {
        name: [Sample(row, OF_STORY if name == "story" else BY_HAND) for row in more_rows(name)]
        for name in (*OWN, *LISTS)
    }
    sayer = Sayer(SEED)
    said = [Sample(row, SAID / TIMES) for row in sayer.rows(TIMES, own=False)]
    own = [Sample(row, ASKED) for row in (*sayer.rows(OWN_TIMES, own=True), *asked(sayer))]
    return found | {"said": said, "own": own}


def asked(sayer: Sayer) -> Iterator[Row]:
    """What the record itself asks to be typed: each check, each thing upset, each renewable, by its name."""
    for name, upset in dict.fromkeys((a.name, a.sort == "upset") for a in trade().answers.values()):
        for tag, words in (
            ("proved", "proved"),
            ("looked_at", "looked at"),
            *([("put_right", "put right")] * upset),
        ):
            yield sayer.row(tag, f"{words} {name}", plainly=True)
            yield sayer.row(tag, f"{words} {name} {{t}}", plainly=True)
    for item in dict.fromkeys(item for items in trade().items.values() for item in items):
        yield sayer.row("fitted", f"fitted new {item} {{t}}", plainly=True)


def write(samples: Mapping[str, Sequence[Sample]]) -> None:
    model = Model([s for group in samples.values() for s in group])
    right = {name: model.right(group) for name, group in samples.items() if name not in MADE}
    head = {
        "digest": digest(),
        "kinds": " ".join(model.kinds),
        "rests": " ".join(f"{rest:g}" for rest in model.rests),
        "step": f"{model.step:g}",
        "right": " ".join(f"{name}={count}" for name, count in right.items()),
    }
    text = PEDIGREE + "".join(f"{key}: {value}\n" for key, value in head.items())
    WRITTEN.write_text(text + "".join(f"{line}\n" for line in model.lines()), "utf-8")
    print(f"{WRITTEN.name}: {WRITTEN.stat().st_size} bytes, {right}")


def check(samples: Mapping[str, Sequence[Sample]]) -> None:
    """How many are told rightly by a model that has not seen them."""
    for left_out in (("a", "a2"), ("b", "b2"), ("c",), ("d",)):
        model = Model([s for name, group in samples.items() if name not in left_out for s in group])
        for name in left_out:
            _say(f"{name} left out", model, samples[name])
    by_hand = [s for name in ("practice", "invented", *LISTS) for s in samples[name]]
    others = [s for name in ("story", *MADE) for s in samples[name]]
    total = 0
    for fold in range(FOLDS):
        model = Model([*others, *(s for at, s in enumerate(by_hand) if at % FOLDS != fold)])
        total += _say(f"fold {fold + 1} of {FOLDS}", model, by_hand[fold::FOLDS])
    print(f"all folds: {total} of {len(by_hand)}, {total / len(by_hand):.3f}")


def _say(what: str, model: Model, samples: Sequence[Sample]) -> int:
    alone, joined = model.right(samples, rules=0.0), model.right(samples)
    count = len(samples)
    print(f"{what}: alone {alone / count:.3f}, with the rules {joined / count:.3f} of {count}", flush=True)
    return joined


if __name__ == "__main__":
    (check if "--check" in sys.argv else write)(gathered())
