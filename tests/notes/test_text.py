"""Examination → the note as plain text."""

from __future__ import annotations

import unicodedata
from datetime import datetime
from pathlib import Path

import pytest
from by_hand import DEMOS, evidence, examination, figure, finding, query, reflex, remark
from notes.exams import HOSTILE
from notes.test_html import hostile

from dictate.grammar import Grammar
from dictate.model import (
    Certainty,
    Choice,
    Component,
    Decision,
    Examination,
    Finding,
    Grade,
    Person,
    Position,
    Pressure,
    Quantity,
    RemarkKind,
    Severity,
    Side,
    Status,
    Text,
)
from dictate.notes import write_note
from dictate.notes.phrases import TURNING_ROUND
from dictate.notes.text import WIDTH, clock
from dictate.pipeline import examine

GOLDEN = Path(__file__).parent / "golden"

GAIT = (Component.COORDINATION_GAIT, "gait")


def block(note: str, heading: str) -> list[str]:
    """Lines under a heading, without indentation."""
    part = note.split(f"\n{heading}\n", 1)[1].split("\n\n", 1)[0]
    return [line.strip() for line in part.splitlines()]


def pressure(systolic: int, diastolic: int, position: Position | None, minutes: float | None = None) -> Finding:
    """A blood pressure."""
    value = Pressure(systolic=systolic, diastolic=diastolic)
    return finding(
        Component.GENERAL, "blood_pressure", Status.MEASURED, value=value, unit="mm[Hg]", position=position,
        minutes=minutes,
    )  # fmt: skip


def test_first_line_counts_open_queries(small: Grammar) -> None:
    """A draft says so first, with the number of open queries."""
    exam = examination(queries=(query(), query(severity=Severity.LOOK)))
    assert write_note(exam, small).startswith("DRAFT, not signed, 2 queries open\n")


def test_settled_query_is_not_counted(small: Grammar) -> None:
    """A query with a decision is no longer open."""
    exam = examination(queries=(query(), query()), decisions=(Decision(query=0, answer="right"),))
    assert write_note(exam, small).startswith("DRAFT, not signed, 1 query open\n")


def test_signed_note_shows_no_draft_parts(small: Grammar) -> None:
    """A signed note has neither the draft line nor words that were not placed."""
    exam = examination(remarks=(remark(RemarkKind.NOT_PLACED, "phone rings"),), signed_by="A. Examiner")
    note = write_note(exam, small)
    assert note.startswith("Signed by A. Examiner\n")
    assert "phone rings" not in note


def test_signed_note_names_everybody_and_the_time(small: Grammar) -> None:
    """Who signed and when, who countersigned, examined and dictated; nobody is named who was not given."""
    exam = examination(
        signed_by="C. Trainee", signed_at=datetime(2026, 3, 4, 14, 5), countersigned_by="A. Examiner",
        examined_by="C. Trainee", dictated_by="C. Trainee",
    )  # fmt: skip
    assert write_note(exam, small).splitlines()[:5] == [
        "Signed by C. Trainee, 2026-03-04 14:05", "Countersigned by A. Examiner", "Examined by C. Trainee",
        "Dictated by C. Trainee", "Patient: no reference given",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("given", "line"),
    [
        ("", 'Patient: no reference given (as dictated: "Patient reference P eight")'),
        ("P-8", "Patient: P-8"),
    ],
)
def test_a_reference_that_was_dictated(given: str, line: str, small: Grammar) -> None:
    """Stands at the top as it was said; the one that was given takes its place."""
    spoken = remark(RemarkKind.REFERENCE, "Patient reference P eight.")
    assert line in write_note(examination(remarks=(spoken,), patient=given), small).splitlines()


def test_components_stand_in_fixed_order(small: Grammar) -> None:
    """The order of dictation does not matter to the order of components."""
    exam = examination(reflex("reflex_biceps", "2+"), finding(Component.GENERAL, "lungs", Status.NORMAL))
    headings = [line for line in write_note(exam, small).splitlines() if line and line == line.upper()]
    assert headings == [
        "GENERAL EXAMINATION", "MENTAL STATUS", "CRANIAL NERVES", "MOTOR", "SENSORY", "COORDINATION AND GAIT",
        "REFLEXES",
    ]  # fmt: skip


