package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.adjust.Cdl;
import org.duskply.recipe.shape.PerChannel;

/** What a color decision list does to values, in words. */
final class CdlWords {
  private CdlWords() {}

  /** A clause without whose values they are, in the order in which it is done. */
  static String verb(Cdl cdl) {
    List<String> done = new ArrayList<>();
    if (!all(cdl.slope(), 1)) {
      done.add("multiplied by " + three(cdl.slope()));
    }
    if (!all(cdl.offset(), 0)) {
      done.add(shifted(cdl.offset()));
    }
    if (!all(cdl.power(), 1)) {
      done.add("raised to the power of " + three(cdl.power()));
    }
    if (cdl.saturation() != 1) {
      done.add(drawn(cdl.saturation()));
    }
    String held = cdl.clamp() ? ", held between 0 and 1 before the power and at the end," : "";
    return cdl.axis().key()
        + " red, green and blue"
        + held
        + " are "
        + (done.isEmpty() ? "left as they are" : ListWords.and(done))
        + " (ASC CDL)";
  }

  private static boolean all(PerChannel three, double value) {
    return three.even() && three.red() == value;
  }

  private static String shifted(PerChannel offset) {
    return offset.even()
        ? (offset.red() > 0 ? "shifted up by " : "shifted down by ")
            + NumberWords.exact(Math.abs(offset.red()))
        : "shifted by " + three(offset);
  }

  private static String three(PerChannel values) {
    return values.even()
        ? NumberWords.signed(values.red())
        : NumberWords.signed(values.red())
            + " in red, "
            + NumberWords.signed(values.green())
            + " in green and "
            + NumberWords.signed(values.blue())
            + " in blue";
  }

  private static String drawn(double saturation) {
    String luma = "their luma (0.2126, 0.7152 and 0.0722 of them)";
    if (saturation == 0) {
      return "drawn all the way to " + luma;
    }
    return (saturation < 1 ? "drawn nearer to " : "drawn away from ")
        + luma
        + " by "
        + NumberWords.change(saturation);
  }
}
