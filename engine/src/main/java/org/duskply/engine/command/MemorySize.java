package org.duskply.engine.command;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads {@code 800m}, {@code 2g}, {@code 500000k} or a bare number of bytes. */
final class MemorySize implements ITypeConverter<Long> {
  // Twelve digits and a g stay below 2^70; those that pass 2^63 are refused with the rest.
  private static final Pattern SIZE = Pattern.compile("(\\d{1,12})([kKmMgG]?)");

  @Override
  public Long convert(String text) {
    Matcher m = SIZE.matcher(text);
    long bytes = m.matches() ? bytes(Long.parseLong(m.group(1)), m.group(2)) : 0;
    if (bytes <= 0) {
      throw new TypeConversionException("'" + text + "' is no size; write 800m or 2g");
    }
    return bytes;
  }

  /** So many units in bytes; 0 where a long does not hold them. */
  private static long bytes(long count, String unit) {
    int shift =
        switch (unit) {
          case "k", "K" -> 10;
          case "m", "M" -> 20;
          case "g", "G" -> 30;
          default -> 0;
        };
    return count > Long.MAX_VALUE >> shift ? 0 : count << shift;
  }
}
