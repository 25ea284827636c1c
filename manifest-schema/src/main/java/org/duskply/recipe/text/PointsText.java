package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The short form of a list of points: {@code "1210,2204 1633,2190 1702,2410"}. */
final class PointsText {
  private PointsText() {}

  /** Whether a scalar is a try at it: anything in quotes, or bare text with a comma. */
  static boolean meant(Tree.Scalar scalar) {
    return scalar.form() == Tree.Form.TEXT || (!scalar.empty() && scalar.text().indexOf(',') > 0);
  }

  /** The same as a list of rows, each at the spot of the text; null after a problem. */
  static Tree.@Nullable Listing listing(Tree.Scalar scalar, Problems problems, String path) {
    List<Tree> rows = new ArrayList<>();
    for (String point : scalar.text().strip().split("\\s+", -1)) {
      String[] numbers = point.split(",", -1);
      if (numbers.length != 2
          || !NumberText.matches(numbers[0])
          || !NumberText.matches(numbers[1])) {
        problems.add(
            scalar.spot(),
            path,
            String.format(
                "point %d is %s; points are written x,y with a space between them:"
                    + " \"1210,2204 1633.5,2190\"",
                rows.size() + 1, Words.quoted(point)),
            point,
            "x,y");
        return null;
      }
      rows.add(
          new Tree.Listing(
              scalar.spot(), List.of(bare(scalar, numbers[0]), bare(scalar, numbers[1]))));
    }
    return new Tree.Listing(scalar.spot(), List.copyOf(rows));
  }

  private static Tree bare(Tree.Scalar scalar, String number) {
    return new Tree.Scalar(scalar.spot(), number, Tree.Form.BARE);
  }
}
