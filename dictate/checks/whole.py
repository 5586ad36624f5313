"""Doubts about the examination as a whole: is it one, how old is the patient, was anything heard, when was it."""

from __future__ import annotations

from dictate.model import Examination, Query, Severity, number_text


def whole_queries(exam: Examination) -> list[Query]:
    """Doubts about the examination as a whole."""
    queries = []
    if exam.withheld:
        left_out = f"{exam.withheld} finding{'s' if exam.withheld > 1 else ''} left out"
        queries.append(
            Query(
                code="not-placed",
                severity=Severity.MUST,
                message=f"As a whole this does not read as an examination, {left_out}: is it one?",
            )
        )
    ages = tuple(dict.fromkeys((*exam.person.dictated_ages, *filter(None, (exam.person.age_years,)))))
    if len(ages) > 1:
        said = ", then ".join(number_text(round(age, 1)) for age in exam.person.dictated_ages)
        given = f"; {number_text(ages[-1])} given" if exam.person.age_from == "option" else ""
        queries.append(
            Query(
                code="values-conflict",
                severity=Severity.MUST,
                message=f"Age {said} dictated{given}: which is right?",
                suggestions=tuple(number_text(round(age, 1)) for age in ages),
                quote=exam.person.evidence[-1].quote,
                start_s=exam.person.evidence[-1].start_s,
                end_s=exam.person.evidence[-1].end_s,
            )
        )
    if not exam.transcript.words:
        names = ", ".join(source.name for source in exam.transcript.sources)
        queries.append(
            Query(
                code="speech-not-transcribed",
                severity=Severity.MUST,
                message=f"No words were heard in {names}: is it the right recording, and was the microphone on?",
            )
        )
    if exam.examined_at is None:
        queries.append(
            Query(
                code="time-missing",
                severity=Severity.LOOK,
                message="The time of the examination was not stated: when was it?",
            )
        )
    return queries
