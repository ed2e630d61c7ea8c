"""The point on structural members: what is built about each is shown, in section."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.subject import Subject


def members_cased(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 29: for each member the set has a section of the beam that it is cased in."""
    shown = {
        view.data.get("profile")
        for subject in subjects
        for view in subject.sheet.of_kind("view")
        if view.data.get("view") == "beam-section"
    }
    for beam, profile in subjects[0].facts.member_profiles.items():
        if profile not in shown:
            message = f"no section shows profile {profile}, which cases the member in {beam}"
            yield subjects[0].sheet.finding(29, beam, message)