def test_component_without_findings_says_nothing_dictated(small: Grammar) -> None:
    """Nothing dictated is neither normal nor not examined."""
    assert block(write_note(examination(), small), "MOTOR") == ["nothing dictated"]


def test_sides_share_a_line_right_first(small: Grammar) -> None:
    """Findings of one item stand on one line by side."""
    exam = examination(reflex("reflex_biceps", "3+", side=Side.LEFT), reflex("reflex_biceps", "2+", side=Side.RIGHT))
    assert block(write_note(exam, small), "REFLEXES") == ["Biceps reflex: right 2+, left 3+"]


@pytest.mark.parametrize(
    ("one", "line"),
    [
        (reflex("reflex_biceps", "2+", side=Side.BOTH), "Biceps reflex: both sides 2+"),
        (reflex("reflex_biceps", "2+"), "Biceps reflex: 2+"),
        (
            finding(Component.REFLEXES, "plantar_response", Status.ABNORMAL, value=Choice(choice="extensor"),
                    side=Side.LEFT, certainty=Certainty.UNCERTAIN, quote="probably extensor left"),
            "Plantar response: left probably extensor",
        ),
        (
            finding(Component.REFLEXES, "plantar_response", Status.ABNORMAL, certainty=Certainty.UNCERTAIN,
                    quote="perhaps up"),
            "Plantar response: uncertain: abnormal",
        ),
        (reflex("reflex_biceps", "1+", detail=("with reinforcement",)), "Biceps reflex: 1+ (with reinforcement)"),
    ],
)  # fmt: skip
def test_reflex_lines(small: Grammar, one: Finding, line: str) -> None:
    """Side, doubt and qualifiers stand as they were said."""
    assert block(write_note(examination(one), small), "REFLEXES") == [line]


@pytest.mark.parametrize(
    ("one", "line"),
    [
        (finding(*GAIT, Status.NORMAL), "Gait: normal"),
        (finding(*GAIT, Status.ABNORMAL, value=Text(words="wide based")), "Gait: wide based"),
        (finding(*GAIT, Status.ABNORMAL), "Gait: abnormal"),
        (finding(*GAIT, Status.UNCHANGED), "Gait: unchanged"),
        (finding(*GAIT, Status.NOT_EXAMINED), "Gait: not examined"),
        (finding(*GAIT, Status.NOT_EXAMINED, detail=("hip pain",)), "Gait: not examined (hip pain)"),
        (finding(*GAIT, Status.NOT_ASSESSABLE, detail=("sedated",)), "Gait: not assessable (sedated)"),
    ],
)
def test_statuses(small: Grammar, one: Finding, line: str) -> None:
    """Every status has its words, and a reason stands beside them."""
    assert block(write_note(examination(one), small), "COORDINATION AND GAIT") == [line]


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (Quantity(number=4, then=2), "mm", "4 to 2 mm"),
        (Quantity(number=4.5), "mm", "4.5 mm"),
        (Quantity(number=3, upto=4), "mm", "3 to 4 mm"),
        (Quantity(number=3), "", "3"),
    ],
)
def test_quantities(small: Grammar, value: Quantity, unit: str, text: str) -> None:
    """Numbers keep their unit, and a number without one gets none."""
    one = finding(Component.CRANIAL_NERVES, "pupil_size", Status.MEASURED, value=value, unit=unit, side=Side.BOTH)
    assert block(write_note(examination(one), small), "CRANIAL NERVES") == [f"II/III Pupil size: both sides {text}"]


