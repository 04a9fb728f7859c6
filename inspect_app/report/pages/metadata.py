"""What the file says of itself, as XMP (ISO 16684-1): title, language, dates. It claims no kind of PDF/A or PDF/UA: no
validator here could judge that."""

from typing import Any
from xml.sax.saxutils import escape

from reportlab.pdfbase import pdfdoc

PACKET = """<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"
 xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
<dc:creator><rdf:Seq><rdf:li>{author}</rdf:li></rdf:Seq></dc:creator>
<dc:description><rdf:Alt><rdf:li xml:lang="x-default">{subject}</rdf:li></rdf:Alt></dc:description>
<dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>
<xmp:CreatorTool>Seamwalk</xmp:CreatorTool>{created}
<pdf:Producer>Seamwalk</pdf:Producer>
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="w"?>"""


def metadata(title: str, author: str, subject: str, language: str, issued: str) -> Any:
    """The metadata stream of the catalog: plain, so that whoever indexes files need not unpack it."""
    facts = {"title": title, "author": author, "subject": subject, "language": language}
    created = f"\n<xmp:CreateDate>{escape(issued)}</xmp:CreateDate>" if issued else ""
    text = PACKET.format(created=created, **{name: escape(value) for name, value in facts.items()})
    stream = pdfdoc.PDFStream(content=text.encode("utf-8", "replace"), filters=[])
    stream.dictionary["Type"], stream.dictionary["Subtype"] = pdfdoc.PDFName("Metadata"), pdfdoc.PDFName("XML")
    return stream
