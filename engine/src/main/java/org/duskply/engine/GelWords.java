package org.duskply.engine;

import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.shape.Shape;

/** What a gel does to light, in words. */
final class GelWords {
  private GelWords() {}

  /** The rest of a clause whose subject is some light: {@code is warmed by 42 mired}. */
  static String verb(Gel gel) {
    if (Shape.isIdentityOf(gel)) {
      return "is left as it is";
    }
    Double mired = gel.mired();
    if (mired != null && mired != 0) {
      String shift = (mired > 0 ? "warmed" : "cooled") + " by " + exact(mired) + " mired";
      return "is " + shift + (gel.plusGreen() == 0 ? "" : " and made " + tint(gel));
    }
    Double from = gel.from();
    Double to = gel.to();
    if (from != null && to != null && !from.equals(to)) {
      String change = "of " + exact(from) + " K becomes light of " + exact(to) + " K";
      return change + (gel.plusGreen() == 0 ? "" : ", " + tint(gel));
    }
    return "is made " + tint(gel);
  }

  private static String tint(Gel gel) {
    return (gel.plusGreen() > 0 ? "greener" : "more magenta")
        + " by "
        + exact(gel.plusGreen())
        + " thousandths of CIE 1960 uv";
  }

  private static String exact(double value) {
    return NumberWords.exact(Math.abs(value));
  }
}
