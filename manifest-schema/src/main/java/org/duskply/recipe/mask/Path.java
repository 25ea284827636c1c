package org.duskply.recipe.mask;

import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;
import org.jspecify.annotations.Nullable;

/**
 * The inside of an outline written as SVG path data; curves are followed to within 0.01 px.
 *
 * @param data SVG 2 path data, all commands, absolute or relative; each subpath is closed by itself
 * @param rule what counts as inside where the outline crosses itself
 */
public record Path(String data, FillRule rule) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<Path> SHAPE =
      Shape.mapping(
              Path.class,
              "path",
              "The inside of an outline drawn with straight and curved lines.",
              Field.text("data", "SVG path data in quotes", Limits.TEXT, Path::fault)
                  .key("path")
                  .principal()
                  .says("SVG path data, positions in pixels of the grid.")
                  .example("\"M 2210 1450 L 2480 1440 C 2490 1500 2490 1600 2478 1660 Z\""),
              Field.word("rule", FillRule.values())
                  .byDefault(FillRule.NONZERO)
                  .says("What counts as inside where the outline crosses itself, as in SVG.")
                  .example("evenodd"))
          .example("path: \"M 2210 1450 L 2480 1440 C 2490 1500 2490 1600 2478 1660 Z\"");

  private static final int AROUND = 12;

  private static @Nullable Fault fault(String data) {
    try {
      PathData.parse(data);
      return null;
    } catch (PathSyntaxException e) {
      String found = around(data, e.index());
      String sentence =
          String.format(
              "the path cannot be followed at character %d (%s): %s",
              e.index() + 1, found, e.getMessage());
      return new Fault("", sentence, found, "SVG path data");
    }
  }

  /** What stands about an index of the data. */
  private static String around(String data, int index) {
    int from = Math.max(0, index - AROUND);
    int to = Math.min(data.length(), index + AROUND);
    return (from > 0 ? "…" : "") + data.substring(from, to) + (to < data.length() ? "…" : "");
  }
}
