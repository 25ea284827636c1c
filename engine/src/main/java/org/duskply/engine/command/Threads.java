package org.duskply.engine.command;

import java.util.regex.Pattern;
import org.duskply.engine.Engine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a number of threads. */
final class Threads implements ITypeConverter<Integer> {
  private static final Pattern NUMBER = Pattern.compile("\\d{1,9}");

  @Override
  public Integer convert(String text) {
    int threads = NUMBER.matcher(text).matches() ? Integer.parseInt(text) : 0;
    if (threads < 1 || threads > Engine.Builder.MOST_THREADS) {
      throw new TypeConversionException(
          "'" + text + "' is no number of threads; write 1 to " + Engine.Builder.MOST_THREADS);
    }
    return threads;
  }
}
