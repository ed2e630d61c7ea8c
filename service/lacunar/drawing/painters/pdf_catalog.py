"""What cairo cannot say of a PDF, written into the file that it has finished.

Cairo lists the objects of a PDF up to version 1.4 in a plain table at its end. Two of them, the
catalog and the record of properties, are written anew and the table with them; all others stay as
they are, byte for byte. (ISO 32000-1: 7.5 on the file, 7.7.2 on the catalog, 12.2 on printing.)
"""

import hashlib
import re
from typing import NamedTuple

LANGUAGE = "en-US"

_END = re.compile(rb"startxref\s+(\d+)\s+%%EOF\s*\Z")
_TABLE = re.compile(rb"xref\s+0 (\d+)\s+")
_ROW = re.compile(rb"(\d{10}) (\d{5}) ([nf])\s{2}")
_CATALOG = re.compile(rb"/Root (\d+) 0 R")
_PROPERTIES = re.compile(rb"/Info (\d+) 0 R")
_DATE = re.compile(rb"\((\d{14}Z)\)")
_PRODUCER = re.compile(rb"(/Producer \(cairo [0-9.]+) \([^()]*\)\)")

_OF_THE_SET = (
    b"   /Version /1.6\n"
    b"   /Lang (" + LANGUAGE.encode() + b")\n"
    b"   /ViewerPreferences << /DisplayDocTitle true /PrintScaling /None >>\n"
)


class _File(NamedTuple):
    """A PDF taken apart: what stands before the objects, these by number, and the trailer."""

    head: bytes
    objects: dict[int, bytes]
    trailer: bytes


def completed(pdf: bytes) -> bytes:
    """The PDF with its language, shown under its title, and asking to be printed at 100 %.

    Its date gets the mark that the format asks for (`D:`), and it gets an identity from what is in
    it. Raises `ValueError` for a PDF without a plain table of objects.
    """
    file = _taken_apart(pdf)
    catalog, properties = (_number(pattern, file.trailer) for pattern in (_CATALOG, _PROPERTIES))
    objects = dict(file.objects)
    objects[catalog] = objects[catalog].replace(
        b"<< /Type /Catalog\n", b"<< /Type /Catalog\n" + _OF_THE_SET
    )
    told = _DATE.sub(rb"(D:\1)", objects[properties])
    objects[properties] = _PRODUCER.sub(rb"\1)", told)
    return _put_together(file._replace(objects=objects))


def _number(pattern: re.Pattern[bytes], trailer: bytes) -> int:
    found = pattern.search(trailer)
    if found is None:
        raise ValueError("a PDF whose trailer names no catalog or no properties")
    return int(found[1])


def _taken_apart(pdf: bytes) -> _File:
    end = _END.search(pdf)
    table_at = int(end[1]) if end else 0
    table = _TABLE.match(pdf, table_at)
    if end is None or table is None:
        raise ValueError("a PDF without a plain table of its objects")
    rows = list(_ROW.finditer(pdf, table.end()))[: int(table[1])]
    places = {n: int(row[1]) for n, row in enumerate(rows) if row[3] == b"n"}
    order = sorted(places, key=lambda number: places[number])
    ends = [*(places[number] for number in order[1:]), table_at]
    objects = {n: pdf[places[n] : past] for n, past in zip(order, ends, strict=True)}
    return _File(pdf[: places[order[0]]], objects, pdf[rows[-1].end() : end.start()])


def _put_together(file: _File) -> bytes:
    parts, places, at = [file.head], {}, len(file.head)
    for number, content in file.objects.items():
        places[number] = at
        parts.append(content)
        at += len(content)
    identity = hashlib.sha256(b"".join(parts)).hexdigest()[:32].encode()
    count = max(places) + 1
    rows = [b"0000000000 65535 f \n"]
    rows += [b"%010d 00000 n \n" % places[number] for number in range(1, count)]
    marked = b"   /ID [<%s> <%s>]\n>>" % (identity, identity)
    trailer = marked.join(file.trailer.rsplit(b">>", 1))
    table = b"xref\n0 %d\n" % count + b"".join(rows)
    return b"".join((*parts, table, trailer, b"startxref\n%d\n%%%%EOF\n" % at))
