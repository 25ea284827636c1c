package org.duskply.engine.command;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads {@code 800m}, {@code 2g}, {@code 500000k} or a bare number of bytes. */
final class MemorySize implements ITypeConverter<Long> {
  private static final Pattern SIZE = Pattern.compile("(\\d{1,12})([kKmMgG]?)");

  @Override
  public Long convert(String text) {
    Matcher m = SIZE.matcher(text);
    if (!m.matches() || Long.parseLong(m.group(1)) == 0) {
      throw new TypeConversionException("'" + text + "' is no size; write 800m or 2g");
    }
    int shift =
        switch (m.group(2)) {
          case "k", "K" -> 10;
          case "m", "M" -> 20;
          case "g", "G" -> 30;
          default -> 0;
        };
    return Long.parseLong(m.group(1)) << shift;
  }
}
