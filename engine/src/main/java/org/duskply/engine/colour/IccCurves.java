package org.duskply.engine.colour;

import java.nio.ByteBuffer;
import org.duskply.engine.colour.IccException.Reason;

/**
 * Tone curves of ICC profiles: curveType (none, one gamma, a table of 16-bit samples) and
 * parametricCurveType 0 to 4 (ICC.1:2010, clauses 10.5 and 10.15).
 */
final class IccCurves {
  /** Numbers of each function type of parametricCurveType. */
  private static final int[] PARAMETERS = {1, 3, 4, 5, 7};

  /** At how many even steps a curve is looked at before it is believed. */
  private static final int PROBES = 4096;

  /** The most light a curve may give between 0 and 1; scene-linear files stay well below. */
  private static final double MOST = 64;

  /** The least rise from black to white that is still a curve. */
  private static final double LEAST_RISE = 1.0 / 64;

  /** Gammas lie between this and its inverse; those of pictures between 1 and 3. */
  private static final double GREATEST_GAMMA = 16;

  private IccCurves() {}

  /**
   * The curve in a tag.
   *
   * @throws IccException if there is none, or none that rises from black to white
   */
  static TransferCurve read(IccTags tags, String tag) {
    ByteBuffer bytes = tags.need(tag, 12);
    TransferCurve curve =
        switch (IccTags.signature(bytes, 0)) {
          case "curv" -> sampled(bytes, tag);
          case "para" -> parametric(bytes, tag);
          default -> throw IccTags.damaged(tag, "is not a tone curve");
        };
    checkRises(curve, tag);
    return curve;
  }

  private static TransferCurve sampled(ByteBuffer bytes, String tag) {
    long count = Integer.toUnsignedLong(bytes.getInt(8));
    if (count > IccReader.MAX_CURVE_SAMPLES) {
      throw new IccException(
          Reason.TOO_LARGE,
          "The colour profile has a tone curve of "
              + count
              + " samples, more than the "
              + IccReader.MAX_CURVE_SAMPLES
              + " that are read.");
    }
    if (12 + 2 * count > bytes.limit()) {
      throw IccTags.damaged(tag, "ends before its samples do");
    }
    if (count == 0) {
      return TransferCurve.identity();
    }
    if (count == 1) {
      return TransferCurve.gamma(believable((bytes.getShort(12) & 0xFFFF) / 256.0, tag));
    }
    double[] samples = new double[(int) count];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (bytes.getShort(12 + 2 * i) & 0xFFFF) / 65535.0;
    }
    if (samples[samples.length - 1] <= samples[0]) {
      throw IccTags.damaged(tag, "does not rise from black to white");
    }
    return TransferCurve.sampled(samples);
  }

  private static TransferCurve parametric(ByteBuffer bytes, String tag) {
    int type = bytes.getShort(8) & 0xFFFF;
    if (type >= PARAMETERS.length) {
      throw IccTags.damaged(tag, "has an unknown formula");
    }
    if (12 + 4 * PARAMETERS[type] > bytes.limit()) {
      throw IccTags.damaged(tag, "ends before its numbers do");
    }
    double[] p = new double[7];
    for (int i = 0; i < PARAMETERS[type]; i++) {
      p[i] = IccTags.fixed(bytes, 12 + 4 * i);
    }
    believable(p[0], tag);
    if ((type > 0 && p[1] <= 0) || (type > 2 && p[3] < 0)) {
      throw IccTags.damaged(tag, "does not rise from black to white");
    }
    return switch (type) {
      case 0 -> TransferCurve.gamma(p[0]);
      case 1 -> new ParametricCurve(p[0], p[1], p[2], 0, -p[2] / p[1], 0, 0);
      case 2 -> new ParametricCurve(p[0], p[1], p[2], 0, -p[2] / p[1], p[3], p[3]);
      case 3 -> new ParametricCurve(p[0], p[1], p[2], p[3], p[4], 0, 0);
      default -> new ParametricCurve(p[0], p[1], p[2], p[3], p[4], p[5], p[6]);
    };
  }

  private static double believable(double gamma, String tag) {
    if (gamma < 1 / GREATEST_GAMMA || gamma > GREATEST_GAMMA) {
      throw IccTags.damaged(tag, "has an impossible gamma");
    }
    return gamma;
  }

  private static void checkRises(TransferCurve curve, String tag) {
    for (int i = 0; i <= PROBES; i++) {
      double l = curve.toLinear(i / (double) PROBES);
      if (!(StrictMath.abs(l) <= MOST)) {
        throw IccTags.damaged(tag, "gives impossible amounts of light");
      }
    }
    if (curve.toLinear(1) - curve.toLinear(0) < LEAST_RISE) {
      throw IccTags.damaged(tag, "does not rise from black to white");
    }
  }
}
