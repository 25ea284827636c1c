package org.duskply.recipe.mask;

import java.util.List;
import org.duskply.recipe.FilePaths;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Values;
import org.jspecify.annotations.Nullable;

/**
 * The inside of shapes in an SVG drawing that is laid over the base. One member of {@code ids} is
 * the same as {@code id}, and kept there.
 *
 * @param file path of the drawing, from the recipe's folder
 * @param id id of the shape or group; absent: see {@code ids}
 * @param ids ids of several shapes or groups; empty without {@code id}: all shapes of the drawing
 * @param rule what counts as inside where an outline crosses itself; absent: what the drawing says
 */
public record Svg(String file, @Nullable String id, List<String> ids, @Nullable FillRule rule)
    implements MaskKind {
  private static final int LONGEST_ID = 256;

  private static final Kind ID =
      new Kind.Text("the id of a shape in the drawing", LONGEST_ID, id -> null);

  /** How a recipe writes it. */
  public static final Shape<Svg> SHAPE =
      Shape.mapping(
              Svg.class,
              "svg",
              "The inside of shapes in an SVG drawing that is laid over the base.",
              Field.of("file", new Kind.File(true, FilePaths::drawing))
                  .key("svg")
                  .principal()
                  .says("The drawing's file, from the recipe's folder.")
                  .example("masks/outlines.svg"),
              Field.of("id", ID)
                  .optional("all shapes, or those of `ids`")
                  .says("The id of one shape, or of a group for all shapes in it.")
                  .example("door"),
              Field.of("ids", new Kind.Items(ID, "id", 1, Limits.MEMBERS))
                  .byDefault(List.of())
                  .says("The ids of several shapes or groups.")
                  .example("[door, fanlight]"),
              Field.word("rule", FillRule.values())
                  .optional("what the drawing itself says")
                  .says("What counts as inside where an outline crosses itself, as in SVG.")
                  .example("evenodd"))
          .rules(new Rule(List.of("id", "ids"), Svg::faults))
          .example("svg: masks/outlines.svg, id: door");

  /** Copies the list; of one id makes {@code id}. */
  public Svg {
    if (id == null && ids.size() == 1) {
      id = ids.get(0);
      ids = List.of();
    }
    ids = List.copyOf(ids);
  }

  /** The ids that are asked for; empty for all shapes. */
  public List<String> wanted() {
    return id == null ? ids : List.of(id);
  }

  private static List<Fault> faults(Values values) {
    return values.get("id") != null && values.written("ids")
        ? List.of(
            new Fault(
                "ids",
                "`id` and `ids` say the same thing; keep one of them",
                "both",
                "one of them"))
        : List.of();
  }
}