def test_sites_stay_with_their_side(small: Grammar) -> None:
    """Side and site name the place together."""
    made = [
        finding(Component.SENSORY, "vibration", Status.MEASURED, value=Quantity(number=n), unit="s", side=side,
                site="great_toe")
        for n, side in ((8, Side.RIGHT), (5, Side.LEFT))
    ]  # fmt: skip
    line = "Vibration: right great toe 8 s, left great toe 5 s"
    assert block(write_note(examination(*made), small), "SENSORY") == [line]


def test_cranial_nerves_stand_by_nerve(small: Grammar) -> None:
    """Items of the cranial nerves are written from I to XII, segments in capitals."""
    exam = examination(
        finding(Component.CRANIAL_NERVES, "hearing", Status.NORMAL),
        finding(Component.CRANIAL_NERVES, "facial_sensation", Status.ABNORMAL, side=Side.LEFT, site="v2"),
    )
    assert block(write_note(exam, small), "CRANIAL NERVES") == [
        "V Facial sensation: left V2 abnormal",
        "VIII Hearing: normal",
    ]


def test_blanket_is_quoted(small: Grammar) -> None:
    """A blanket statement stands as said and is not spread over its items."""
    quote = "cranial nerves two through twelve intact"
    one = finding(Component.CRANIAL_NERVES, "cranial_nerves_2_12", Status.NORMAL, quote=quote)
    line = f'Cranial nerves II to XII: normal, as said: "{quote}"'
    assert block(write_note(examination(one), small), "CRANIAL NERVES") == [line]


def test_postural_series_is_one_line_per_stance(small: Grammar) -> None:
    """Readings in several positions stand in lines, without columns."""
    exam = examination(
        pressure(148, 86, Position.SUPINE),
        finding(Component.GENERAL, "heart_rate", Status.MEASURED, value=Quantity(number=62), unit="/min",
                position=Position.SUPINE),
        pressure(116, 72, Position.STANDING, 0),
        pressure(112, 70, Position.STANDING, 3),
        finding(Component.GENERAL, "lungs", Status.NORMAL),
    )  # fmt: skip
    assert block(write_note(exam, small), "GENERAL EXAMINATION") == [
        "Postural series:",
        "supine: blood pressure 148/86 mmHg, heart rate 62/min",
        "standing at once: blood pressure 116/72 mmHg",
        "standing at 3 min: blood pressure 112/70 mmHg",
        "Lungs: normal",
    ]


def test_what_a_whole_stance_shares_is_said_once(small: Grammar) -> None:
    """A qualifier of every reading of a stance stands behind the stance."""
    rested = ("after 5 min lying",)
    exam = examination(
        pressure(148, 86, Position.SUPINE).model_copy(update={"detail": rested}),
        finding(Component.GENERAL, "heart_rate", Status.MEASURED, value=Quantity(number=62), unit="/min",
                position=Position.SUPINE, detail=(*rested, "regular")),
        pressure(116, 72, Position.STANDING, 0),
    )  # fmt: skip
    line = "supine (after 5 min lying): blood pressure 148/86 mmHg, heart rate 62/min (regular)"
    assert block(write_note(exam, small), "GENERAL EXAMINATION")[1] == line


def test_single_reading_is_no_series(small: Grammar) -> None:
    """One position makes an ordinary line that names it."""
    note = write_note(examination(pressure(136, 82, Position.SITTING)), small)
    assert block(note, "GENERAL EXAMINATION") == ["Blood pressure: sitting 136/82 mmHg"]


def test_reading_without_position_stays_out_of_the_series(small: Grammar) -> None:
    """A reading whose position was not said is not lost beside a series."""
    exam = examination(
        pressure(148, 86, Position.SUPINE), pressure(116, 72, Position.STANDING, 1), pressure(130, 80, None)
    )
    assert "Blood pressure: 130/80 mmHg" in block(write_note(exam, small), "GENERAL EXAMINATION")


def test_figures_stand_under_their_readings(small: Grammar) -> None:
    """A computed figure is indented after the last of its readings."""
    exam = examination(
        pressure(136, 82, Position.SITTING),
        finding(Component.GENERAL, "lungs", Status.NORMAL),
        figures=(figure("mean arterial pressure 100 mmHg", 0),),
    )
    note = write_note(exam, small)
    assert "mmHg\n    Computed: mean arterial pressure 100 mmHg\n  Lungs" in note


