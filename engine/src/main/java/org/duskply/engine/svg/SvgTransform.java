package org.duskply.engine.svg;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.duskply.engine.pixel.Affine;
import org.jspecify.annotations.Nullable;

/**
 * A {@code transform} attribute: a list of {@code matrix translate scale rotate skewX skewY}, each
 * done before the one that stands left of it.
 *
 * <p>Source: CSS Transforms Module Level 1, "Syntax of the SVG transform attribute".
 */
final class SvgTransform {
  private static final Pattern FUNCTION =
      Pattern.compile("[\\s,]*+([a-zA-Z]++)\\s*+\\(([^()]*+)\\)[\\s,]*+");

  private SvgTransform() {}

  /** The map of a list; null where the list cannot be read. */
  static @Nullable Affine parse(String text) {
    if (text.isBlank() || text.strip().equals("none")) {
      return Affine.IDENTITY;
    }
    Affine all = Affine.IDENTITY;
    Matcher function = FUNCTION.matcher(text);
    int at = 0;
    for (int count = 0; at < text.length(); count++) {
      if (count == SvgLimits.TRANSFORMS || !function.find(at) || function.start() != at) {
        return null;
      }
      List<Double> numbers = SvgNumbers.list(function.group(2), 6);
      Affine one = numbers == null ? null : one(function.group(1), numbers);
      if (one == null) {
        return null;
      }
      all = all.times(one);
      at = function.end();
    }
    return all;
  }

  private static @Nullable Affine one(String name, List<Double> n) {
    int count = n.size();
    return switch (name) {
      case "matrix" ->
          count == 6
              ? new Affine(n.get(0), n.get(1), n.get(2), n.get(3), n.get(4), n.get(5))
              : null;
      case "translate" ->
          count == 1 || count == 2 ? Affine.translation(n.get(0), count == 2 ? n.get(1) : 0) : null;
      case "scale" -> count == 1 || count == 2 ? Affine.scaling(n.get(0), n.get(count - 1)) : null;
      case "rotate" -> rotation(n);
      case "skewX" -> count == 1 ? new Affine(1, 0, tan(n.get(0)), 1, 0, 0) : null;
      case "skewY" -> count == 1 ? new Affine(1, tan(n.get(0)), 0, 1, 0, 0) : null;
      default -> null;
    };
  }

  private static @Nullable Affine rotation(List<Double> n) {
    if (n.size() == 1) {
      return Affine.rotation(n.get(0));
    }
    return n.size() == 3
        ? Affine.translation(n.get(1), n.get(2))
            .times(Affine.rotation(n.get(0)))
            .times(Affine.translation(-n.get(1), -n.get(2)))
        : null;
  }

  private static double tan(double degrees) {
    return StrictMath.tan(StrictMath.toRadians(degrees % 180));
  }
}
