package org.duskply.engine.svg;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A drawing's bytes as text, in the encoding that its first bytes or its declaration give (XML 1.0,
 * appendix F): UTF-8, UTF-16, or one byte a letter. Decoded here and not by the parser, which
 * prints to the console where a byte is wrong.
 */
final class SvgText {
  private static final Pattern DECLARED =
      Pattern.compile("^<\\?xml[^>]*?encoding\\s*=\\s*[\"']([A-Za-z0-9._-]{1,40})[\"']");
  private static final int DECLARATION = 200;
  private static final List<String> KNOWN =
      List.of("utf-8", "us-ascii", "iso-8859-1", "iso-8859-15", "windows-1252", "utf-16");

  private SvgText() {}

  /**
   * Decodes a file.
   *
   * @param name what the file is called in sentences
   * @throws DrawingException where its bytes are not in its encoding, or that is not known
   */
  static String decode(String name, byte[] bytes) {
    Charset charset = charset(name, bytes);
    try {
      String text =
          charset
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes))
              .toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw new DrawingException(
          name + " is no " + charset.name() + " text; save it from your editor as UTF-8.");
    }
  }

  private static Charset charset(String name, byte[] bytes) {
    int first = bytes.length > 1 ? (bytes[0] & 0xFF) << 8 | bytes[1] & 0xFF : 0;
    if (first == 0xFEFF || first == 0x003C) {
      return StandardCharsets.UTF_16BE;
    }
    if (first == 0xFFFE || first == 0x3C00) {
      return StandardCharsets.UTF_16LE;
    }
    String head =
        new String(bytes, 0, Math.min(bytes.length, DECLARATION), StandardCharsets.ISO_8859_1);
    Matcher declared = DECLARED.matcher(head);
    if (!declared.find()) {
      return StandardCharsets.UTF_8;
    }
    String encoding = declared.group(1).toLowerCase(Locale.ROOT);
    if (!KNOWN.contains(encoding) || !Charset.isSupported(encoding)) {
      throw new DrawingException(
          name + " is in the encoding " + encoding + ", which is not read; save it as UTF-8.");
    }
    // A declaration that can be read byte by byte is not in UTF-16, whatever it says.
    return encoding.equals("utf-16") ? StandardCharsets.UTF_8 : Charset.forName(encoding);
  }
}
