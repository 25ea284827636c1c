package org.duskply.recipe.mask;

import java.util.ArrayList;
import java.util.List;

/**
 * SVG 2 path data, read into absolute segments: all commands, absolute and relative, repeated
 * without their letter, smooth curves, arc flags without separators. Unlike a browser, which draws
 * what stands before a mistake, it refuses the whole path at the first one.
 *
 * <p>Source: SVG 2, chapter Paths, "The grammar for path data".
 */
public final class PathData {
  /** The most segments that a path may have. */
  public static final int MAX_SEGMENTS = 100_000;

  /** The farthest from 0 that a coordinate or a radius may lie, in pixels of the grid. */
  public static final double FARTHEST = 1e6;

  static final String TOO_FAR = "A path may not reach farther than 1,000,000 pixels from the grid.";

  private static final String BEGINNING = "M and a position at the start of a path";

  private final PathScanner scan;
  private final List<PathSegment> segments = new ArrayList<>();

  private double x;
  private double y;
  private double startX;
  private double startY;
  // The last control point while the last segment was a curve of that kind, else where it ended.
  private double cubicX;
  private double cubicY;
  private double quadraticX;
  private double quadraticY;

  private PathData(String text) {
    scan = new PathScanner(text);
  }

  /**
   * Reads path data.
   *
   * @param text at least one subpath, beginning with M or m
   * @return the segments in order, the first a {@link PathSegment.Move}; not modifiable
   * @throws PathSyntaxException where the data departs from the grammar, has more than {@link
   *     #MAX_SEGMENTS} segments, or reaches beyond {@link #FARTHEST}
   */
  public static List<PathSegment> parse(String text) {
    return new PathData(text).read();
  }

  private List<PathSegment> read() {
    scan.skipSpace();
    while (!scan.ended()) {
      command();
      scan.skipSpace();
    }
    if (segments.isEmpty()) {
      throw scan.missing(BEGINNING);
    }
    return List.copyOf(segments);
  }

  /** One command letter with all the repeats of its numbers. */
  private void command() {
    char letter = scan.peek();
    if (segments.isEmpty() && letter != 'M' && letter != 'm') {
      throw scan.missing(BEGINNING);
    }
    if ("MmZzLlHhVvCcSsQqTtAa".indexOf(letter) < 0) {
      throw scan.missing("a path command (M L H V C S Q T A Z)");
    }
    scan.take();
    if (letter == 'Z' || letter == 'z') {
      close();
      return;
    }
    scan.skipSpace();
    char repeated = letter;
    boolean more;
    do {
      segment(repeated);
      repeated = letter == 'M' ? 'L' : letter == 'm' ? 'l' : letter;
      boolean comma = scan.skipSeparator();
      more = scan.startsNumber();
      if (comma && !more) {
        throw scan.missing("a number after the comma");
      }
    } while (more);
  }

  private void segment(char letter) {
    boolean relative = letter >= 'a';
    double fromX = relative ? x : 0;
    double fromY = relative ? y : 0;
    switch (letter) {
      case 'M', 'm' -> move(fromX + first("x"), fromY + next("y"));
      case 'L', 'l' -> line(fromX + first("x"), fromY + next("y"));
      case 'H', 'h' -> line(fromX + first("x"), y);
      case 'V', 'v' -> line(x, fromY + first("y"));
      case 'C', 'c' -> {
        Point one = new Point(fromX + first("x1"), fromY + next("y1"));
        cubic(one, fromX + next("x2"), fromY + next("y2"), fromX + next("x"), fromY + next("y"));
      }
      case 'S', 's' -> {
        Point one = new Point(2 * x - cubicX, 2 * y - cubicY);
        cubic(one, fromX + first("x2"), fromY + next("y2"), fromX + next("x"), fromY + next("y"));
      }
      case 'Q', 'q' ->
          quadratic(fromX + first("x1"), fromY + next("y1"), fromX + next("x"), fromY + next("y"));
      case 'T', 't' ->
          quadratic(2 * x - quadraticX, 2 * y - quadraticY, fromX + first("x"), fromY + next("y"));
      default -> arc(fromX, fromY);
    }
  }

  private double first(String name) {
    return scan.number(name);
  }

  private double next(String name) {
    scan.skipSeparator();
    return scan.number(name);
  }

  private void move(double toX, double toY) {
    add(new PathSegment.Move(new Point(toX, toY)));
    startX = toX;
    startY = toY;
    arrive(toX, toY);
  }

  private void line(double toX, double toY) {
    add(new PathSegment.Line(new Point(toX, toY)));
    arrive(toX, toY);
  }

  private void cubic(Point one, double twoX, double twoY, double toX, double toY) {
    check(one.x(), one.y());
    check(twoX, twoY);
    add(new PathSegment.Cubic(one, new Point(twoX, twoY), new Point(toX, toY)));
    arrive(toX, toY);
    cubicX = twoX;
    cubicY = twoY;
  }

  private void quadratic(double controlX, double controlY, double toX, double toY) {
    check(controlX, controlY);
    add(new PathSegment.Quadratic(new Point(controlX, controlY), new Point(toX, toY)));
    arrive(toX, toY);
    quadraticX = controlX;
    quadraticY = controlY;
  }

  private void arc(double fromX, double fromY) {
    double across = Math.abs(first("the radius across"));
    double down = Math.abs(next("the radius down"));
    double turn = next("the turn of the ellipse");
    scan.skipSeparator();
    boolean large = scan.flag("the large-arc flag");
    scan.skipSeparator();
    boolean clockwise = scan.flag("the sweep flag");
    double toX = fromX + next("x");
    double toY = fromY + next("y");
    add(new PathSegment.Arc(across, down, turn, large, clockwise, new Point(toX, toY)));
    arrive(toX, toY);
  }

  private void close() {
    add(new PathSegment.Close());
    arrive(startX, startY);
  }

  private void add(PathSegment segment) {
    if (segments.size() == MAX_SEGMENTS) {
      throw new PathSyntaxException(
          scan.at(), "A path may have at most 100,000 segments, and this one goes on.");
    }
    segments.add(segment);
  }

  private void arrive(double toX, double toY) {
    check(toX, toY);
    x = toX;
    y = toY;
    cubicX = toX;
    cubicY = toY;
    quadraticX = toX;
    quadraticY = toY;
  }

  private void check(double atX, double atY) {
    if (Math.abs(atX) > FARTHEST || Math.abs(atY) > FARTHEST) {
      throw new PathSyntaxException(scan.at(), TOO_FAR);
    }
  }
}
