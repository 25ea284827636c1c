package org.duskply.engine.command;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.duskply.engine.View;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the scale of a preview, {@code 1/4}; {@code 1} and {@code 1/1} are full size. */
final class Scale implements ITypeConverter<Integer> {
  private static final Pattern FRACTION = Pattern.compile("1(?:/(\\d{1,3}))?");

  @Override
  public Integer convert(String text) {
    Matcher m = FRACTION.matcher(text);
    int n = !m.matches() ? 0 : m.group(1) == null ? 1 : Integer.parseInt(m.group(1));
    if (n < 1 || n > View.MOST_REDUCTION) {
      throw new TypeConversionException(
          "'" + text + "' is no scale; write 1/2, 1/4 … 1/" + View.MOST_REDUCTION);
    }
    return n;
  }
}
