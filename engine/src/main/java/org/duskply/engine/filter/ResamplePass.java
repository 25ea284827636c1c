package org.duskply.engine.filter;

import java.util.Arrays;

/**
 * One direction of a {@link Resampler}: makes a line of samples from lines across which the table
 * runs, all lanes alike. Holds scratch; not thread-safe.
 */
final class ResamplePass {
  private static final float OVERSHOOT = 0.1f;

  private final float[] sums;
  private final float[] least;
  private final float[] greatest;

  ResamplePass(int lanes) {
    sums = new float[lanes];
    least = new float[lanes];
    greatest = new float[lanes];
  }

  /**
   * Makes line {@code x} of the table's output, {@code length} samples.
   *
   * @param lines of the input, the one at 0 being its line {@code first}
   */
  void run(LanczosTable table, int x, float[][] lines, int first, float[] out, int length) {
    float[] centre = lines[table.nearest(x) - first];
    int taps = table.count(x);
    if (taps == 1) {
      System.arraycopy(centre, 0, out, 0, length);
      return;
    }
    Arrays.fill(sums, 0, length, 0f);
    int i = 0;
    for (; i + 2 <= taps; i += 2) {
      float[] a = lines[table.place(x, i) - first];
      float[] b = lines[table.place(x, i + 1) - first];
      add(centre, a, table.weight(x, i), b, table.weight(x, i + 1), sums, length);
    }
    if (i < taps) {
      add(centre, lines[table.place(x, i) - first], table.weight(x, i), sums, length);
    }
    System.arraycopy(centre, 0, least, 0, length);
    System.arraycopy(centre, 0, greatest, 0, length);
    for (int k = table.lobeFirst(x); k <= table.lobeLast(x); k++) {
      widen(lines[k - first], least, greatest, length);
    }
    hold(centre, sums, least, greatest, out, length);
  }

  /** Two samples in one go: half the traffic of sums, the same order. */
  private static void add(
      float[] centre,
      float[] a,
      float aWeight,
      float[] b,
      float bWeight,
      float[] sums,
      int length) {
    for (int i = 0; i < length; i++) {
      float sum = sums[i] + aWeight * (a[i] - centre[i]);
      sums[i] = sum + bWeight * (b[i] - centre[i]);
    }
  }

  private static void add(float[] centre, float[] a, float weight, float[] sums, int length) {
    for (int i = 0; i < length; i++) {
      sums[i] += weight * (a[i] - centre[i]);
    }
  }

  private static void widen(float[] a, float[] least, float[] greatest, int length) {
    for (int i = 0; i < length; i++) {
      least[i] = Math.min(least[i], a[i]);
      greatest[i] = Math.max(greatest[i], a[i]);
    }
  }

  private static void hold(
      float[] centre, float[] sums, float[] least, float[] greatest, float[] out, int length) {
    for (int i = 0; i < length; i++) {
      float over = OVERSHOOT * (greatest[i] - least[i]);
      float value = centre[i] + sums[i];
      out[i] = Math.max(least[i] - over, Math.min(greatest[i] + over, value));
    }
  }
}
