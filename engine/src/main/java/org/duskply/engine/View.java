package org.duskply.engine;

import org.jspecify.annotations.Nullable;

/**
 * Which part of a recipe's picture is looked at, and how large. Step names are those of {@code
 * StepNames}: ids, frame names, or places such as {@code #7} and {@code water/#2}.
 *
 * @param reduction the {@code n} of a preview's scale {@code 1/n}; 1 is full size, 64 the most
 * @param only this step alone over the base, with the groups around it; absent: all
 * @param skip this step left out; absent: none
 * @param until this step is the last; absent: all
 * @param alternate this alternate of the recipe alone; absent: the picture is the recipe as it
 *     stands, and each deliverable is made of the alternates that it names
 */
public record View(
    int reduction,
    @Nullable String only,
    @Nullable String skip,
    @Nullable String until,
    @Nullable String alternate) {
  /** The whole picture at full size. */
  public static final View WHOLE = new View(1, null, null, null, null);

  /** Largest {@link #reduction}. */
  public static final int MOST_REDUCTION = 64;

  public View {
    if (reduction < 1 || reduction > MOST_REDUCTION) {
      throw new DuskplyException(
          "The scale 1/" + reduction + " cannot be made; 1/1 to 1/" + MOST_REDUCTION + " can.");
    }
  }

  /** This view at the scale {@code 1/n}. */
  public View reducedBy(int n) {
    return new View(n, only, skip, until, alternate);
  }

  /** This view with one step alone. */
  public View only(@Nullable String step) {
    return new View(reduction, step, skip, until, alternate);
  }

  /** This view without one step. */
  public View skipping(@Nullable String step) {
    return new View(reduction, only, step, until, alternate);
  }

  /** This view up to one step. */
  public View until(@Nullable String step) {
    return new View(reduction, only, skip, step, alternate);
  }

  /** This view of one alternate. */
  public View alternate(@Nullable String name) {
    return new View(reduction, only, skip, until, name);
  }
}
