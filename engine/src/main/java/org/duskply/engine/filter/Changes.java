package org.duskply.engine.filter;

import java.util.Arrays;

/**
 * Where lines differ from their neighbours: of each line, the first and the last place at which it
 * has other bits than the line before. For one thread.
 */
final class Changes {
  private final int[] first;
  private final int[] end;
  private int from;
  private int to;

  /** Compares the first {@code count} lines, each in its first {@code length} samples. */
  Changes(float[][] lines, int count, int length) {
    first = new int[count];
    end = new int[count];
    for (int i = 1; i < count; i++) {
      int differs = Arrays.mismatch(lines[i - 1], 0, length, lines[i], 0, length);
      first[i] = differs < 0 ? length : differs;
      end[i] = differs < 0 ? 0 : end(lines[i - 1], lines[i], length);
    }
    first[0] = length;
  }

  /** One past the last place where two lines differ, which they do. */
  private static int end(float[] a, float[] b, int length) {
    int i = length - 1;
    while (Float.floatToRawIntBits(a[i]) == Float.floatToRawIntBits(b[i])) {
      i--;
    }
    return i + 1;
  }

  /** Looks at lines {@code above} to {@code below}, both of them included. */
  void among(int above, int below) {
    from = first[0];
    to = 0;
    for (int i = above + 1; i <= below; i++) {
      from = Math.min(from, first[i]);
      to = Math.max(to, end[i]);
    }
  }

  /** Before this place all the lines last looked at are the same; their length if they are. */
  int from() {
    return from;
  }

  /** From this place on all the lines last looked at are the same; 0 if they are. */
  int to() {
    return to;
  }
}
