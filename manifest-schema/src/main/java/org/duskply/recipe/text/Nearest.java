package org.duskply.recipe.text;

import java.util.Collection;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Finds the known name that a mistyped one was probably meant to be. */
public final class Nearest {
  private static final int LONGEST = 64;

  private Nearest() {}

  /**
   * The known name with the fewest slips from {@code name}: a letter too many, too few, another one
   * or two swapped. A third of the letters may differ, two in a short name; capital letters make no
   * difference; among equals the first wins. Where none is that near, the one of which {@code name}
   * is a part between hyphens; null where there is none, or more than one.
   */
  public static @Nullable String among(Collection<String> known, String name) {
    if (name.isEmpty() || name.length() > LONGEST) {
      return null;
    }
    String best = null;
    String lower = name.toLowerCase(Locale.ROOT);
    int least = Math.max(name.length() < 4 ? 1 : 2, name.length() / 3) + 1;
    for (String candidate : known) {
      int slips =
          candidate.length() > LONGEST ? LONGEST : slips(lower, candidate.toLowerCase(Locale.ROOT));
      if (slips < least && slips < Math.max(name.length(), candidate.length())) {
        least = slips;
        best = candidate;
      }
    }
    return best != null ? best : whole(known, lower);
  }

  private static @Nullable String whole(Collection<String> known, String part) {
    String whole = null;
    for (String candidate : known) {
      if (("-" + candidate + "-").contains("-" + part + "-")) {
        if (whole != null) {
          return null;
        }
        whole = candidate;
      }
    }
    return whole;
  }

  /** Optimal string alignment distance (Damerau 1964, each pair swapped at most once). */
  static int slips(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        d[i][j] = i == 0 || j == 0 ? i + j : fewest(d, a, b, i, j);
      }
    }
    return d[a.length()][b.length()];
  }

  private static int fewest(int[][] d, String a, String b, int i, int j) {
    int other = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
    int fewest = Math.min(d[i - 1][j - 1] + other, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
    if (i > 1
        && j > 1
        && a.charAt(i - 1) == b.charAt(j - 2)
        && a.charAt(i - 2) == b.charAt(j - 1)) {
      fewest = Math.min(fewest, d[i - 2][j - 2] + 1);
    }
    return fewest;
  }
}