def test_figure_without_reading_is_kept(small: Grammar) -> None:
    """A figure that names no reading still reaches the note."""
    assert "Computed: something" in write_note(examination(figures=(figure("something"),)), small)


def test_query_is_marked_where_it_stands(small: Grammar) -> None:
    """The mark follows the phrase concerned; the list at the end has message, words and time."""
    asked = query(message="biceps reflex: which side?", suggestions=("left", "right"), quote="biceps two plus",
                  start_s=83.2, findings=(0,))  # fmt: skip
    note = write_note(examination(reflex("reflex_biceps", "2+"), queries=(asked,)), small)
    assert "Biceps reflex: 2+ [?1]\n" in note
    listed = " ".join(block(note, "QUERIES TO SETTLE BEFORE SIGNING"))
    assert listed == ('[?1] biceps reflex: which side? (left | right) heard "biceps two plus" at 1:23')


def test_queries_are_listed_by_what_they_hold_up(small: Grammar) -> None:
    """What keeps the note from being signed comes first; numbers follow the dictation."""
    exam = examination(queries=(query(message="a", severity=Severity.LOOK), query(message="b")))
    note = write_note(exam, small)
    assert block(note, "QUERIES TO SETTLE BEFORE SIGNING") == ["[?2] b"]
    assert block(note, "QUERIES TO LOOK AT") == ["[?1] a"]


def test_words_not_placed_are_listed_once(small: Grammar) -> None:
    """Words that became nothing stand in their own list, with the number of their query."""
    kept = remark(RemarkKind.NOT_PLACED, "she winced", start_s=5.0)
    asked = query("not-placed", "not placed", severity=Severity.LOOK, quote="she winced", start_s=5.0)
    note = write_note(examination(remarks=(kept,), queries=(asked,)), small)
    assert note.count("she winced") == 1
    assert '"she winced" at 0:05 [?1]' in note


def test_spoken_sections_stay_outside_the_examination(small: Grammar) -> None:
    """History, impression and plan are kept word for word after the components."""
    exam = examination(remarks=(remark(RemarkKind.PLAN, "I have asked for an MRI."),))
    note = write_note(exam, small)
    assert block(note, "PLAN (as dictated)") == ["I have asked for an MRI."]
    assert note.index("REFLEXES") < note.index("PLAN")


@pytest.mark.parametrize("kind", [RemarkKind.TALK, RemarkKind.CORRECTED])
def test_talk_does_not_enter_the_note(small: Grammar, kind: RemarkKind) -> None:
    """An aside, or what the speaker struck, stays in the transcript."""
    assert "cup of tea" not in write_note(examination(remarks=(remark(kind, "cup of tea"),)), small)


@pytest.mark.parametrize(
    ("exam", "text"),
    [
        (examination(), "\nTime of examination not stated\n"),
        (
            examination(examined_at=datetime(2026, 3, 4, 14, 5), examined_at_from="option"),
            "Time of examination: 2026-03-04 14:05\n",
        ),
        (
            examination(examined_at=datetime(2026, 3, 4, 14, 5), examined_at_from="recording"),
            "2026-03-04 14:05 (creation time of the recording)",
        ),
    ],
)
def test_time_of_examination_says_where_it_is_from(small: Grammar, exam: Examination, text: str) -> None:
    """A time taken from the recording is labelled so, and none is made up."""
    assert text in write_note(exam, small)


def test_patient_reference(small: Grammar) -> None:
    """The user's reference stands in the second line."""
    assert write_note(examination(patient="P-17"), small).splitlines()[1] == "Patient: P-17"


