"""What is wrong in a skirt file, and where: msgspec's words turned into the maker's."""

import re

from msgspec import Struct

from ..trouble import shown
from ..units import spell
from ..words import phrase, tr
from . import bands, held
from .brief import Brief
from .declare import Declared, declared


def misfit(said: str, style: type[Struct] | None) -> str:
    """A sentence for a `ValidationError`: the path of the fault in the file, and what belongs there."""
    found = re.fullmatch(r"(.*?)(?: - at `\$\.?([^`]*)`)?", said, re.DOTALL)
    what, path = found.groups("") if found else (said, "")
    if field := re.search(r"(unknown|missing required) field `(.*)`", what, re.DOTALL):
        here = shown(f"{path}.{field[2]}" if path else field[2], 60)
        if field[1] == "unknown":
            return spell(phrase("{here:word}: this Skirtwright does not know it.", here=here), "cm")
        return spell(phrase("{here:word}: it is missing.", here=here), "cm")
    known = {one.path: one for one in declared(Brief) + (declared(style, "skirt") if style else ())}
    if path in known:
        return f"{path}: {_wants(known[path])}"
    return spell(phrase("{here:word}: what stands there does not belong there.", here=shown(path, 60)), "cm")


def broken(said: str, raw: bytes) -> str:
    """A sentence for a `DecodeError` in a file that begins like a skirt's: some of it is lost or spoilt."""
    if "truncated" in said or ("trailing" not in said and not raw.rstrip().endswith(b"}")):
        return tr("This skirt file is cut short.")
    at = re.search(r"byte (\d+)", said)
    says = phrase("This skirt file is damaged: it makes no sense at byte {at:count}.", at=int(at[1]) if at else 0)
    return spell(says, "cm")


def _wants(one: Declared) -> str:
    """What a file may hold for one declaration; lengths are in mm there."""
    field = tr(one.words)
    match one.kind:
        case "name":
            says = phrase("{field:word} is a text of at most 80 characters, all of them to be seen.", field=field)
        case "switch":
            says = phrase("{field:word} is true or false.", field=field)
        case "bands":
            says = phrase("A cloth has at most {n:count} bands, each from less to more.", n=bands.MOST)
        case "held":
            says = phrase("At most {n:count} pieces are held on a cloth, each in a place on it.", n=held.MOST)
        case "picture":
            says = phrase("{field:word} is the name of a kept picture, in small letters and digits.", field=field)
        case "choice":
            says = phrase("{field:word} is one of: {options:word}.", field=field, options=", ".join(one.options))
        case _:
            least, most = f"{one.least:g}", f"{one.most:g} mm" if one.kind == "length" else f"{one.most:g}"
            text = "{field:word} is a number from {least:word} to {most:word}."
            if one.kind == "count":
                text = "{field:word} is a whole number from {least:word} to {most:word}."
            says = phrase(text, field=field, least=least, most=most)
    return spell(says, "cm")
