"""What a helper is to know by heart, a card for each: danger signs, rules, amounts, pages.

A card's name tells what it is about: `sign:danger/limp`, `rule:...`, `amount:first-milk`, `page:...`.
"""

from __future__ import annotations

from triage.practice.looking import signs_of
from triage.practice.questions import Posed, amount_of

SIGN, RULE, AMOUNT, PAGE = "sign", "rule", "amount", "page"


def sign_card(finding: str, choice: str) -> str:
    """Return the card of a danger sign."""
    return f"{SIGN}:{finding}/{choice}"


def rule_card(rule: str) -> str:
    """Return the card of a rule: what must be done, must not be done, or calls the vet."""
    return f"{RULE}:{rule}"


def amount_card(amount: str) -> str:
    """Return the card of a sum."""
    return f"{AMOUNT}:{amount}"


def page_card(page: str) -> str:
    """Return the card of a page, which stands for all lambs that come to it."""
    return f"{PAGE}:{page}"


def kind_of(card: str) -> str:
    """Return which kind of card it is."""
    return card.partition(":")[0]


def about(card: str) -> str:
    """Return what a card is about, without its kind."""
    return card.partition(":")[2]


def cards_of(posed: Posed) -> frozenset[str]:
    """Return the cards that a case puts to the test."""
    case = posed.case
    cards = {page_card(case.page.name), *(rule_card(rule) for rule in posed.rules)}
    cards |= {sign_card(*sign) for sign in signs_of(case)}
    if any(question.kind == "amount" for question in posed.questions):
        cards.add(amount_card(amount_of(case)))
    return frozenset(cards)
