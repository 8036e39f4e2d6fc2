"""Drafts, lays, exports and saves without a window: what the command line can do."""

import argparse
import json
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path

from studio.brief import Brief
from studio.brief.skirt_file import open_file, save
from studio.brief.typed import read_value
from studio.check import Finding
from studio.check.makes import helpful, makes
from studio.listing import listed, listed_lay
from studio.paper import KINDS
from studio.parser import Parser, seconds, unit
from studio.sewing import sewing_order, sewing_text
from studio.shopping import buy_csv, buy_text, listed_buy, makes_words, quick_words
from studio.slip import lay_slip, slip
from studio.styles import rack
from studio.trouble import Trouble, shown
from studio.units import Unit, spell
from studio.words import phrase, tr
from studio.workroom import bettered, make_up

UNIT_HELP = "unit of words and of typed numbers without one (cm)"


def _draft(said: list[str]) -> int:
    parser = _command("draft", "List pieces, sizes, what to have ready, and findings.")
    parser.add_argument("--json", action="store_true", help="print them as JSON, lengths in mm")
    chosen = parser.read(said)
    docket = make_up(_brief(chosen))
    _print([json.dumps(listed(docket, chosen.unit))] if chosen.json else slip(docket, chosen.unit))
    return 0


def _lay(said: list[str]) -> int:
    parser = _command("lay", "Lay the pieces on the cloth.")
    how = parser.add_mutually_exclusive_group()
    how.add_argument("--json", action="store_true", help="print the plan as JSON, lengths in mm")
    how.add_argument("--pdf", type=Path, metavar="FILE", help="write it to scale with the order of cutting")
    parser.add_argument("--paper", metavar="SIZE", help="A4, A3, US Letter or roll")
    _looks(parser)
    chosen = parser.read(said)
    docket = make_up(_on_paper(chosen))
    if docket.lay.misfits:
        return _stopped(docket.findings, chosen.unit, "pieces-fit-cloth")
    docket = bettered(docket, chosen.seconds)
    if chosen.pdf:
        from studio.plan_pages import put_plan  # brings the pages with it

        put_plan(chosen.pdf, docket, chosen.unit)
        _print([str(chosen.pdf)])
        return 0
    _print([json.dumps(listed_lay(docket))] if chosen.json else lay_slip(docket, chosen.unit))
    return 0


def _sew(said: list[str]) -> int:
    chosen = _command("sew", "List the steps of sewing, in order, to be ticked off.").read(said)
    brief = _brief(chosen)
    _print(sewing_text(brief, sewing_order(brief, rack.draft(brief)), chosen.unit))
    return 0


def _buy(said: list[str]) -> int:
    parser = _command("buy", "List what to buy, what is left over, and what the length on hand still makes.")
    how = parser.add_mutually_exclusive_group()
    how.add_argument("--json", action="store_true", help="print it as JSON, lengths in mm")
    how.add_argument("--csv", action="store_true", help="print the list as a table")
    _looks(parser)
    chosen = parser.read(said)
    docket = make_up(_brief(chosen))
    if docket.lay.misfits:
        return _stopped(docket.findings, chosen.unit, "pieces-fit-cloth")
    docket = bettered(docket, chosen.seconds)
    if chosen.csv:
        _print(buy_csv(docket, chosen.unit).splitlines())
        return 0
    made = helpful(makes(docket.brief), docket.brief, docket.lay)
    if chosen.json:
        _print([json.dumps(listed_buy(docket, chosen.unit, made))])
        return 0
    _print(buy_text(docket, chosen.unit))
    if made:
        lines = (*(makes_words(m, chosen.unit) for m in made), *quick_words(made))
        _print(["", tr("What this cloth makes"), *(f"  {line}" for line in lines)])
    return 0


