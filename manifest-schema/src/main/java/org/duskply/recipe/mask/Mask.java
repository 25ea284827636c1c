package org.duskply.recipe.mask;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;
import org.duskply.recipe.shape.Values;
import org.jspecify.annotations.Nullable;

/**
 * A mask: one kind, then in this order {@code within} (times), {@code except} (times one minus),
 * {@code widen}, {@code feather}, {@code inverted}, {@code strength}.
 *
 * @param kind what the mask starts from; absent: everywhere
 * @param within masks that it is multiplied by
 * @param except masks that it is multiplied by the rest of
 * @param widen pixels of the grid by which its outline is moved outward, inward below 0; of
 *     outlines alone
 * @param feather radius of the Gaussian that softens it, in pixels of the grid; σ is half of it
 * @param inverted whether the result is taken from one
 * @param strength factor of the result, 0 to 1
 * @param extensions the user's own {@code x-} keys
 */
public record Mask(
    @Nullable MaskKind kind,
    List<MaskUse> within,
    List<MaskUse> except,
    double widen,
    double feather,
    boolean inverted,
    double strength,
    Map<String, Object> extensions) {
  /** How a recipe writes it. */
  public static final Shape<Mask> SHAPE =
      Shape.mapping(
              Mask.class,
              "mask",
              "Where something shows: 1 fully, 0 not at all. One kind, or none for everywhere; the"
                  + " other keys act on it in the order in which they stand here.",
              Field.of(
                      "kind",
                      new Kind.Inlined(
                          Alternatives.oneOrNone(
                              MaskKind.class,
                              "kind",
                              "keep one, and put the other under within: [ { … } ] to have only"
                                  + " what lies in both")))
                  .optional("everywhere")
                  .says("What the mask starts from."),
              Field.of("within", MaskUse.LIST)
                  .byDefault(List.of())
                  .says("Only inside these masks: multiplied by each of them.")
                  .example("[pontoon]"),
              Field.of("except", MaskUse.LIST)
                  .byDefault(List.of())
                  .says("Not inside these masks: multiplied by what each leaves.")
                  .example("[mast, willow]"),
              Field.number("widen")
                  .from(-500)
                  .to(500)
                  .in(Unit.PIXELS)
                  .byDefault(0.0)
                  .says(
                      "Moves the outline outward by so much, inward below 0. For polygon, path,"
                          + " ellipse, svg, and any-of and all-of of them.")
                  .example("-3"),
              Field.number("feather")
                  .from(0)
                  .to(2000)
                  .in(Unit.PIXELS)
                  .byDefault(0.0)
                  .says("Radius of the soft edge: a Gaussian, its sigma half of it.")
                  .example("24"),
              Field.flag("inverted").says("Turns the mask inside out.").example("true"),
              Field.number("strength")
                  .from(0)
                  .to(1)
                  .byDefault(1.0)
                  .says("Factor of the whole mask.")
                  .example("0.6"),
              Field.extensions())
          .rules(new Rule(List.of("kind", "within", "except", "widen"), Mask::faults))
          .reserves("follow-edges")
          .example("hull: { polygon: \"1210,2204 1633,2190 1702,2410\", feather: 24 }");

  /** All masks that it is made of: its kind's members, those it is within, those it leaves out. */
  public List<MaskUse> parts() {
    List<MaskUse> parts = new ArrayList<>(kind == null ? List.of() : kind.members());
    parts.addAll(within);
    parts.addAll(except);
    return parts;
  }

  /** Copies lists and map. */
  public Mask {
    within = List.copyOf(within);
    except = List.copyOf(except);
    extensions = Collections.unmodifiableMap(new LinkedHashMap<>(extensions));
  }

  /** Looks at what the mask itself holds; masks that it names are looked at in the recipe. */
  private static List<Fault> faults(Values values) {
    Fault fault =
        new Outlines(Map.of())
            .fault(
                values.get("widen", Double.class),
                (MaskKind) values.get("kind"),
                uses(values, "within"),
                uses(values, "except"));
    return fault == null ? List.of() : List.of(fault);
  }

  @SuppressWarnings("unchecked") // the field's kind makes nothing else
  private static List<MaskUse> uses(Values values, String component) {
    return (List<MaskUse>) values.get(component, List.class);
  }
}