def test_lines_are_not_longer_than_a_page_is_wide(small: Grammar) -> None:
    """Long lines wrap, and a number is never torn from its unit."""
    many = [
        finding(Component.SENSORY, "vibration", Status.MEASURED, value=Quantity(number=n), unit="s", site=f"c{n % 8}")
        for n in range(1, 40)
    ]
    note = write_note(examination(*many), small)
    assert max(map(len, note.splitlines())) <= WIDTH
    assert not any(line.strip().startswith("s,") for line in note.splitlines())


def test_note_ends_with_the_caution(small: Grammar) -> None:
    """The foot says what the note is and is not."""
    foot = " ".join(write_note(examination(), small).split("\n\n")[-1].split())
    assert "supports licensed practice" in foot
    assert "no diagnosis" in foot


def test_unknown_item_is_written_by_its_id(small: Grammar) -> None:
    """An item of another grammar is not lost."""
    one = finding(Component.CRANIAL_NERVES, "cranial_nerves_3_6", Status.NORMAL, quote="three to six normal")
    assert 'Cranial nerves 3 6: normal, as said: "three to six normal"' in write_note(examination(one), small)


def test_brief_note_loses_no_finding(small: Grammar) -> None:
    """Brief puts plain normal and absent findings on one line, and leaves queried ones where they are."""
    exam = examination(
        finding(Component.GENERAL, "lungs", Status.NORMAL),
        finding(Component.GENERAL, "cyanosis", Status.ABSENT),
        finding(Component.COORDINATION_GAIT, "heel_shin", Status.NORMAL, side=Side.RIGHT),
        finding(*GAIT, Status.NORMAL),
        queries=(query(findings=(3,)),),
    )
    note = write_note(exam, small, brief=True)
    assert block(note, "GENERAL EXAMINATION") == ["Normal: lungs", "Absent: cyanosis"]
    assert block(note, "COORDINATION AND GAIT") == ["Gait: normal [?1]", "Normal: heel to shin right"]


def test_brief_note_keeps_the_sides_of_an_item_together(small: Grammar) -> None:
    """A normal side stands beside the other when the other has more to say."""
    heel = (Component.COORDINATION_GAIT, "heel_shin")
    exam = examination(finding(*heel, Status.NORMAL, side=Side.RIGHT), finding(*heel, Status.ABNORMAL, side=Side.LEFT))
    note = write_note(exam, small, brief=True)
    assert block(note, "COORDINATION AND GAIT") == ["Heel to shin: right normal, left abnormal"]


def test_brief_note_still_lists_every_query(small: Grammar) -> None:
    """Words not placed stand as in the whole note, with the number of their query."""
    kept = remark(RemarkKind.NOT_PLACED, "she winced")
    asked = query("not-placed", "not placed", severity=Severity.LOOK, quote="she winced")
    exam = examination(remarks=(kept,), queries=(asked,))
    for brief in (False, True):
        assert '\n  "she winced" [?1]\n' in write_note(exam, small, brief=brief)


def test_grade_of_strength_throughout(small: Grammar) -> None:
    """A graded blanket keeps its grade and its words."""
    one = finding(Component.MOTOR, "strength_all", Status.MEASURED, value=Grade(scale="mrc", grade="5"),
                  evidence=(evidence("power five out of five throughout"),))  # fmt: skip
    line = 'Strength: 5, as said: "power five out of five throughout"'
    assert block(write_note(examination(one), small), "MOTOR") == [line]


@pytest.mark.parametrize(("time_s", "text"), [(0, "0:00"), (59.9, "0:59"), (61, "1:01"), (3601, "60:01")])
def test_clock(time_s: float, text: str) -> None:
    """Audio times are minutes and seconds."""
    assert clock(time_s) == text


def test_the_age_stands_at_the_head(small: Grammar) -> None:
    """Given or dictated, which the note says; months below two years; nothing when it is not known."""
    said = evidence("seventy two year old man.")
    spoken = Person(age_years=72.0, age_from="spoken", evidence=(said,))
    assert '\nAge: 72 years (as dictated: "seventy two year old man")\n' in write_note(
        examination(person=spoken), small
    )
    given = Person(age_years=1.5, age_from="option")
    assert "\nAge: 18 months\n" in write_note(examination(person=given), small)
    assert "Age" not in write_note(examination(), small)


