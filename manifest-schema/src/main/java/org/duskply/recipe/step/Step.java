package org.duskply.recipe.step;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.duskply.recipe.Limits;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Shape;
import org.jspecify.annotations.Nullable;

/**
 * One step: what is done, and the keys that every step may have.
 *
 * @param id name for references; absent: see {@code StepNames}
 * @param title for people
 * @param notes for people
 * @param mask where the step shows; absent: everywhere
 * @param opacity 0 to 1
 * @param skip whether the step is left out
 * @param verb what is done
 * @param extensions the user's own {@code x-} keys
 */
public record Step(
    @Nullable String id,
    @Nullable String title,
    @Nullable String notes,
    @Nullable MaskUse mask,
    double opacity,
    boolean skip,
    Verb verb,
    Map<String, Object> extensions) {
  /** How a recipe writes it. */
  public static final Shape<Step> SHAPE =
      Shape.mapping(
              Step.class,
              "step",
              "One thing done to the picture below: exactly one verb, and keys that every step may"
                  + " have.",
              Field.of("id", new Kind.NewName(NameList.STEPS))
                  .optional("the frame's name while one step alone uses it, else the place: #7")
                  .says("A name to refer to the step by, unique in the whole recipe.")
                  .example("flashes"),
              Field.text("title", Limits.TITLE)
                  .optional()
                  .forPeople()
                  .says("What the step is called, for people.")
                  .example("\"Flash on the hull\""),
              Field.text("notes", Limits.TEXT)
                  .optional()
                  .forPeople()
                  .says("The photographer's own words.")
                  .example("\"retake if the rope shows\""),
              Field.of("mask", MaskUse.KIND)
                  .optional("everywhere")
                  .says("Where the step shows.")
                  .example("hull"),
              Field.number("opacity")
                  .from(0)
                  .to(1)
                  .byDefault(1.0)
                  .says("How much of the step shows.")
                  .example("0.85"),
              Field.flag("skip").says("Leaves the step out.").example("true"),
              Field.of(
                      "verb",
                      new Kind.Inlined(
                          Alternatives.one(Verb.class, "verb", "make a step of its own for each")))
                  .says("What is done."),
              Field.extensions())
          .identity(Step::idle)
          .reserves(
              "light", "copy", "mend", "spots", "glow", "sharpen", "local-contrast", "denoise")
          .example("{ pop: pop-hull, mask: hull, opacity: 0.85 }");

  private boolean idle() {
    return skip || opacity == 0 || Shape.isIdentityOf(verb);
  }

  /** Copies the map. */
  public Step {
    extensions = Collections.unmodifiableMap(new LinkedHashMap<>(extensions));
  }

  /** The same under an id. */
  public Step withId(String newId) {
    return new Step(newId, title, notes, mask, opacity, skip, verb, extensions);
  }

  /** The same with another verb. */
  public Step withVerb(Verb newVerb) {
    return new Step(id, title, notes, mask, opacity, skip, newVerb, extensions);
  }

  /** The same, left out. */
  public Step skipped() {
    return new Step(id, title, notes, mask, opacity, true, verb, extensions);
  }
}
