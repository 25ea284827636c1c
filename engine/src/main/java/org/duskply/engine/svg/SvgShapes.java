package org.duskply.engine.svg;

import java.util.List;
import java.util.Locale;
import org.duskply.recipe.mask.PathData;
import org.duskply.recipe.mask.PathSegment;
import org.duskply.recipe.mask.PathSegment.Arc;
import org.duskply.recipe.mask.PathSegment.Close;
import org.duskply.recipe.mask.PathSegment.Line;
import org.duskply.recipe.mask.PathSegment.Move;
import org.duskply.recipe.mask.PathSyntaxException;
import org.duskply.recipe.mask.Point;
import org.jspecify.annotations.Nullable;

/**
 * The outline of a {@code path polygon polyline rect circle ellipse} in its own coordinates.
 *
 * <p>Source: SVG 2, chapters Basic Shapes ("equivalent path" of each) and Paths.
 */
final class SvgShapes {
  private final String file;
  private final double width;
  private final double height;

  /**
   * Shapes of a file.
   *
   * @param width what 100 % is across
   * @param height what 100 % is down
   */
  SvgShapes(String file, double width, double height) {
    this.file = file;
    this.width = width;
    this.height = height;
  }

  static boolean isShape(SvgElement element) {
    return element.is("path", "polygon", "polyline", "rect", "circle", "ellipse");
  }

  /** The outline; empty where the element draws nothing. */
  List<PathSegment> outline(SvgElement element) {
    return switch (element.name()) {
      case "path" -> path(element, element.attribute("d"), "");
      case "polygon", "polyline" -> points(element);
      case "rect" -> rectangle(element);
      default -> round(element);
    };
  }

  private List<PathSegment> path(SvgElement element, @Nullable String data, String before) {
    if (data == null || data.isBlank() || data.strip().equals("none")) {
      return List.of();
    }
    try {
      return PathData.parse(before + data);
    } catch (PathSyntaxException e) {
      throw new DrawingException(
          String.format(
              Locale.ROOT,
              "the outline of %s in %s cannot be followed at character %d: %s",
              element.shown(),
              file,
              Math.max(0, e.index() - before.length()) + 1,
              e.getMessage()));
    }
  }

  /** A list of points is what a path's first command takes. */
  private List<PathSegment> points(SvgElement element) {
    String points = element.attribute("points");
    boolean letters =
        points != null
            && points.chars().anyMatch(c -> Character.isLetter(c) && c != 'e' && c != 'E');
    if (letters) {
      throw unreadable(element, "points");
    }
    return path(element, points, "M");
  }

  private List<PathSegment> rectangle(SvgElement e) {
    double x = length(e, "x", width, 0);
    double y = length(e, "y", height, 0);
    double w = length(e, "width", width, 0);
    double h = length(e, "height", height, 0);
    if (!(w > 0 && h > 0)) {
      return List.of();
    }
    double across = radius(e, "rx", width, "ry", height);
    double down = radius(e, "ry", height, "rx", width);
    double rx = Math.min(across, w / 2);
    double ry = Math.min(down, h / 2);
    if (!(rx > 0 && ry > 0)) {
      return List.of(
          new Move(new Point(x, y)),
          new Line(new Point(x + w, y)),
          new Line(new Point(x + w, y + h)),
          new Line(new Point(x, y + h)),
          new Close());
    }
    return List.of(
        new Move(new Point(x + rx, y)),
        new Line(new Point(x + w - rx, y)),
        arc(rx, ry, x + w, y + ry),
        new Line(new Point(x + w, y + h - ry)),
        arc(rx, ry, x + w - rx, y + h),
        new Line(new Point(x + rx, y + h)),
        arc(rx, ry, x, y + h - ry),
        new Line(new Point(x, y + ry)),
        arc(rx, ry, x + rx, y),
        new Close());
  }

  /** A radius; one that is not given, or auto, is the other one's length. */
  private double radius(SvgElement e, String own, double whole, String other, double otherWhole) {
    String text = e.attribute(own);
    boolean given = text != null && !text.strip().equals("auto");
    return given ? length(e, own, whole, 0) : length(e, other, otherWhole, 0);
  }

  private List<PathSegment> round(SvgElement e) {
    double x = length(e, "cx", width, 0);
    double y = length(e, "cy", height, 0);
    boolean circle = e.is("circle");
    double diagonal = Math.sqrt((width * width + height * height) / 2);
    double rx = circle ? length(e, "r", diagonal, 0) : radius(e, "rx", width, "ry", height);
    double ry = circle ? rx : radius(e, "ry", height, "rx", width);
    if (!(rx > 0 && ry > 0)) {
      return List.of();
    }
    return List.of(
        new Move(new Point(x + rx, y)),
        arc(rx, ry, x - rx, y),
        arc(rx, ry, x + rx, y),
        new Close());
  }

  private static Arc arc(double rx, double ry, double x, double y) {
    return new Arc(rx, ry, 0, false, true, new Point(x, y));
  }

  /** A length in user units; {@code missing} where it is not given. */
  double length(SvgElement element, String attribute, double whole, double missing) {
    String text = element.attribute(attribute);
    if (text == null || text.strip().equals("auto")) {
      return missing;
    }
    Double length = SvgLength.parse(text, whole);
    if (length == null || !(Math.abs(length) <= PathData.FARTHEST)) {
      throw unreadable(element, attribute);
    }
    return length;
  }

  DrawingException unreadable(SvgElement element, String attribute) {
    String value = element.attribute(attribute);
    return new DrawingException(
        String.format(
            Locale.ROOT,
            "the `%s` of %s in %s cannot be read: \"%s\"",
            attribute,
            element.shown(),
            file,
            SvgWords.quoted(value == null ? "" : value)));
  }
}
