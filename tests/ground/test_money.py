"""Money: whole coins, one currency at a time. Coins of a currency: ISO 4217, from memory."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.ground.errors import BadInput
from witnessmark.ground.money import CURRENCIES, Money, converted, money, read_money


@given(st.sampled_from(sorted(CURRENCIES)), st.integers(-(10**9), 10**9))
def test_what_is_printed_reads_back_as_it_was(currency: str, minor: int) -> None:
    said = Money(abs(minor), currency).said
    amount, found = read_money(said)
    assert money(amount, found) == Money(abs(minor), currency)


@given(st.integers(0, 10**6), st.integers(0, 10**6))
def test_it_adds_up_to_the_coin(a: int, b: int) -> None:
    assert Money(a, "GBP") + Money(b, "GBP") - Money(b, "GBP") == Money(a, "GBP")


def test_two_currencies_are_never_added() -> None:
    with pytest.raises(ValueError, match="EUR is not GBP"):
        Money(1, "GBP") + Money(1, "EUR")


def test_a_price_typed_in_decimals_is_that_price() -> None:
    assert [money(p, "GBP").minor for p in (0.1 + 0.2, 1.15, 19.99, "0.005")] == [30, 115, 1999, 1]
    assert converted(Money(199, "EUR"), Decimal("0.86"), "GBP").minor == 171


@pytest.mark.parametrize("typed", ["", "about six", "£", "6.40.1", "£6 €", "6 doubloons", "1e9"])
def test_what_is_no_sum_is_refused(typed: str) -> None:
    with pytest.raises(BadInput):
        read_money(typed)
