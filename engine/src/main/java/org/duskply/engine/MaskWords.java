package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskUse;
import org.jspecify.annotations.Nullable;

/** A mask in words: what it starts from, and what is then done to it, in order. */
final class MaskWords {
  private MaskWords() {}

  /**
   * Where a step shows: {@code inside the mask sky (the shape sky of outlines.svg; 40.7 % of the
   * picture)}.
   *
   * @param area share of the picture; NaN where it depends on the picture; absent where nothing is
   *     to be said of it
   * @param masks the words of the recipe's masks
   */
  static String place(MaskUse use, @Nullable Double area, ToldMasks masks) {
    List<String> more = new ArrayList<>();
    String where;
    if (use instanceof MaskUse.Named named) {
      where = "inside the mask " + named.name();
      String words = masks.atStep(named.name());
      if (words != null) {
        more.add(words);
      }
    } else {
      Mask mask = ((MaskUse.Inline) use).mask();
      where = MaskKindWords.before(mask.kind()) + of(mask);
    }
    if (area != null) {
      more.add(share(area));
    }
    return where + (more.isEmpty() ? "" : " (" + String.join("; ", more) + ")");
  }

  private static String share(double area) {
    return Double.isNaN(area)
        ? "a share that depends on the picture"
        : NumberWords.percent(area) + " of the picture";
  }

  /** A mask as a noun with all that is done to it. */
  static String of(Mask mask) {
    List<String> changes = changes(mask);
    return noun(mask) + (changes.isEmpty() ? "" : ", " + String.join(", then ", changes));
  }

  /** Several masks: {@code the masks a and b}; those written out with their changes in brackets. */
  static String uses(List<MaskUse> uses) {
    if (uses.stream().allMatch(MaskUse.Named.class::isInstance)) {
      return ListWords.the("mask", uses.stream().map(u -> ((MaskUse.Named) u).name()).toList());
    }
    List<String> words = new ArrayList<>();
    for (MaskUse use : uses) {
      words.add(
          use instanceof MaskUse.Named named
              ? "the mask " + named.name()
              : bracketed(((MaskUse.Inline) use).mask()));
    }
    return ListWords.and(words);
  }

  private static String bracketed(Mask mask) {
    List<String> changes = changes(mask);
    return noun(mask) + (changes.isEmpty() ? "" : " (" + String.join(", then ", changes) + ")");
  }

  private static String noun(Mask mask) {
    return isRest(mask)
        ? "all of the picture but " + uses(mask.except())
        : MaskKindWords.noun(mask.kind());
  }

  /** Whether a mask is what others leave of the whole picture. */
  private static boolean isRest(Mask mask) {
    return mask.kind() == null && mask.within().isEmpty() && !mask.except().isEmpty();
  }

  /** What is done to what the mask starts from, in the order in which it is done. */
  private static List<String> changes(Mask mask) {
    List<String> changes = new ArrayList<>();
    if (!mask.within().isEmpty()) {
      changes.add("kept inside " + uses(mask.within()));
    }
    if (!mask.except().isEmpty() && !isRest(mask)) {
      changes.add("without " + uses(mask.except()));
    }
    if (mask.widen() != 0) {
      changes.add("moved " + (mask.widen() > 0 ? "outward" : "inward") + by(mask.widen()));
    }
    if (mask.feather() != 0) {
      changes.add("feathered" + by(mask.feather()));
    }
    if (mask.inverted()) {
      changes.add("turned inside out");
    }
    if (mask.strength() != 1) {
      changes.add("taken at " + NumberWords.share(mask.strength()));
    }
    return changes;
  }

  private static String by(double pixels) {
    return " by " + NumberWords.exact(Math.abs(pixels)) + " px";
  }

  /** A range of hues: {@code within 40° of 5°, and less and less over a further 30°,}. */
  static String around(double centre, double width, double soft) {
    String range = "within " + NumberWords.half(width) + "° of " + NumberWords.signed(centre) + "°";
    return range
        + (soft == 0 ? "" : ", fading out over a further " + NumberWords.exact(soft) + "°,");
  }
}
