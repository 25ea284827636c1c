package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The committed table. Run with {@code -DargLine=-Ddither.write=FILE} it is written there instead.
 */
class DitherRanksTest {
  private static final int SIDE = DitherRanks.SIDE;
  private static final double[] COSINES = new double[SIDE];

  static {
    for (int i = 0; i < SIDE; i++) {
      COSINES[i] = Math.cos(2 * Math.PI * i / SIDE);
    }
  }

  @Tag("bits")
  @Test
  void isWhatTheMethodMakes() throws Exception {
    int[] made = VoidAndCluster.ranks(SIDE);
    String file = System.getProperty("dither.write");
    if (file != null) {
      Files.writeString(Path.of(file), VoidAndCluster.text(made, SIDE));
    }
    short[] kept = DitherRanks.read();
    for (int i = 0; i < made.length; i++) {
      assertThat((int) kept[i]).as("pixel %d", i).isEqualTo(made[i]);
    }
  }

  @Test
  void hasEveryRankOnce() {
    boolean[] seen = new boolean[SIDE * SIDE];
    for (short rank : DitherRanks.read()) {
      assertThat(seen[rank]).as("rank %d", rank).isFalse();
      seen[rank] = true;
    }
  }

  /**
   * Blue noise: in periods of 7 pixels and more, which eyes see as grain, a share of lit pixels has
   * less than a tenth of the power of white noise of the same share. The paper shows the spectra as
   * all but empty up to a principal frequency, which is √share cycles a pixel for shares up to ½:
   * from 0.316 on for the shares looked at here. The bound has no theory; worst is 0.07.
   */
  @Test
  void everyShareIsEmptyOfLowFrequencies() {
    short[] ranks = DitherRanks.read();
    for (int tenth = 1; tenth <= 9; tenth++) {
      double share = tenth / 10.0;
      double[] lit = new double[ranks.length];
      for (int i = 0; i < lit.length; i++) {
        lit[i] = ranks[i] < share * ranks.length ? 1 : 0;
      }
      assertThat(lowPower(lit) / (share * (1 - share))).as("share %s", share).isLessThan(0.1);
    }
  }

  /**
   * The measure itself: white noise has as much power there as anywhere. Of some 250 frequencies in
   * pairs, each of power 1 ± 1, the mean strays by 0.09.
   */
  @Test
  void whiteNoiseIsNotEmpty() {
    Random random = new Random(1);
    double[] lit = new double[SIDE * SIDE];
    for (int i = 0; i < lit.length; i++) {
      lit[i] = random.nextDouble() < 0.3 ? 1 : 0;
    }
    assertThat(lowPower(lit) / (0.3 * 0.7)).isBetween(0.7, 1.3);
  }

  /** Mean of |F|²/n over frequencies above 0 and up to a seventh. */
  private static double lowPower(double[] picture) {
    double sum = 0;
    int count = 0;
    int most = SIDE / 7;
    for (int v = -most; v <= most; v++) {
      for (int u = -most; u <= most; u++) {
        int squared = u * u + v * v;
        if (squared > 0 && squared <= most * most) {
          sum += power(picture, u, v);
          count++;
        }
      }
    }
    return sum / count / picture.length;
  }

  private static double power(double[] picture, int u, int v) {
    double real = 0;
    double imaginary = 0;
    for (int i = 0; i < picture.length; i++) {
      int turn = (u * (i % SIDE) + v * (i / SIDE)) & (SIDE - 1); // in 64ths
      real += picture[i] * COSINES[turn];
      imaginary += picture[i] * COSINES[(turn + SIDE * 3 / 4) & (SIDE - 1)];
    }
    return real * real + imaginary * imaginary;
  }
}
