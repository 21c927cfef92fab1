"""The draft letter of justification as an accessible PDF (PDF/UA-1)."""

from __future__ import annotations

from typing import Any

from chairwright.order.justification import Fact, Letter
from chairwright.order.payer_result import NO_PROMISE
from chairwright.papers.cautions import BESIDE, STEADY
from chairwright.papers.typeset import Paper, typeset

TEMPLATE = "pack/letter.typ"
WITHOUT_NUMBER = "without number"
DRAFT = (
    "Not to be sent as it stands: the clinician checks every sentence against the record, corrects "
    "it and signs. Each number in brackets leads to the list of facts used."
)
ADD_WORDS = "No file holds these. Write them in, or strike them out."
ADD = (
    "Diagnosis, and since when",
    "What the client can and cannot do at home",
    "Chairs tried, and what came of it",
    "How long, and how many hours a day",
    "Date of the evaluation, and who took part",
)
SIGNING = "I have checked this letter against the client's record."
SIGNATURES = (
    "Clinician, name and profession", "Registration number", "Signature", "Date",
)  # fmt: skip
FACTS_WORDS = "What nobody measured is marked as an estimate. Certainty of a source in brackets."


def letter_pdf(letter: Letter, paper: Paper = "a4") -> bytes:
    """Typeset one draft letter.

    Parameters
    ----------
    letter : Letter
        Text is printed as it stands; nothing in it is read as markup.
    paper : {"a4", "us-letter"}

    Returns
    -------
    bytes
        A tagged PDF; the same letter gives the same bytes.

    Raises
    ------
    ValueError
        When the paper is neither of the two.
    """
    return typeset(TEMPLATE, letter_content(letter), paper)


def letter_content(letter: Letter) -> dict[str, Any]:
    """Everything that the template prints.

    Parameters
    ----------
    letter : Letter
    """
    numbers = letter.numbers
    sections = [
        {
            "title": section.title,
            "sentences": [
                {"text": each.text, "numbers": [numbers[fact.key] for fact in each.facts]}
                for each in section.sentences
            ],
        }
        for section in letter.sections
    ]
    number, revision = letter.order_number, f"revision {letter.revision}"
    return {
        "reference": letter.reference,
        "order": number or WITHOUT_NUMBER,
        "order_words": f"{number}, {revision}" if number else revision,
        "revision": str(letter.revision),
        "line": f"{letter.line_title}, version {letter.line_version}",
        "set_up": letter.set_up,
        "dated": letter.dated,
        "status": letter.status,
        "draft": DRAFT,
        "cautions": _cautions(letter),
        "sections": sections,
        "add_words": ADD_WORDS,
        "add": ADD,
        "no_promise": NO_PROMISE,
        "signing": SIGNING,
        "signatures": SIGNATURES,
        "facts_words": FACTS_WORDS,
        "facts": [_fact(fact, numbers[fact.key]) for fact in letter.facts],
    }


def _cautions(letter: Letter) -> tuple[str, ...]:
    """What limits the figures of tipping, where the letter speaks of them."""
    tipping = any(name in fact.field for fact in letter.facts for name in ("tip_", "push_off"))
    return BESIDE[STEADY][-1:] if tipping else ()


def _fact(fact: Fact, number: int) -> dict[str, Any]:
    return {
        "number": number,
        "file": fact.file,
        "field": fact.field,
        "words": fact.words.strip(),
        "note": fact.note,
        "source": fact.source,
    }
