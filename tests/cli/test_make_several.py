"""`blocklang make` with several files."""


def test_one_document_of_several_blocks(command, good) -> None:
    ran = command("make", "handout", good, "nine-patch", "-o", "class.pdf")
    assert ran.code == 0 and "Wrote class.pdf" in ran.err


def test_an_output_of_one_block_says_so(command, good) -> None:
    ran = command("make", "diagram", good, good, "-o", "a.svg")
    assert ran.code == 2 and "`diagram` is made of one block at a time: give one FILE." in ran.err


def test_every_faulty_file_is_told(command, good) -> None:
    for name in ("first.block", "second.block"):
        good.with_name(name).write_text("block\n")
    ran = command("make", "handout", "first.block", good, "second.block", "-o", "a.pdf")
    assert ran.code == 1 and "first.block" in ran.err and "second.block" in ran.err and "Wrote" not in ran.err
