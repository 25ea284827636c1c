package org.duskply.recipe;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.text.Tree;
import org.jspecify.annotations.Nullable;

/**
 * What a step's name depends on, of a record or of a text that may yet be wrong.
 *
 * @param id its id; absent: none
 * @param frame the frame that its verb names first; absent: none
 * @param members the steps of a group
 */
record StepOutline(@Nullable String id, @Nullable String frame, List<StepOutline> members) {
  private static final String GROUP = Group.SHAPE.key();
  private static final Alternatives<?> VERBS =
      ((Kind.Inlined) Step.SHAPE.inlined().orElseThrow().kind()).alternatives();

  /** Copies the list. */
  StepOutline {
    members = List.copyOf(members);
  }

  /** Outlines of steps. */
  static List<StepOutline> of(List<Step> steps) {
    return steps.stream().map(StepOutline::of).toList();
  }

  private static StepOutline of(Step step) {
    List<StepOutline> members = step.verb() instanceof Group group ? of(group.steps()) : List.of();
    return new StepOutline(step.id(), frame((Record) step.verb()), members);
  }

  private static <T extends Record> @Nullable String frame(T verb) {
    Shape<T> shape = Shape.of(verb);
    return frameField(shape).map(field -> (String) shape.get(verb, field)).orElse(null);
  }

  /** The field of a verb that names its frame: its principal one, if that names a frame. */
  private static Optional<Field> frameField(Shape<?> verb) {
    return verb.principal().filter(f -> f.kind().equals(new Kind.Mention(NameList.FRAMES)));
  }

  /** Outlines of a list of steps as it is written; none where there is no list. */
  static List<StepOutline> of(@Nullable Tree steps) {
    List<StepOutline> outlines = new ArrayList<>();
    if (steps instanceof Tree.Listing listing) {
      listing.members().forEach(step -> outlines.add(written(step)));
    }
    return outlines;
  }

  private static StepOutline written(Tree step) {
    if (!(step instanceof Tree.Mapping mapping)) {
      return new StepOutline(null, null, List.of());
    }
    String frame = null;
    for (Shape<?> verb : VERBS.shapes()) {
      if (frame == null && frameField(verb).isPresent()) {
        frame = scalar(mapping, verb.key());
      }
    }
    return new StepOutline(scalar(mapping, "id"), frame, of(value(mapping, GROUP)));
  }

  private static @Nullable String scalar(Tree.Mapping mapping, String key) {
    return value(mapping, key) instanceof Tree.Scalar scalar && !scalar.empty()
        ? scalar.text()
        : null;
  }

  private static @Nullable Tree value(Tree.Mapping mapping, String key) {
    Tree.Entry entry = mapping.entry(key);
    return entry == null ? null : entry.value();
  }
}
