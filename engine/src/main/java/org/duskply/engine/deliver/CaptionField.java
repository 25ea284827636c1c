package org.duskply.engine.deliver;

import java.util.Locale;

/**
 * A text that a file can say of its picture, and its places in three standards: the dataset of
 * record 2 in IPTC-IIM 4.2 with the bytes it may have, the EXIF 2.32 tag, and the XMP property by
 * the IPTC Photo Metadata Standard 2023.1. The numbers are from memory, held to what two readers of
 * other makers call them.
 */
public enum CaptionField {
  /** A short name of the picture. */
  TITLE(5, 64, 0, "dc:title", Form.ALTERNATIVES),
  /** Search words, each a value. */
  KEYWORDS(25, 64, 0, "dc:subject", Form.BAG),
  /** Who made it. */
  CREATOR(80, 32, 315, "dc:creator", Form.SEQUENCE),
  /** Where it was taken. */
  LOCATION(92, 32, 0, "Iptc4xmpCore:Location", Form.TEXT),
  /** Whom to name beside the picture. */
  CREDIT(110, 32, 0, "photoshop:Credit", Form.TEXT),
  /** Who owns the rights. */
  COPYRIGHT(116, 128, 33432, "dc:rights", Form.ALTERNATIVES),
  /** What it shows. */
  CAPTION(120, 2000, 270, "dc:description", Form.ALTERNATIVES),
  /** What it may be used for. */
  RIGHTS_USAGE(0, 0, 0, "xmpRights:UsageTerms", Form.ALTERNATIVES),
  /** What it shows, for those who cannot see it. */
  ALT_TEXT(0, 0, 0, "Iptc4xmpCore:AltTextAccessibility", Form.ALTERNATIVES);

  /** What an XMP property is made of (ISO 16684-1, section 6.3). */
  enum Form {
    TEXT,
    SEQUENCE,
    BAG,
    /** One text in several languages, of which only the default is given. */
    ALTERNATIVES
  }

  private final int iim;
  private final int iimBytes;
  private final int exifTag;
  private final String property;
  private final Form form;

  CaptionField(int iim, int iimBytes, int exifTag, String property, Form form) {
    this.iim = iim;
    this.iimBytes = iimBytes;
    this.exifTag = exifTag;
    this.property = property;
    this.form = form;
  }

  /** As a recipe writes it. */
  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Dataset of record 2 of the IIM; 0 where it has none. */
  int iim() {
    return iim;
  }

  /** Most bytes of a value in the IIM. */
  int iimBytes() {
    return iimBytes;
  }

  /** Tag in the first directory of EXIF; 0 where it has none. */
  int exifTag() {
    return exifTag;
  }

  /** Property in XMP, with its prefix. */
  String property() {
    return property;
  }

  Form form() {
    return form;
  }
}
