"""`blocklang outputs`: what can be made."""

import click

from blocklang.cli.plugged import Plugged
from blocklang.cli.showing import show
from blocklang.cli.writing import print_text


@click.command("outputs")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="For people or programs.")
def command(form: str) -> int:
    """List what can be made, with the formats and settings of each."""
    plugged = Plugged()
    outputs = plugged.outputs()
    if form == "json":
        import json
        from dataclasses import asdict, fields

        told = [{field.name: getattr(output, field.name) for field in fields(output)} for output in outputs]
        for one in told:
            del one["make"]
            one["several"] = one.pop("make_several") is not None
            one["folder"] = one.pop("make_folder") is not None
            one["settings"] = [asdict(setting) for setting in one["settings"]]
        print_text(json.dumps(told, indent=2, ensure_ascii=False))
    else:
        for output in outputs:
            print_text(f"{output.name} ({', '.join(output.formats)}): {output.summary}")
            for setting in output.settings:
                choices = f" ({', '.join(setting.choices)})" if setting.choices else ""
                print_text(f"    --set {setting.name}=...{choices}: {setting.summary}")
    return show(plugged.diagnostics)
