"""Which numbers of tucks are allowed: a rule comes from the file and the turn plan, the choice of tucks asks it."""

from __future__ import annotations

from dataclasses import dataclass
from math import lcm


@dataclass(frozen=True, slots=True)
class CountRule:
    """The counts n with ``n % multiple == remainder`` and, where given, n equal to ``exactly``.

    Examples
    --------
    >>> even, odd = CountRule(2), CountRule(2, 1)
    >>> [count for count in range(6) if odd.allows(count)]
    [1, 3, 5]
    >>> even.joined(CountRule(3))
    CountRule(multiple=6, remainder=0, exactly=None)
    """

    multiple: int = 1
    remainder: int = 0
    exactly: int | None = None

    def allows(self, count: int) -> bool:
        """Return whether a number of tucks keeps the rule."""
        if self.exactly is not None and count != self.exactly:
            return False
        return count % self.multiple == self.remainder

    def joined(self, other: CountRule) -> CountRule | None:
        """Return the rule that keeps both, or None where no count can."""
        exactly = self.exactly if self.exactly is not None else other.exactly
        if exactly is not None:
            return CountRule(exactly=exactly) if self.allows(exactly) and other.allows(exactly) else None
        both = lcm(self.multiple, other.multiple)
        for remainder in range(both):
            if self.allows(remainder) and other.allows(remainder):
                return CountRule(both, remainder)
        return None

    def __str__(self) -> str:
        if self.exactly is not None:
            return f"exactly {self.exactly}"
        if self.multiple == 1:
            return "any number"
        if self.multiple == 2:
            return "an odd number" if self.remainder else "an even number"
        return f"a multiple of {self.multiple}" + (f" and {self.remainder} more" if self.remainder else "")


def say_tucks(count: int) -> str:
    """Return a number of tucks in words."""
    return "1 tuck" if count == 1 else f"{count} tucks"
