"""Slips of the pen: what somebody probably meant where the text is no TOML."""

from __future__ import annotations

import re

from casewright.dims import parse_length
from casewright.errors import LengthError, Location, Problem
from casewright.job.positions import Positions

__all__ = ["explain_slip"]

_PAIR = re.compile(r"\s*(?P<key>[^=#\[\]{}\"']+?)\s*=\s*(?P<value>.*)$")
_LIKE_KEY = re.compile(r"\s*(?P<key>[A-Za-z_][\w .-]*?)\s*(?P<mark>:|$)")
_LEADING_ZERO = re.compile(r"0+[1-9]\d*")
_PLAIN_NUMBER = re.compile(r"[+-]?(0|[1-9]\d*)(\.\d+)?")
_COMMA = re.compile(r"([+-]?\d+),(\d+)")
_POINTS = re.compile(r"([+-]?\d+\.\d+)\.[\d.]*")
_BACKTICKS = "`\u00b4"
_CURLY = "\u201c\u201d\u201e\u201f\u2018\u2019\u201a\u00ab\u00bb"
_TOOL = re.compile(r"shop\.tool\.([a-z-]+ [a-z-]+)")
_NO_COMMA = re.compile(r"""(["'])([^"']*)\1\s+(["'].*)""")
_COLON = re.compile(r"\{?\s*(?P<key>[A-Za-z_][\w-]*)\s*:\s*(?P<value>.*)")
_ODD_SPACE = re.compile("[\u00a0\u2007\u202f\u200b\ufeff]")
_LONGEST_NUMBER = 30
_FORM = "write key = value, [section], or # and a note"
_LONGEST_WORD = 60


def explain_slip(name: str, positions: Positions, line: int, column: int) -> Problem:
    """The one thing that is wrong with the form of a file.

    Parameters
    ----------
    name
        What messages call the file.
    positions
        How far the text could be followed.
    line, column
        Where the parser stopped: line from 1, column from 0.
    """
    lines = positions.text.split("\n")
    line = min(max(line, 1), len(lines))
    text = lines[line - 1].rstrip("\r")
    unclosed = _unclosed(name, positions, line, text)
    if unclosed:
        return unclosed
    word, what, want = _slip(text, column)
    start = text.find(word, max(0, min(column, len(text)) - len(word))) if word else -1
    if start < 0:
        start = text.find(word) if word else min(column, len(text))
    return Problem(Location(name, line, start + 1, word[:_LONGEST_WORD]), what, want)


def _unclosed(name: str, positions: Positions, line: int, text: str) -> Problem | None:
    """A list, table or text that began on an earlier line, or never ends."""
    if positions.unfinished is None:
        return None
    began, column = positions.at(positions.unfinished.start)
    mark = positions.text[positions.unfinished.start : positions.unfinished.start + 3]
    if mark in ('"""', "'''"):
        where = Location(name, began, column, mark)
        return Problem(where, "the text that begins here never ends", f"close it with {mark}")
    kinds = {"[": ("list", "]"), "{": ("table", "}")}
    if mark[:1] not in kinds or (line == began and text.rstrip()):
        return None
    kind, end = kinds[mark[0]]
    word = text.strip()[:_LONGEST_WORD]
    at = Location(name, line, len(text) - len(text.lstrip()) + 1, word)
    if _PAIR.match(text) and kind == "list":
        at = Location(name, began, column, mark[0])
        return Problem(at, f"the {kind} that begins here is not closed", f"put {end} at its end")
    return Problem(
        at,
        f"this does not go on the {kind} that begins on line {began}",
        f"put a comma between its entries and {end} at its end",
    )


def _slip(text: str, column: int) -> tuple[str, str, str]:
    """The word, what is wrong with it, and what would be right."""
    stripped = text.strip()
    if _ODD_SPACE.search(text):
        return stripped, "a space in this line is not that of the keyboard", "type the line again"
    if stripped.startswith("["):
        return _header(stripped)
    pair = _PAIR.match(text)
    if pair is None:
        return _no_pair(text)
    key, value = pair["key"], pair["value"].strip()
    entry = _entry(text, value, column) if value else ""
    return _empty_or_split(key, value) or _between(value, entry) or _value(key, entry)


