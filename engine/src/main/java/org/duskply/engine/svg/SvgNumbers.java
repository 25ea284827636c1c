package org.duskply.engine.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Lists of numbers, apart by spaces or a comma. */
final class SvgNumbers {
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(?:[0-9]++(?:\\.[0-9]*+)?|\\.[0-9]++)(?:[eE][+-]?[0-9]++)?");
  private static final Pattern APART = Pattern.compile("[ \\t\\r\\n\\f]*+,?[ \\t\\r\\n\\f]*+");

  private SvgNumbers() {}

  /** The numbers of a text; null where it is anything but a list of at most {@code most}. */
  static @Nullable List<Double> list(String text, int most) {
    String list = text.strip();
    List<Double> numbers = new ArrayList<>();
    Matcher number = NUMBER.matcher(list);
    Matcher apart = APART.matcher(list);
    int at = 0;
    while (at < list.length()) {
      if (numbers.size() == most || !number.find(at) || number.start() != at) {
        return null;
      }
      numbers.add(Double.parseDouble(number.group()));
      at = number.end();
      boolean more = apart.find(at) && apart.start() == at && apart.end() > at;
      if (more) {
        at = apart.end();
        if (at == list.length()) {
          return null; // A comma with nothing after it.
        }
      }
    }
    return numbers;
  }

  /** One number alone; null where the text is anything else. */
  static @Nullable Double one(String text) {
    List<Double> numbers = list(text, 1);
    return numbers == null || numbers.size() != 1 ? null : numbers.get(0);
  }
}
