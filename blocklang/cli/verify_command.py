"""`blocklang verify`: whether a pack is sound, whom it credits, who signed it, what changed since another one."""

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from blocklang.cli.failing import CommandFault
from blocklang.cli.showing import show
from blocklang.cli.walking import Walk
from blocklang.cli.writing import print_text
from blocklang.diagnostics import Diagnostic
from blocklang.packs.reading import read_pack
from blocklang.packs.values import Pack
from blocklang.packs.verifying import Verified, credit_line, verify

if TYPE_CHECKING:
    from blocklang.packs.comparing import Change


@click.command("verify")
@click.argument("file", metavar="PACK", type=click.Path())
@click.option("--key", metavar="PUBLIC", type=click.Path(path_type=Path), help="It must be signed with this key.")
@click.option("--against", metavar="OLD", type=click.Path(path_type=Path), help="Say what changed since this pack.")
@click.option(
    "--pictures", metavar="FOLDER", type=click.Path(path_type=Path),
    help="With --against: write a picture of each changed block before and after into this folder.",
)  # fmt: skip
@click.option("--force", is_flag=True, help="Write over pictures that are there already.")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="For people or programs.")
def command(
    file: str, key: Path | None, against: Path | None, pictures: Path | None, force: bool, form: str
) -> int:  # fmt: skip
    """Check all of PACK: archive, checksums, signature, every block and every credit.

    Then say who is credited for what, under which licence.
    """
    if pictures is not None and against is None:
        raise click.UsageError("--pictures shows what changed: name the older pack with --against.")
    walk = Walk()
    pack, old = open_pack(Path(file), key), open_pack(against, key) if against else None
    refused = [one for one in (pack, old) if isinstance(one, Diagnostic)]
    if refused or isinstance(pack, Diagnostic) or isinstance(old, Diagnostic):
        return show(refused)
    verified = verify(pack, walk.plugged.cells)
    code = show(walk.all_of(verified.diagnostics))
    changes: tuple[Change, ...] = ()
    if old is not None and not code:
        from blocklang.cli.changes import changed, draw_changes

        earlier = verify(old, walk.plugged.cells)
        code = show(earlier.diagnostics)
        changes = changed(earlier, verified)
        if pictures is not None:
            code = max(code, draw_changes(old, pack, changes, pictures, walk, force))
    if form == "json":
        print_json(pack, verified, key, None if old is None else changes)
    else:
        print_text("\n".join([_heading(pack, code, key), *_credits(verified), *_told(old, changes)]))
    return code


def open_pack(path: Path, key: Path | None) -> Pack | Diagnostic:
    """Return a pack that is whole, and signed with the key if there is one."""
    if not path.exists():
        raise CommandFault(f"There is no file `{path}`.")
    pack = read_pack(path)
    if isinstance(pack, Diagnostic) or key is None:
        return pack
    from blocklang.packs.signing import fault_of_signature

    return fault_of_signature(pack, key) or pack


def _heading(pack: Pack, code: int, key: Path | None) -> str:
    count = len(pack.blocks)
    blocks = f"{count} {'block' if count == 1 else 'blocks'}"
    sound = "not all of it is sound" if code else "all of it is sound"
    return f"{pack.name}: {blocks}, {sound}. {_signed(pack, key)}"


def _signed(pack: Pack, key: Path | None) -> str:
    from blocklang.packs.signing import short

    if pack.signature is None:
        return "It is not signed."
    if key is None:
        return f"It is signed, which is not checked without --key (the key begins {short(pack.signature.key)})."
    return f"It is signed with {key} and unchanged since."


def _credits(verified: Verified) -> list[str]:
    lines = []
    for packed, _ in verified.blocks:
        own, *placed = packed.credits
        lines.append(f"{packed.file}")
        lines.append(f"    {credit_line(own)}")
        lines += [f"    places {credit_line(credit)}" for credit in placed]
    return lines


def _told(old: Pack | None, changes: "tuple[Change, ...]") -> list[str]:
    if old is None:
        return []
    if not changes:
        return [f"Nothing changed since {old.name}."]
    lines = [f"Changed since {old.name}:"]
    for change in changes:
        what = "; ".join(change.phrases)
        lines.append(f"    {change.name}: {change.how.value}" + (f": {what}" if what else ""))
    return lines


def print_json(pack: Pack, verified: Verified, key: Path | None, changes: "tuple[Change, ...] | None") -> None:
    """Write what was found as JSON."""
    import json

    told: dict[str, Any] = {
        "schema": "blocklang.verified/1",
        "pack": pack.name,
        "signed": "no" if pack.signature is None else "yes" if key is not None else "not checked",
        "blocks": [
            {
                "file": packed.file,
                "sha256": packed.sha256,
                "sound": block is not None,
                "credits": [
                    {"block": c.name, "by": c.author, "licence": c.licence, "source": c.source} for c in packed.credits
                ],
            }
            for packed, block in verified.blocks
        ],
    }
    if changes is not None:
        told["changes"] = [{"block": c.name, "how": c.how.value, "what": list(c.phrases)} for c in changes]
    print_text(json.dumps(told, indent=2, ensure_ascii=False))
