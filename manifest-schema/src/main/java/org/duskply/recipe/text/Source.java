package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.Place;

/**
 * A recipe's text by lines and columns. Lines end with LF, CR or both; columns count characters
 * (code points) from 1.
 */
public final class Source {
  private static final int WIDEST = 100;

  private final String name;
  private final String text;
  private final List<Integer> starts = new ArrayList<>();

  /**
   * A text, its line ends made uniform.
   *
   * @param name what the reader was given: a file's name
   */
  public Source(String name, String content) {
    this.name = name;
    this.text = content.replace("\r\n", "\n").replace('\r', '\n');
    starts.add(0);
    for (int i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) {
      starts.add(i + 1);
    }
  }

  /** What the reader was given. */
  public String name() {
    return name;
  }

  /** The whole text, lines ending with LF. */
  public String text() {
    return text;
  }

  /** The number of lines, a last one without line end included. */
  public int lines() {
    return starts.size();
  }

  /** A line without its end; counted from 1. */
  public String line(int line) {
    int from = start(line);
    int end = text.indexOf('\n', from);
    return text.substring(from, end < 0 ? text.length() : end);
  }

  /** Index in the text where a line begins. */
  public int start(int line) {
    return starts.get(Math.min(Math.max(line, 1), starts.size()) - 1);
  }

  /** The line and column of an index into the text. */
  public Spot spot(int index) {
    int low = 0;
    int high = starts.size() - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (starts.get(middle) <= index) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    int from = starts.get(low);
    return new Spot(low + 1, text.codePointCount(from, Math.min(index, text.length())) + 1);
  }

  /** The place of a spot in this text. */
  public Place place(Spot spot) {
    return new Place(name, spot.line(), spot.column());
  }

  /** The line of a spot and a caret below the column; a long line is cut around it. */
  public String snippet(int line, int column) {
    String whole = line(line);
    int length = whole.codePointCount(0, whole.length());
    int caret = Math.min(Math.max(column - 1, 0), length);
    int from = Math.max(0, Math.min(caret - WIDEST / 2, length - WIDEST));
    int to = Math.min(length, from + WIDEST);
    int begin = whole.offsetByCodePoints(0, from);
    int end = whole.offsetByCodePoints(begin, to - from);
    int[] shown = whole.substring(begin, end).codePoints().map(Source::visible).toArray();
    String before = from > 0 ? "…" : "";
    return String.format("%5d | ", line)
        + before
        + new String(shown, 0, shown.length)
        + (to < length ? "…" : "")
        + "\n      | "
        + " ".repeat(before.length() + caret - from)
        + "^";
  }

  private static int visible(int codePoint) {
    return Character.isISOControl(codePoint) ? ' ' : codePoint;
  }
}
