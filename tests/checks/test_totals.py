"""Parts against the dictated sum."""

from __future__ import annotations


def coma(said, eye, verbal, motor, total):
    """The coma scale as dictated; None: that part was not."""
    parts = {"gcs_eye": eye, "gcs_verbal": verbal, "gcs_motor": motor, "gcs_total": total}
    return [
        said(item, "not_assessable" if value == "T" else "measured", value)
        for item, value in parts.items()
        if value is not None
    ]


def test_parts_that_do_not_add_up_must_be_asked(said, ask):
    """Eyes 4, verbal 5, motor 6, total 14."""
    (query,) = ask("total-mismatch", *coma(said, "4", "5", "6", "14"))
    assert (query.item, query.severity, query.suggestions) == ("gcs_total", "must", ("14", "15"))
    assert query.findings == (3, 0, 1, 2)


def test_parts_that_add_up_are_left_alone(said, ask):
    """Eyes 3, verbal 4, motor 6, total 13."""
    assert ask("total-mismatch", *coma(said, "3", "4", "6", "13")) == ()


def test_an_untestable_part_leaves_the_total(said, ask):
    """Verbal T: nothing is added up, with the T said of the total or not."""
    assert ask("total-mismatch", *coma(said, "4", "T", "6", "10T")) == ()
    assert ask("total-mismatch", *coma(said, "4", "T", "6", "10")) == ()


def test_a_missing_part_leaves_a_possible_total(said, ask):
    """Eyes 4 and motor 6 allow 11 to 15."""
    assert ask("total-mismatch", *coma(said, "4", None, "6", "13")) == ()
    (query,) = ask("total-mismatch", *coma(said, "4", None, "6", "9"))
    assert "11 to 15" in query.message


def test_a_total_by_itself_is_left_alone(said, ask):
    """A total without parts cannot be checked."""
    assert ask("total-mismatch", *coma(said, None, None, None, "14")) == ()


def test_a_part_said_twice_is_not_added_up(said, ask):
    """Which of the two counts is another query."""
    assert ask("total-mismatch", *coma(said, "4", "5", "6", "14"), said("gcs_eye", "measured", "3")) == ()


def test_stroke_items_beyond_the_total_must_be_asked(said, ask):
    """Face 2 and gaze 2 cannot give a total of 3."""
    parts = [said("nihss_facial", "measured", "2"), said("nihss_gaze", "measured", "2")]
    assert len(ask("total-mismatch", *parts, said("nihss_total", "measured", "3"))) == 1
    assert ask("total-mismatch", *parts, said("nihss_total", "measured", "4")) == ()
