package org.duskply.engine.testing.reference;

import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.step.Blend;

/** Blends in plain double, with what the engine's floats may add. */
final class PlainBlends {
  private static final double UNIT = Estimate.UNIT;

  /** What the way to the encoded axis may be off on 0…1, and relatively above. */
  private static final double AXIS = 0.02 / 65535;

  private PlainBlends() {}

  static Estimate laid(Blend mode, Axis axis, Estimate below, Estimate frame) {
    if (axis == Axis.LINEAR || mode.choosesOnly()) {
      return blended(mode, below, frame);
    }
    return decoded(blended(mode, encoded(below), encoded(frame)));
  }

  /** The brighter by luminance; its own error as BrighterTest derives it. */
  static Estimate brighter(double[] weights, Estimate below, Estimate frame) {
    double share = 5 * (spread(weights, below) + spread(weights, frame)) + 3;
    double most = Math.max(Estimate.greatest(below.colour()), Estimate.greatest(frame.colour()));
    double own = (Math.min(1, UNIT * (11 * share + 6)) + 2 * UNIT) * 2 * most;
    return below.combined(
        frame, (b, f) -> PopFormulas.brighter(weights, b, f), want -> new double[] {own, own, own});
  }

  private static double spread(double[] weights, Estimate e) {
    double[] c = e.colour();
    double sizes =
        AdjustFormulas.luminance(weights, Math.abs(c[0]), Math.abs(c[1]), Math.abs(c[2]));
    return (sizes + 0x1p-10) / PopFormulas.compared(weights, c);
  }

  /** The contracts of the kernels give their own errors: this is the widest of each family. */
  private static Estimate blended(Blend mode, Estimate below, Estimate frame) {
    double[] b = below.colour();
    double[] f = frame.colour();
    double most = Math.max(Estimate.greatest(b), Estimate.greatest(f));
    return below.combined(
        frame,
        (x, y) -> BlendFormulas.of(mode, x, y),
        want -> {
          double[] own = new double[3];
          for (int c = 0; c < 3; c++) {
            own[c] =
                BlendFormulas.ofColours(mode)
                    ? (most > 1 && most < 1.5 ? 1600 : 160) * UNIT * most
                    : 4 * UNIT * (Math.abs(b[c]) + Math.abs(f[c]) + Math.abs(b[c] * f[c]))
                        + 16 * UNIT * Math.min(1, Math.abs(want[c]))
                        + 2 * UNIT;
          }
          return mode == Blend.NORMAL ? new double[3] : own;
        });
  }

  private static Estimate encoded(Estimate linear) {
    return linear.through(
        c -> AdjustFormulas.each(EncodedAxis::encode, c[0], c[1], c[2]), PlainBlends::ofAxis);
  }

  private static Estimate decoded(Estimate encoded) {
    return encoded.through(
        c -> AdjustFormulas.each(EncodedAxis::decode, c[0], c[1], c[2]), PlainBlends::ofAxis);
  }

  /** In encoded values on the way there; on the way back light, which is less from 0 to 1. */
  private static double[] ofAxis(double[] want) {
    double[] own = new double[3];
    for (int c = 0; c < 3; c++) {
      double size = Math.abs(want[c]);
      own[c] = size <= 1 ? 2.4 * AXIS : 0x1p-19 * size;
    }
    return own;
  }
}
