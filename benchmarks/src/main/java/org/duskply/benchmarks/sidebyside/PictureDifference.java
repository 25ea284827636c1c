package org.duskply.benchmarks.sidebyside;

import java.nio.file.Path;
import java.util.stream.IntStream;
import org.duskply.engine.testing.reference.CieLab;
import org.duskply.engine.testing.reference.DeltaE2000;

/** How far apart two pictures look. */
final class PictureDifference {
  private static final int ROWS = 64;

  private PictureDifference() {}

  /**
   * The mean {@link DeltaE2000} of all pixels of two files of 16-bit sRGB.
   *
   * @throws Refusal if one cannot be read, or they are of different sizes
   */
  static double mean(Path one, Path other) {
    try (PictureRows a = PictureRows.open(one);
        PictureRows b = PictureRows.open(other)) {
      if (a.width() != b.width() || a.height() != b.height()) {
        throw new Refusal(one + " and " + other + " are of different sizes.");
      }
      double sum = 0;
      for (int top = 0; top < a.height(); top += ROWS) {
        int rows = Math.min(ROWS, a.height() - top);
        short[][] ofA = new short[rows][];
        short[][] ofB = new short[rows][];
        for (int y = 0; y < rows; y++) {
          ofA[y] = a.row(top + y);
          ofB[y] = b.row(top + y);
        }
        sum += IntStream.range(0, rows).parallel().mapToDouble(y -> sum(ofA[y], ofB[y])).sum();
      }
      return sum / ((double) a.width() * a.height());
    }
  }

  private static double sum(short[] one, short[] other) {
    double sum = 0;
    for (int i = 0; i < one.length; i += 3) {
      boolean same = one[i] == other[i] && one[i + 1] == other[i + 1] && one[i + 2] == other[i + 2];
      sum += same ? 0 : DeltaE2000.of(lab(one, i), lab(other, i));
    }
    return sum;
  }

  private static double[] lab(short[] codes, int i) {
    return CieLab.of(
        PictureRows.linear(codes[i]),
        PictureRows.linear(codes[i + 1]),
        PictureRows.linear(codes[i + 2]));
  }
}