def _empty_or_split(key: str, value: str) -> tuple[str, str, str] | None:
    """What is wrong round the value: none there, a key of two words, = twice, a { left open."""
    if not value or value.startswith("#"):
        return key, f"{key} has no value", f'write {key} = "..." or take the line out'
    if " " in key and "." not in key:
        fixed = re.sub(r"\s+", "_", key)
        return key, "a key is one word", f"write {fixed} = ..."
    if not key.isascii():
        return key, "no key has letters beyond a to z", "docs/job-file.md lists the keys"
    if value[0] == "=":
        return value, "one = is enough", f"write {key} = {value.strip('= ')}"
    if value[0] == "{" and "}" not in value:
        return value, "the { is not closed", f"write {key} = {value} }}"
    return None


def _between(value: str, entry: str) -> tuple[str, str, str] | None:
    """What is wrong between the entries of a list or a table: no comma, a colon for =."""
    comma = _NO_COMMA.match(entry) if value[0] == "[" else None
    if comma:
        right = f"write {comma[1]}{comma[2]}{comma[1]}, {comma[3]}"
        return entry, "a comma is missing between two entries", right
    colon = _COLON.match(entry) if value[0] == "{" else None
    if colon:
        right = f"write {colon['key']} = {colon['value'].strip()}"
        return entry, "a colon does not set a value", right
    return None


def _entry(text: str, value: str, column: int) -> str:
    """The value, or the entry of it in which the parser stopped."""
    return (_around(text, column) or value) if value[0] in "[{" else value


def _header(text: str) -> tuple[str, str, str]:
    name = text.strip("[] \t")
    if "]" not in text:
        return text, "the section's name is not closed", f"write [{name}]"
    inside = text[1 : text.index("]")].strip("[ ")
    after = text[text.rindex("]") + 1 :].strip()
    if after and not after.startswith("#"):
        return after, "nothing stands behind a section's name", "begin a new line for it"
    tool = _TOOL.fullmatch(inside)
    if tool:
        return inside, "a name of two words stands in quotes", f'write [shop.tool."{tool[1]}"]'
    if not inside.isascii() and '"' not in inside:
        quoted = ".".join(each if each.isascii() else f'"{each}"' for each in inside.split("."))
        return text, "a name with letters beyond a to z stands in quotes", f"write [{quoted}]"
    if " " in inside:
        return inside, "a section's name has no spaces", f"write [{_as_name(inside)}]"
    return text, "this is no section's name", "write one such as [case.upper]"


def _as_name(text: str) -> str:
    first, _, rest = text.partition(" ")
    joiner = "." if "." not in first else "_"
    return first + joiner + re.sub(r"\s+", "_", rest.strip())


def _no_pair(text: str) -> tuple[str, str, str]:
    like = _LIKE_KEY.match(text)
    word = text.strip()
    if like and like["mark"] == ":":
        key = like["key"].strip()
        return word, "a colon does not set a value", f"write {key} = ..."
    if word[:1] == "{":
        return word, "this is the beginning of JSON, not of a job file", _FORM
    if "=" in text:
        return word, "this is no key in front of =", _FORM
    return word, "there is no = in this line", _FORM


def _around(text: str, column: int) -> str:
    """The entry of a list or table in which the parser stopped."""
    column = min(column, len(text) - 1)
    start = max(text.rfind(mark, 0, column) for mark in "[,{=") + 1
    ends = [place for mark in ",]}" if (place := text.find(mark, column)) >= 0]
    return text[start : min(ends, default=len(text))].strip()


def _value(key: str, value: str) -> tuple[str, str, str]:
    if value[0] in "\"'":
        return _quoted(key, value)
    word = value.partition("#")[0].strip()
    if word.lower() in ("true", "false", "yes", "no"):
        right = "true" if word.lower() in ("true", "yes") else "false"
        return word, "yes and no are written true and false", f"write {key} = {right}"
    slip = _mistyped(key, word)
    if slip:
        return slip
    if _is_length(word):
        return word, "a length with a fraction or a unit stands in quotes", _quotes(word)
    if word[:1].isdigit() or word[:1] in ".+-":
        return word, "this is no plain number", _quotes(word)
    return word, "a word stands in quotes", _quotes(word)


