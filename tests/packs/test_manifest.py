"""A manifest that says other things than the files, or says them in another way, is refused."""

import json

import pytest

from blocklang.diagnostics import Diagnostic
from blocklang.packs.reading import unfold
from tests.packs.zips import Member, manifest, text, zipped

FILES = {"harbour.block": text(), "tide.block": text("Tide")}


def refusal(told: bytes, files: dict[str, bytes] | None = None) -> tuple[str, str]:
    members = [Member(name, data) for name, data in (FILES if files is None else files).items()]
    found = unfold("tides.pack", zipped([Member("manifest.json", told), *members]))
    assert isinstance(found, Diagnostic)
    return found.code, found.found


def changed(change: str) -> bytes:
    """Return the right manifest after a change written in Python."""
    told = json.loads(manifest(FILES))
    exec(change, {"told": told, "first": told["blocks"][0]})
    return (json.dumps(told, indent=1) + "\n").encode()


@pytest.mark.parametrize(
    ("change", "code", "sentence"),
    [
        ("told['format'] = 'blocklang.pack/2'", "bad-manifest", "It is packed as blocklang.pack/2, and this program reads blocklang.pack/1; a newer blocklang may read it."),
        ("told['format'] = 'other'", "bad-manifest", "Its manifest is not written as this program writes it."),
        ("told['more'] = 1", "bad-manifest", "Its manifest is not written as this program writes it."),
        ("first['more'] = 1", "bad-manifest", "Its manifest is not written as this program writes it."),
        ("told['language'] = 9", "bad-manifest", "Its manifest is not written as this program writes it."),
        ("first['language'] = 'one'", "bad-manifest", "Its manifest cannot be read."),
        ("first['credits'] = [{'by': 3}]", "bad-manifest", "Its manifest cannot be read."),
        ("first['places'] = [['x']]", "bad-manifest", "Its manifest cannot be read."),
        ("first['places'] = 7", "bad-manifest", "Its manifest cannot be read."),
        ("told['blocks'] = {}", "bad-manifest", "Its manifest is not written as this program writes it."),
        ("first['places'] = ['gone.block']", "bad-manifest", "Its manifest says that `harbour.block` needs a file that is not there."),
        ("first['sha256'] = '0' * 64", "altered-file", "`harbour.block` in it was changed after it was packed."),
        ("first['file'] = 'gone.block'", "missing-file", "Its manifest lists `gone.block`, which is not there."),
        ("told['blocks'].pop()", "added-file", "It holds `tide.block`, which its manifest does not list."),
        ("told['blocks'].reverse()", "bad-manifest", "Its manifest lists its files twice or out of order."),
        ("told['blocks'].append(told['blocks'][-1])", "bad-manifest", "Its manifest lists its files twice or out of order."),
    ],
)  # fmt: skip
def test_manifest_that_does_not_fit_is_refused(change, code, sentence) -> None:
    assert refusal(changed(change)) == (code, sentence)


@pytest.mark.parametrize(
    "told",
    [b"", b"{", b"[]", b"null", b"\xff\xfe", b"[" * 100_000, b'{"format":' * 50_000, b"9" * 10_000, b'{"blocks": NaN}'],
)
def test_what_is_no_manifest_is_refused(told) -> None:
    assert refusal(told) == ("bad-manifest", "Its manifest cannot be read.")


def test_manifest_in_another_layout_or_said_twice_is_refused() -> None:
    told = manifest(FILES)
    assert refusal(json.dumps(json.loads(told)).encode())[0] == "bad-manifest"
    assert refusal(told.replace(b'"language": 1,', b'"language": 1,\n "language": 1,', 1))[0] == "bad-manifest"


def test_two_blocks_of_one_name_are_refused() -> None:
    files = {"harbour.block": text(), "parts/harbour.block": text("Other")}
    assert refusal(manifest(files), files) == ("twin-names", "It holds two different blocks called `harbour`.")


def test_pack_without_a_manifest_is_refused() -> None:
    found = unfold("tides.pack", zipped([Member("harbour.block", text())]))
    assert isinstance(found, Diagnostic)
    assert (found.code, found.found) == ("no-manifest", "It has no `manifest.json`.")
