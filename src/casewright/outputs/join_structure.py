"""Joining PDFs page after page with what they say of their structure: tagged PDF, ISO 32000.

The library copies pages; the tree of headings, tables, figures and links that readers for the
blind follow lies beside them and is joined here.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from pikepdf import Array, Dictionary, Name, NameTree, NumberTree, Object, Pdf, String

__all__ = ["join_structure"]


def join_structure(whole: Pdf, others: Iterable[Pdf]) -> None:
    """Append the pages and the structure of other documents to the first of them.

    Parameters
    ----------
    others
        Each is taken when those before it are in, and not held any longer than that.
    """
    _tell_apart(whole, _prefix(0))
    tree = whole.Root.StructTreeRoot
    parents = _numbered(tree)
    names = [(_prefix(0) + name, head) for name, head in _named(tree)]
    for number, pdf in enumerate(others, 1):
        prefix, shift = _prefix(number), len(parents)
        _tell_apart(pdf, prefix)
        _shift(pdf, shift)
        whole.pages.extend(pdf.pages)
        its = whole.copy_foreign(pdf.Root.StructTreeRoot)
        _adopt(tree.K[0], its.K[0])
        parents += [(key + shift, value) for key, value in _numbered(its)]
        names += [(prefix + name, head) for name, head in _named(its)]
    tree.ParentTree = Dictionary(Nums=Array([each for pair in parents for each in pair]))
    tree.ParentTreeNextKey = len(parents)
    tree.IDTree = Dictionary(Names=Array([each for pair in names for each in pair]))


def _prefix(number: int) -> str:
    """What stands before the names of the heads of a document's tables."""
    return f"{number + 1:04} "


def _numbered(tree: Object) -> list[tuple[int, Object]]:
    """What structure the marked contents of each page, and each link, belong to."""
    return [(int(key), value) for key, value in NumberTree(tree.ParentTree).items()]


def _named(tree: Object) -> list[tuple[str, Object]]:
    """Heads of tables by the names that their cells call them by."""
    if Name.IDTree not in tree:
        return []
    return [(str(key), value) for key, value in NameTree(tree.IDTree).items()]


def _shift(pdf: Pdf, shift: int) -> None:
    """Count pages and links on from those before."""
    for page in pdf.pages:
        page.obj.StructParents += shift
        for link in page.obj.get(Name.Annots, ()):
            link.StructParent += shift


def _adopt(document: Object, other: Object) -> None:
    """Move all that stands in one document under another."""
    for element in other.K:
        element.P = document
        document.K.append(element)


def _tell_apart(pdf: Pdf, prefix: str) -> None:
    """Give the heads of tables names that no other document has."""
    for cell in _cells(pdf):
        if Name.ID in cell:
            cell.ID = String(prefix + str(cell.ID))
        for attributes in cell.get(Name.A, ()):
            if Name.Headers in attributes:
                heads = (String(prefix + str(each)) for each in attributes.Headers)
                attributes.Headers = Array(heads)


def _cells(pdf: Pdf) -> Iterator[Object]:
    """Cells and heads of all tables."""
    for thing in pdf.objects:
        if isinstance(thing, Dictionary) and str(thing.get(Name.S, "")) in ("/TD", "/TH"):
            yield thing
