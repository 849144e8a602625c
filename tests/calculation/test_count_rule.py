"""What a plan asks of the number of tucks: which are allowed, two rules at once, and how it is said."""

from __future__ import annotations

import pytest

from generator.calculation.count_rule import CountRule

RULES = [
    CountRule(),
    CountRule(2),
    CountRule(2, 1),
    CountRule(3),
    CountRule(3, 1),
    CountRule(4, 2),
    CountRule(exactly=6),
]


@pytest.mark.parametrize("one", RULES, ids=str)
@pytest.mark.parametrize("other", RULES, ids=str)
def test_two_rules_at_once_allow_what_both_allow(one: CountRule, other: CountRule) -> None:
    both = one.joined(other)
    kept = [count for count in range(40) if one.allows(count) and other.allows(count)]
    assert kept == ([count for count in range(40) if both.allows(count)] if both else [])


def test_a_number_that_the_other_rule_forbids_leaves_none() -> None:
    assert CountRule(2, 1).joined(CountRule(exactly=6)) is None
    assert CountRule(exactly=6).joined(CountRule(exactly=7)) is None
    assert CountRule(exactly=6).joined(CountRule(exactly=6)) == CountRule(exactly=6)


@pytest.mark.parametrize(
    ("rule", "said"),
    [
        (CountRule(), "any number"),
        (CountRule(2), "an even number"),
        (CountRule(2, 1), "an odd number"),
        (CountRule(3), "a multiple of 3"),
        (CountRule(3, 1), "a multiple of 3 and 1 more"),
        (CountRule(exactly=5), "exactly 5"),
    ],
)
def test_a_rule_is_said_in_words(rule: CountRule, said: str) -> None:
    assert str(rule) == said
