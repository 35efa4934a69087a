"""What reading a small file costs before it begins: only what it needs is imported."""

import subprocess
import sys

from tests.language.reading_blocks import LIBRARY

RUN = """
import sys
from blocklang.language import decode_source, evaluate, parse
with open(sys.argv[1], "rb") as file:
    source = decode_source(sys.argv[1], file.read())
evaluated = evaluate(parse(source).tree)
assert evaluated.block is not None and not evaluated.diagnostics
print(*sorted(sys.modules))
"""
#: Each of these costs a part of the time that a person waits, and a small sound file needs none of them.
NOT_NEEDED = (
    "lark difflib json logging pathlib tempfile importlib.metadata pickle hashlib unicodedata numpy shapely click "
    "blocklang.language.mistakes blocklang.language.suggesting blocklang.language.formatting "
    "blocklang.language.table_making blocklang.language.cuts blocklang.language.covering "
    "blocklang.language.overriding blocklang.diagnostics.rendering"
).split()


def test_a_small_sound_file_imports_only_what_it_needs() -> None:
    path = LIBRARY / "nine-patch" / "nine-patch.block"
    ran = subprocess.run([sys.executable, "-c", RUN, str(path)], capture_output=True, text=True, check=True)
    loaded = set(ran.stdout.split())
    assert "blocklang.language.evaluation" in loaded
    assert [name for name in NOT_NEEDED if name in loaded] == []
