package org.duskply.engine.command;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.text.Normalizer;
import java.util.Map;

/**
 * Writes text so that it can be read in a charset with few signs: one that the charset lacks is
 * written in plain letters ({@code 3 x 2} for {@code 3 × 2}), without its accent, or as a question
 * mark. A charset that has every sign changes nothing.
 */
final class PlainLetters extends FilterWriter {
  private static final Map<Character, String> PLAIN =
      Map.ofEntries(
          Map.entry('×', "x"),
          Map.entry('·', "*"),
          Map.entry('−', "-"),
          Map.entry('–', "-"),
          Map.entry('—', "-"),
          Map.entry('→', "->"),
          Map.entry('…', "..."),
          Map.entry('′', "'"),
          Map.entry('’', "'"),
          Map.entry('“', "\""),
          Map.entry('”', "\""),
          Map.entry('°', " degrees"),
          Map.entry('√', "sqrt "),
          Map.entry('½', "1/2"),
          Map.entry('²', "^2"),
          Map.entry('≤', "<="),
          Map.entry('≥', ">="),
          Map.entry('\u00a0', " "));

  private final CharsetEncoder encoder;

  PlainLetters(Writer out, Charset charset) {
    super(out);
    this.encoder = charset.newEncoder();
  }

  @Override
  public void write(int c) throws IOException {
    write(String.valueOf((char) c), 0, 1);
  }

  @Override
  public void write(char[] buffer, int offset, int length) throws IOException {
    write(new String(buffer, offset, length), 0, length);
  }

  @Override
  public void write(String text, int offset, int length) throws IOException {
    String part = text.substring(offset, offset + length);
    out.write(encoder.canEncode(part) ? part : plain(part));
  }

  private String plain(String text) {
    StringBuilder plain = new StringBuilder();
    text.codePoints().forEach(c -> plain.append(plainSign(Character.toString(c))));
    return plain.toString();
  }

  private String plainSign(String sign) {
    if (encoder.canEncode(sign)) {
      return sign;
    }
    String known = PLAIN.get(sign.charAt(0));
    String bare = known != null ? known : Normalizer.normalize(sign, Normalizer.Form.NFD);
    String first = known != null ? known : bare.substring(0, 1);
    return encoder.canEncode(first) ? first : "?";
  }
}
