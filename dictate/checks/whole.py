"""Doubts about the examination as a whole: is it one, how old is the patient, was anything heard, when was it."""

from __future__ import annotations

from dictate.catalogue import queries as say
from dictate.model import Examination, Query, Severity, number_text


def whole_queries(exam: Examination) -> list[Query]:
    """Doubts about the examination as a whole."""
    queries = []
    if exam.withheld:
        left_out = (say.LEFT_OUT if exam.withheld > 1 else say.ONE_LEFT_OUT).format(count=exam.withheld)
        queries.append(
            Query(
                code="not-placed",
                severity=Severity.MUST,
                message=say.NO_EXAMINATION.format(left_out=left_out),
            )
        )
    ages = tuple(dict.fromkeys((*exam.person.dictated_ages, *filter(None, (exam.person.age_years,)))))
    if len(ages) > 1:
        said = say.THEN.join(number_text(round(age, 1)) for age in exam.person.dictated_ages)
        given = say.AGE_GIVEN.format(age=number_text(ages[-1])) if exam.person.age_from == "option" else ""
        queries.append(
            Query(
                code="values-conflict",
                severity=Severity.MUST,
                message=say.WHICH_AGE.format(said=said, given=given),
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
                message=say.NO_WORDS.format(names=names),
            )
        )
    if exam.examined_at is None:
        queries.append(
            Query(
                code="time-missing",
                severity=Severity.LOOK,
                message=say.TIME_NOT_STATED,
            )
        )
    return queries