@pytest.mark.parametrize("name", ["clinic-examination", "noisy-queries", "postural-series", "stroke-corrections"])
def test_golden_note(name: str, grammar: Grammar) -> None:
    """The notes of the demonstration texts, read by a person: order, grammar, units, nothing doubled, nothing added."""
    exam = examine([DEMOS / f"{name}.txt"], engine=None, grammar=grammar)
    assert write_note(exam, grammar) == (GOLDEN / f"{name}.txt").read_text(encoding="utf-8")


def test_golden_brief_note(grammar: Grammar) -> None:
    """Shorter, and it still says what was not examined or not dictated."""
    exam = examine([DEMOS / "clinic-examination.txt"], engine=None, grammar=grammar)
    brief = write_note(exam, grammar, brief=True)
    assert brief == (GOLDEN / "clinic-examination.brief.txt").read_text(encoding="utf-8")
    assert len(brief.splitlines()) < len(write_note(exam, grammar).splitlines())


def test_sign_says_its_place_behind_the_word(grammar: Grammar) -> None:
    """ "Oedema: absent at the ankle", and a tongue turns to its side."""
    exam = examination(
        finding(Component.GENERAL, "edema", Status.ABSENT, site="ankle"),
        finding(Component.MOTOR, "tremor", Status.PRESENT, site="hand", side=Side.RIGHT),
        finding(Component.CRANIAL_NERVES, "tongue", Status.ABNORMAL, side=Side.LEFT, value=Choice(choice="deviates")),
    )
    note = write_note(exam, grammar)
    for line in ("Oedema: absent at the ankle", "Tremor: present in the right hand", "Tongue: deviates to the left"):
        assert f"{line}\n" in note


def test_text_steers_no_terminal(small: Grammar) -> None:
    """An escape sequence in a dictation hides nothing."""
    exam = examination(finding(*GAIT, Status.ABNORMAL, value=Text(words="wide\x1b[8m based\x9b2J")))
    assert "Gait: wide[8m based2J\n" in write_note(exam, small)


def test_pasted_text_keeps_its_marks(small: Grammar) -> None:
    """Angle brackets, quotes and signs stand in the note as they were dictated."""
    said = '<b>"x" & y</b> =1+1'
    exam = examination(finding(*GAIT, Status.ABNORMAL, value=Text(words=said)))
    assert f"Gait: {said}\n" in write_note(exam, small)


def test_brief_note_is_shorter_and_keeps_every_blank(grammar: Grammar) -> None:
    """Not examined and nothing dictated are as many as in the whole note; each item not examined is named."""
    exam = examine([DEMOS / "clinic-examination.txt"], engine=None, grammar=grammar)
    whole, brief = (write_note(exam, grammar, brief=brief) for brief in (False, True))
    assert len(brief.splitlines()) < len(whole.splitlines())
    assert brief.count("nothing dictated") == whole.count("nothing dictated")
    missing = [one for one in exam.findings if one.status is Status.NOT_EXAMINED]
    lines = [line.lower() for line in brief.splitlines() if "not examined" in line.lower()]
    assert missing
    for one in missing:
        name = grammar.items[one.item].name.lower()
        assert any(name in line for line in lines), name


def test_a_spoken_heading_is_not_doubled(small: Grammar) -> None:
    """ "Plan. MRI." below PLAN."""
    note = write_note(examination(remarks=(remark(RemarkKind.PLAN, "Plan. MRI."),)), small)
    assert "PLAN (as dictated)\n  MRI.\n" in note


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_steers_no_screen(text: str, grammar: Grammar) -> None:
    """No control sign, no sign that turns the order round."""
    note = write_note(hostile(text), grammar)
    assert not [sign for sign in note if sign != "\n" and unicodedata.category(sign) == "Cc"]
    assert not set(note) & set(TURNING_ROUND)
