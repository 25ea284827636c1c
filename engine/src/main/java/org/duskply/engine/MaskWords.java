package org.duskply.engine;

import java.util.List;
import org.duskply.recipe.mask.Flash;
import org.duskply.recipe.mask.FlashReach;
import org.duskply.recipe.mask.HueRange;
import org.duskply.recipe.mask.Hues;
import org.duskply.recipe.mask.Image;
import org.duskply.recipe.mask.Luminance;
import org.duskply.recipe.mask.LuminanceRange;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.ShownSteps;
import org.jspecify.annotations.Nullable;

/** What a mask goes by, in words, where it is not drawn. */
final class MaskWords {
  private MaskWords() {}

  /** A few words on a mask's kind; empty for one that is drawn. */
  static String of(Mask mask) {
    MaskKind kind = mask.kind();
    if (kind instanceof Luminance luminance) {
      LuminanceRange range = luminance.range();
      return brightness(range) + picture(range.frame());
    }
    if (kind instanceof Hues hues) {
      HueRange range = hues.range();
      return hues(range) + picture(range.frame());
    }
    if (kind instanceof Image image) {
      return "painted in " + image.file();
    }
    if (kind instanceof Flash flash) {
      return reach(flash.reach());
    }
    return kind instanceof ShownSteps steps ? "where " + list(steps.steps(), "or") + " shows" : "";
  }

  private static String picture(@Nullable String frame) {
    return frame == null ? " in the picture below" : " in the frame " + frame;
  }

  private static String brightness(LuminanceRange range) {
    String from = range.from() == null ? "" : " from " + NumberWords.exact(range.from());
    String to = range.to() == null ? "" : " up to " + NumberWords.exact(range.to());
    return "brightness" + from + (to.isEmpty() ? " on" : to) + softly(range.soft(), "");
  }

  private static String hues(HueRange range) {
    return "hues within "
        + NumberWords.exact(range.width() / 2)
        + " degrees of "
        + NumberWords.exact(range.centre())
        + softly(range.soft(), " degrees");
  }

  private static String softly(double soft, String unit) {
    return soft == 0 ? "" : ", fading over " + NumberWords.exact(soft) + unit;
  }

  private static String reach(FlashReach reach) {
    String ambient = reach.ambient() == null ? "the base" : reach.ambient();
    return "where "
        + reach.frame()
        + " is "
        + NumberWords.exact(reach.over())
        + " stops brighter than "
        + ambient;
  }

  private static String list(List<String> names, String last) {
    int end = names.size() - 1;
    return end == 0
        ? names.get(0)
        : String.join(", ", names.subList(0, end)) + " " + last + " " + names.get(end);
  }
}
