package org.duskply.engine.deliver;

import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * Captions as an XMP packet (ISO 16684-1): RDF in UTF-8 with the properties of the IPTC Photo
 * Metadata Standard. Without identifiers of instances, without a time of writing and without
 * padding, so the same captions are the same bytes.
 */
final class XmpPacket {
  /** Begin and end of a packet: ISO 16684-1 section 7.3; the identifier is the same in all. */
  private static final String BEGIN =
      "<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n";

  private static final String END = "<?xpacket end=\"w\"?>";

  /**
   * Prefixes and namespaces as the standards have them, to the letter: readers know properties by
   * them.
   */
  private static final String[][] NAMESPACES = {
    {"dc", "http://purl.org/dc/elements/1.1/"},
    {"xmp", "http://ns.adobe.com/xap/1.0/"},
    {"xmpRights", "http://ns.adobe.com/xap/1.0/rights/"},
    {"photoshop", "http://ns.adobe.com/photoshop/1.0/"},
    {"Iptc4xmpCore", "http://iptc.org/std/Iptc4xmpCore/1.0/xmlns/"},
    {"Iptc4xmpExt", "http://iptc.org/std/Iptc4xmpExt/2008-02-29/"},
  };

  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss", Locale.ROOT);

  private final StringBuilder out = new StringBuilder();

  private XmpPacket() {}

  /** The packet. */
  static byte[] of(Captions captions) {
    XmpPacket packet = new XmpPacket();
    packet.write(captions);
    return packet.out.toString().getBytes(StandardCharsets.UTF_8);
  }

  private void write(Captions captions) {
    out.append(BEGIN).append("<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n");
    out.append("<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n");
    out.append("<rdf:Description rdf:about=\"\"");
    for (String[] namespace : NAMESPACES) {
      out.append("\n xmlns:").append(namespace[0]).append("=\"").append(namespace[1]).append('"');
    }
    out.append(">\n");
    element("xmp:CreatorTool", captions.software());
    if (captions.taken() != null) {
      element("photoshop:DateCreated", DATE.format(captions.taken()));
    }
    captions.texts().forEach(this::property);
    captions.values(CaptionField.LOCATION).forEach(this::locationCreated);
    out.append("</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n").append(END);
  }

  private void property(CaptionField field, List<String> values) {
    String name = field.property();
    switch (field.form()) {
      case TEXT -> element(name, values.get(0));
      case SEQUENCE -> array(name, "rdf:Seq", "<rdf:li>", values);
      case BAG -> array(name, "rdf:Bag", "<rdf:li>", values);
      case ALTERNATIVES ->
          array(name, "rdf:Alt", "<rdf:li xml:lang=\"x-default\">", values.subList(0, 1));
    }
  }

  /** The place once more, where the standard has had it since 2009: as a structure with a name. */
  private void locationCreated(String place) {
    out.append("<Iptc4xmpExt:LocationCreated><rdf:Bag><rdf:li rdf:parseType=\"Resource\">\n");
    array("Iptc4xmpExt:LocationName", "rdf:Alt", "<rdf:li xml:lang=\"x-default\">", List.of(place));
    out.append("</rdf:li></rdf:Bag></Iptc4xmpExt:LocationCreated>\n");
  }

  private void array(String name, String kind, String item, List<String> values) {
    out.append('<').append(name).append("><").append(kind).append('>');
    for (String value : values) {
      out.append(item);
      text(value);
      out.append("</rdf:li>");
    }
    out.append("</").append(kind).append("></").append(name).append(">\n");
  }

  private void element(String name, String value) {
    out.append('<').append(name).append('>');
    text(value);
    out.append("</").append(name).append(">\n");
  }

  /** XML 1.0 section 2.4: what would begin markup is written as a reference. */
  private void text(String value) {
    for (int i = 0; i < value.length(); i++) {
      char c = value.charAt(i);
      switch (c) {
        case '&' -> out.append("&amp;");
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        default -> out.append(c);
      }
    }
  }
}
