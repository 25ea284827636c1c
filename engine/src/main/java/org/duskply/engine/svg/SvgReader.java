package org.duskply.engine.svg;

import java.io.StringReader;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/**
 * Reads the elements of a drawing. The file comes from strangers, hence:
 *
 * <ul>
 *   <li>no declarations: a document type is passed over where it only names one, and refused where
 *       it declares entities or defaults; nothing is ever fetched and no entity expanded;
 *   <li>the JDK's own parser, whatever else lies on the class path;
 *   <li>every limit of {@link SvgLimits}, checked while reading;
 *   <li>sentences of our own, since the parser's depend on the machine's language.
 * </ul>
 *
 * <p>Elements of other name spaces than the drawing's are passed over with all that they hold. A
 * drawing without name space is taken as meant.
 */
final class SvgReader {
  private static final String SVG = "http://www.w3.org/2000/svg";
  private static final String XLINK = "http://www.w3.org/1999/xlink";

  /** All other attributes are let go at once: pictures inside a drawing can be megabytes long. */
  private static final Set<String> READ =
      Set.of(
          "id",
          "style",
          "transform",
          "transform-origin",
          "d",
          "points",
          "x",
          "y",
          "width",
          "height",
          "rx",
          "ry",
          "cx",
          "cy",
          "r",
          "viewBox",
          "preserveAspectRatio",
          "href",
          "display",
          "visibility",
          "fill-rule",
          "clip-rule",
          "clipPathUnits");

  private final String name;
  private final XMLStreamReader xml;
  private final StringBuilder sheet = new StringBuilder();
  private @Nullable SvgElement root;
  private String rootNamespace = "";
  private int elements;

  private SvgReader(String name, XMLStreamReader xml) {
    this.name = name;
    this.xml = xml;
  }

  /** What stands in a file: its outermost element, and the text of its style sheets. */
  record Read(SvgElement root, String sheet) {}

  /**
   * Reads a file's bytes in the encoding that they declare.
   *
   * @param name what the file is called in sentences
   * @throws DrawingException where it is no drawing, or beyond a limit
   */
  static Read read(String name, byte[] bytes) {
    try {
      XMLStreamReader xml =
          factory().createXMLStreamReader(new StringReader(SvgText.decode(name, bytes)));
      try {
        return new SvgReader(name, xml).read();
      } catch (XMLStreamException e) {
        throw new DrawingException(
            name
                + " cannot be read as XML in line "
                + xml.getLocation().getLineNumber()
                + ", column "
                + xml.getLocation().getColumnNumber()
                + "; save it anew from the program that drew it.");
      }
    } catch (XMLStreamException e) {
      throw new DrawingException(name + " is no XML text that can be read; is it an SVG drawing?");
    }
  }

  private static XMLInputFactory factory() {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
    factory.setProperty(XMLInputFactory.IS_NAMESPACE_AWARE, true);
    factory.setXMLResolver(
        (publicId, systemId, base, namespace) -> {
          throw new XMLStreamException("nothing is fetched");
        });
    return factory;
  }

  private Read read() throws XMLStreamException {
    SvgElement here = null;
    int depth = 0;
    while (xml.hasNext()) {
      switch (xml.next()) {
        case XMLStreamConstants.DTD -> checkDeclarations();
        case XMLStreamConstants.ENTITY_REFERENCE -> throw entity();
        case XMLStreamConstants.START_ELEMENT -> {
          if (++depth > SvgLimits.DEPTH) {
            throw beyond("has elements more than " + SvgLimits.DEPTH + " deep in each other");
          }
          if (root != null && !belongs()) {
            skip(depth);
            depth--;
          } else {
            here = element(here);
          }
        }
        case XMLStreamConstants.END_ELEMENT -> {
          here = here == null ? null : here.parent();
          depth--;
        }
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> {
          if (here != null && here.is("style") && sheet.length() < SvgLimits.TEXT) {
            sheet.append(xml.getText());
          }
        }
        default -> {} // Comments, spaces and instructions draw nothing.
      }
    }
    if (root == null) {
      throw new DrawingException(name + " holds no drawing.");
    }
    return new Read(root, sheet.toString());
  }

  /** A document type may name itself; what it declares would change what stands in the file. */
  private void checkDeclarations() {
    String text = xml.getText();
    if (text != null && (text.indexOf('[') >= 0 || text.indexOf(']') >= 0)) {
      throw entity();
    }
  }

  private DrawingException entity() {
    return new DrawingException(
        name
            + " declares or uses entities (<!DOCTYPE … [ … ]>), which are not read; save it as"
            + " plain SVG.");
  }

  /** Whether the element is of the drawing's own name space. */
  private boolean belongs() {
    return namespace().equals(rootNamespace);
  }

  private String namespace() {
    String uri = xml.getNamespaceURI();
    return uri == null ? "" : uri;
  }

  private SvgElement element(@Nullable SvgElement parent) {
    count();
    if (root == null) {
      rootNamespace = namespace();
      boolean svg = xml.getLocalName().equals("svg");
      if (!svg || !(rootNamespace.isEmpty() || rootNamespace.equals(SVG))) {
        throw new DrawingException(
            name
                + " is no SVG drawing: its outermost element is `"
                + SvgWords.quoted(xml.getLocalName())
                + "`"
                + (svg ? " of another name space." : "."));
      }
    }
    SvgElement element = new SvgElement(xml.getLocalName(), attributes(), parent);
    if (root == null) {
      root = element;
    }
    return element;
  }

  private void count() {
    if (++elements > SvgLimits.ELEMENTS) {
      throw beyond("has more than 100,000 elements");
    }
    if (xml.getAttributeCount() > SvgLimits.ATTRIBUTES) {
      throw beyond("has an element with more than " + SvgLimits.ATTRIBUTES + " attributes");
    }
  }

  private Map<String, String> attributes() {
    Map<String, String> attributes = new HashMap<>();
    for (int i = 0; i < xml.getAttributeCount(); i++) {
      String key = key(i);
      if (READ.contains(key)) {
        String value = xml.getAttributeValue(i);
        if (value.length() > SvgLimits.TEXT) {
          throw beyond("has a `" + key + "` of more than 4 million characters");
        }
        boolean own = xml.getAttributeNamespace(i) == null || !key.equals("href");
        if (own) {
          attributes.put(key, value);
        } else {
          attributes.putIfAbsent(key, value);
        }
      }
    }
    return attributes;
  }

  /** The attribute's name; empty where it belongs to something else than the drawing. */
  private String key(int i) {
    String uri = xml.getAttributeNamespace(i);
    String key = xml.getAttributeLocalName(i);
    boolean link = key.equals("href");
    if (link && !xml.getLocalName().equals("use")) {
      return "";
    }
    boolean own = uri == null || uri.isEmpty();
    return own || (link && uri.equals(XLINK)) ? key : "";
  }

  /** Passes over the element and all that it holds. */
  private void skip(int depth) throws XMLStreamException {
    int inside = 1;
    count();
    while (inside > 0) {
      int event = xml.next();
      if (event == XMLStreamConstants.START_ELEMENT) {
        count();
        if (depth + inside++ > SvgLimits.DEPTH) {
          throw beyond("has elements more than " + SvgLimits.DEPTH + " deep in each other");
        }
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        inside--;
      } else if (event == XMLStreamConstants.ENTITY_REFERENCE) {
        throw entity();
      }
    }
  }

  private DrawingException beyond(String what) {
    return new DrawingException(
        name + " " + what + ", which is beyond what a drawing of outlines may have.");
  }
}