def _mistyped(key: str, word: str) -> tuple[str, str, str] | None:
    """What is wrong with marks that TOML does not know, or with a number without quotes."""
    return _foreign_mark(key, word) or _misnumbered(key, word)


def _foreign_mark(key: str, word: str) -> tuple[str, str, str] | None:
    """Quotes that are none, round brackets, a mark at the end of the line."""
    if word[:1] in _CURLY:
        right = f'write {key} = "{_bare(word)}"'
        return word, "these are curly quotes, not straight ones", right
    if word[:1] in _BACKTICKS:
        right = f'write {key} = "{_bare(word)}"'
        return word, "these are backticks, not quotes", right
    if word[:1] == "(":
        right = f"write {key} = [{word.strip('() ')}]"
        return word, "a list stands in square brackets", right
    if word[-1:] in ",;" and word[:-1].strip():
        plain = word.rstrip(",; ")
        right = plain if _PLAIN_NUMBER.fullmatch(plain) else f'"{plain}"'
        return word, f"no {word[-1]} stands at the end of a line", f"write {key} = {right}"
    return None


def _misnumbered(key: str, word: str) -> tuple[str, str, str] | None:
    """A number written as TOML writes none."""
    if _LEADING_ZERO.fullmatch(word):
        return word, "a number does not begin with 0", f"write {key} = {word.lstrip('0')}"
    if len(word) > _LONGEST_NUMBER and word.isdigit():
        return word, "no number is that long", f"write {key} = 33, or whatever it is"
    comma = _COMMA.fullmatch(word)
    if comma:
        right = f"write {key} = {comma[1]}.{comma[2]}"
        return word, "a decimal is set off with a point, not with a comma", right
    points = _POINTS.fullmatch(word)
    if points:
        return word, "a number has one decimal point", f"write {key} = {points[1]}"
    return None


def _bare(word: str) -> str:
    """A word without quotes of any kind."""
    return word.strip(f"{_CURLY}{_BACKTICKS}\"' ")


def _quotes(word: str) -> str:
    """The order to put quotes round something, of the kind that does not end too soon."""
    quote = "'" if '"' in word else '"'
    if quote in word:
        plain = word.replace('"', "").replace("'", "").strip()
        return f'put quotes round it: "{plain}"'
    return f"put quotes round it: {quote}{word}{quote}"


def _is_length(word: str) -> bool:
    try:
        parse_length(word, "in")
    except LengthError:
        return False
    return True


def _unclosed_quote(key: str, value: str) -> tuple[str, str, str]:
    if value[-1] in _CURLY:
        right = f'write {key} = "{_bare(value)}"'
        return value, "one of these quotes is curly, not straight", right
    return value, "the closing quote is missing", f"write {key} = {value}{value[0]}"


def _quoted(key: str, value: str) -> tuple[str, str, str]:
    quote = value[0]
    end = value.find(quote, 1)
    if end < 0:
        return _unclosed_quote(key, value)
    after = value[end + 1 :].partition("#")[0].strip()
    inside = value[1:end]
    if quote == '"' and after == '"':
        right = f'write {key} = "{inside}" or {key} = \'{inside}"\''
        return value, "the inch mark ends the text too soon", right
    if "\\" in inside and quote == '"':
        return (
            value,
            "a backslash has a meaning of its own in double quotes",
            f"put single quotes round it, or write / for {chr(92)}",
        )
    if after and not after.strip(",;."):
        return value, f"{after} stands outside the quotes", f"write {key} = {quote}{inside}{quote}"
    if after:
        joined = f"{inside} {after}".replace(quote, "").strip()
        return value, f"{after} stands outside the quotes", f"write {key} = {quote}{joined}{quote}"
    return value, "this text cannot be read", "write it without control characters"
