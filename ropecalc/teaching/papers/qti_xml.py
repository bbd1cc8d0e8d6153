"""Small pieces of XML that all documents of a QTI 2.1 package are made of."""

from xml.etree import ElementTree as ET

from ropecalc import __version__

NAMESPACE = "http://www.imsglobal.org/xsd/imsqti_v2p1"
INSTANCE = "http://www.w3.org/2001/XMLSchema-instance"


def document(tag: str, **attributes: str) -> ET.Element:
    """The root of a test or an item."""
    carried = {
        "xmlns": NAMESPACE,
        "xmlns:xsi": INSTANCE,
        "xsi:schemaLocation": f"{NAMESPACE} {NAMESPACE}.xsd",
        "toolName": "ropecalc",
        "toolVersion": __version__,
    }
    return ET.Element(tag, carried | attributes)


def element(tag: str, *inside: ET.Element | str, **attributes: str) -> ET.Element:
    """An element with either parts or a text in it."""
    made = ET.Element(tag, attributes)
    for part in inside:
        if isinstance(part, str):
            made.text = part
        else:
            made.append(part)
    return made


def paragraph(text: str) -> ET.Element:
    """A paragraph of plain text."""
    return element("p", text)


def outcome(name: str, base_type: str, start: str = "", **attributes: str) -> ET.Element:
    """The declaration of an outcome, with the value it starts from if there is one."""
    declared = element(
        "outcomeDeclaration",
        identifier=name,
        cardinality="single",
        baseType=base_type,
        **attributes,
    )
    if start:
        declared.append(element("defaultValue", element("value", start)))
    return declared


def value(base_type: str, text: str) -> ET.Element:
    """A constant in a rule."""
    return element("baseValue", text, baseType=base_type)


def variable(name: str) -> ET.Element:
    """A variable in a rule."""
    return element("variable", identifier=name)


def assign(name: str, to: ET.Element) -> ET.Element:
    """The rule that gives an outcome its value."""
    return element("setOutcomeValue", to, identifier=name)


def written(root: ET.Element) -> bytes:
    """A document as bytes."""
    ET.indent(root)
    return ET.tostring(root, encoding="UTF-8", xml_declaration=True) + b"\n"
