"""Money as whole numbers of the smallest coin, with its currency; two currencies are never added."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from decimal import ROUND_HALF_UP, Decimal, InvalidOperation
from types import MappingProxyType

from msgspec import Struct

from witnessmark.ground.errors import BadInput

# Code (ISO 4217) -> sign as it is printed, and how many of its decimals have a coin. From memory; a wrong
# row would be seen in the first price typed.
CURRENCIES: Mapping[str, tuple[str, int]] = MappingProxyType(
    {
        "GBP": ("£", 2), "EUR": ("€", 2), "USD": ("$", 2), "CHF": ("CHF ", 2), "SEK": ("SEK ", 2),
        "NOK": ("NOK ", 2), "DKK": ("DKK ", 2), "PLN": ("PLN ", 2), "CZK": ("CZK ", 2), "HUF": ("HUF ", 2),
        "CAD": ("CAD ", 2), "AUD": ("AUD ", 2), "NZD": ("NZD ", 2), "ZAR": ("ZAR ", 2), "JPY": ("¥", 0),
    }
)  # fmt: skip
_SIGNS = MappingProxyType({"£": "GBP", "€": "EUR", "$": "USD", "¥": "JPY"})
_OF_COUNTRY = MappingProxyType(
    {"GB": "GBP", "UK": "GBP", "US": "USD", "CH": "CHF", "SE": "SEK", "NO": "NOK", "DK": "DKK", "PL": "PLN",
     "CZ": "CZK", "HU": "HUF", "CA": "CAD", "AU": "AUD", "NZ": "NZD", "ZA": "ZAR", "JP": "JPY"}
    | dict.fromkeys(("DE", "FR", "IT", "ES", "NL", "BE", "AT", "IE", "FI", "PT", "GR", "LU"), "EUR")
)  # fmt: skip
_TYPED = re.compile(r"\s*([£€$¥]|[A-Za-z]{3})?\s*(-?[0-9][0-9 ,]*(?:[.,][0-9]+)?)\s*([£€$¥]|[A-Za-z]{3})?\s*")


class Money(Struct, frozen=True, order=True):
    """So many of the smallest coin of a currency."""

    minor: int
    currency: str

    def __add__(self, other: Money) -> Money:
        return Money(self.minor + self._same(other), self.currency)

    def __sub__(self, other: Money) -> Money:
        return Money(self.minor - self._same(other), self.currency)

    def _same(self, other: Money) -> int:
        if other.currency != self.currency:
            raise ValueError(f"{other.currency} is not {self.currency}")
        return other.minor

    @property
    def said(self) -> str:
        """As it is printed.

        >>> Money(4555, "GBP").said, Money(-50, "EUR").said, Money(1200, "JPY").said
        ('£45.55', '-€0.50', '¥1200')
        """
        sign, places = CURRENCIES[self.currency]
        whole, rest = divmod(abs(self.minor), 10**places)
        minus = "-" if self.minor < 0 else ""
        return f"{minus}{sign}{whole}.{rest:0{places}d}" if places else f"{minus}{sign}{whole}"


def money(amount: float | str | Decimal, currency: str) -> Money:
    """A sum as typed; half a coin is rounded up.

    >>> money(6.4, "GBP"), money("1.005", "GBP")
    (Money(minor=640, currency='GBP'), Money(minor=101, currency='GBP'))
    """
    places = CURRENCIES[known_currency(currency)][1]
    try:
        exact = Decimal(str(amount)).scaleb(places)
        return Money(int(exact.quantize(Decimal(1), ROUND_HALF_UP)), currency)
    except (InvalidOperation, ValueError):
        raise BadInput(
            given=f"the sum is {amount!r}", holds="a sum of money, as 6.40", do="Write it so."
        ) from None


def converted(sum_: Money, rate: Decimal, currency: str) -> Money:
    """The same in another currency, at so many of its units for one; half a coin is rounded up.

    >>> converted(Money(1000, "EUR"), Decimal("0.86"), "GBP").said
    '£8.60'
    """
    units = Decimal(sum_.minor).scaleb(-CURRENCIES[sum_.currency][1])
    return money(units * rate, currency)


def known_currency(code: str) -> str:
    """The code of a currency by its code or its sign; one that is not known is bad input.

    >>> known_currency("€"), known_currency("gbp")
    ('EUR', 'GBP')
    """
    found = _SIGNS.get(code.strip(), code.strip().upper())
    if found not in CURRENCIES:
        raise BadInput(
            given=f"the currency is {code!r}",
            holds=f"one of {', '.join(CURRENCIES)}",
            do="Write its three letters.",
        )
    return found


def currency_of(country: str) -> str:
    """The currency of a country by its two letters; "" where it is not known.

    >>> currency_of("GB"), currency_of("")
    ('GBP', '')
    """
    return _OF_COUNTRY.get(country.upper(), "")


def read_money(text: str, currency: str = "") -> tuple[Decimal, str]:
    """A sum as a person types it, and its currency; `currency` where none is typed.

    >>> read_money("£6.40"), read_money("6,40 EUR"), read_money("12", "GBP")
    ((Decimal('6.40'), 'GBP'), (Decimal('6.40'), 'EUR'), (Decimal('12'), 'GBP'))
    """
    found = _TYPED.fullmatch(text)
    if found is None or (found[1] and found[3]):
        raise BadInput(given=f"the sum is {text!r}", holds="a sum of money, as £6.40", do="Write it so.")
    digits = found[2].replace(" ", "")
    whole, comma, rest = digits.rpartition(",")
    if comma and "." not in digits and len(rest) != 3:
        digits = f"{whole.replace(',', '')}.{rest}"
    sign = found[1] or found[3]
    return Decimal(digits.replace(",", "")), known_currency(sign) if sign else currency


def total(sums: Iterable[Money], currency: str) -> Money:
    """All of them together; nothing is nothing.

    >>> total([Money(1, "GBP"), Money(2, "GBP")], "GBP")
    Money(minor=3, currency='GBP')
    """
    found = Money(0, currency)
    for one in sums:
        found = found + one
    return found