def _export(said: list[str]) -> int:
    parser = _command("export", "Write the pieces at true scale.")
    parser.add_argument("--out", type=Path, required=True, metavar="DIR", help="folder to write into")
    for kind in KINDS:
        parser.add_argument(f"--{kind}", action="store_true")
    parser.add_argument("--paper", metavar="SIZE", help="A4, A3, US Letter or roll")
    parser.add_argument("--anyway", action="store_true", help="export although a finding stops it")
    _looks(parser)
    chosen = parser.read(said)
    kinds = tuple(k for k in KINDS if getattr(chosen, k))
    if not kinds:
        parser.error(f"name what to write, any of {', '.join(f'--{k}' for k in KINDS)}")
    from studio.export import export, sheets  # brings the pages with it, which nobody else needs

    docket = make_up(_on_paper(chosen))
    if docket.stopped and not chosen.anyway:
        return _stopped(docket.findings, chosen.unit)
    docket = bettered(docket, chosen.seconds)
    for finding in docket.findings:
        if finding.weight != "note":
            print(f"skirtwright: {spell(finding.says, chosen.unit)}", file=sys.stderr)
    if "pdf" in kinds and (fewer := sheets(docket, chosen.unit)[1]):
        print(f"skirtwright: {spell(fewer, chosen.unit)}", file=sys.stderr)
    for step in export(docket, chosen.out, kinds, chosen.unit):
        if step.wrote:
            _print([str(step.wrote)])
    return 0


def _save(said: list[str]) -> int:
    parser = _command("save", "Write the brief to a file.")
    parser.add_argument("--to", type=Path, required=True, metavar="FILE.skirt")
    chosen = parser.read(said)
    to = chosen.to if chosen.to.suffix else chosen.to.with_suffix(".skirt")
    save(to, _brief(chosen))
    return 0


RUN = {"draft": _draft, "lay": _lay, "export": _export, "save": _save, "sew": _sew, "buy": _buy}


def _command(name: str, does: str) -> Parser:
    parser = Parser(f"skirtwright {name}", description=does)
    parser.add_argument("file", nargs="?", type=Path, metavar="FILE", help="a .skirt file; the usual brief without")
    parser.add_argument(
        "--set", action="append", default=[], metavar="PATH=VALUE", help='as in --set body.waist="68 cm"'
    )
    parser.add_argument("--unit", type=unit, default="cm", metavar="cm|in", help=UNIT_HELP)
    return parser


def _looks(parser: Parser) -> None:
    """All that names what to buy looks for a shorter plan first, and takes the same word for how long."""
    parser.add_argument("--seconds", type=seconds, default=1.0, help="most time to look for a shorter plan (1)")


def _brief(chosen: argparse.Namespace) -> Brief:
    brief = open_file(chosen.file, rack.RECORDS) if chosen.file else rack.usual(chosen.unit)
    for pair in chosen.set:
        path, equals, text = pair.partition("=")
        if not equals or path not in rack.declarations(brief):
            says = "--set takes PATH=VALUE with a path such as body.waist; “{p:word}” has none that is known."
            raise Trouble(spell(phrase(says, p=shown(pair)), chosen.unit))
        value = read_value(rack.declarations(brief)[path], text, chosen.unit)
        brief = rack.edit(brief, {path: value}, chosen.unit)
    return brief


def _on_paper(chosen: argparse.Namespace) -> Brief:
    """The brief, for the paper that was named."""
    if chosen.paper:
        chosen.set.append(f"paper.size={chosen.paper}")
    return _brief(chosen)


def _print(lines: Iterable[str]) -> None:
    """Print lines, without control characters; a letter that the output cannot hold becomes a question mark."""
    encoding = getattr(sys.stdout, "encoding", None) or "utf-8"  # there may be no output at all
    for line in lines:
        print(shown(line, len(line)).encode(encoding, "replace").decode(encoding))


def _stopped(findings: Sequence[Finding], unit: Unit, rule: str = "") -> int:
    for finding in findings:
        if finding.weight == "stop" and rule in ("", finding.rule):
            print(f"skirtwright: {spell(finding.says, unit)}", file=sys.stderr)
    return 1
