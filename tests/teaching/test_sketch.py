"""The labelled sketch: a picture, and the same in words."""

from ropecalc.teaching.sketch import SketchView, sketch


def test_the_sketch_is_a_picture_that_does_not_change_by_itself() -> None:
    assert sketch().startswith(b"\x89PNG")
    assert sketch() == sketch()


def test_every_letter_of_the_sketch_is_explained_in_words() -> None:
    words = SketchView().summary()
    for letter in ("D is", "P, the", "B, the", "angle α", "angle β", "x is", "z its"):
        assert letter in words
    assert "not to scale" in words
