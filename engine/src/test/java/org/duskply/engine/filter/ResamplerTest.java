package org.duskply.engine.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.duskply.engine.filter.Fields.filter;
import static org.duskply.engine.filter.Fields.run;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pictures in other sizes: bits first, then weights against published values, then rings. */
class ResamplerTest {
  @Property(seed = "81", tries = 40)
  void anyWindowHasTheBitsOfTheWhole(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    int width = 1 + random.nextInt(120);
    int height = 1 + random.nextInt(120);
    Resampler resampler =
        Resampler.of(width, height, 1 + random.nextInt(150), 1 + random.nextInt(90));
    Planes in = Fields.of(Region.ofSize(width, height), Fields.noise(seed));
    Fields.expectSameInAnyWindow(filter(resampler), in, resampler.output(), random);
  }

  @Test
  void widePicturesAreTheSameAcrossChunks() {
    Resampler resampler = Resampler.of(1_500, 9, 1_100, 7);
    Planes in = Fields.of(Region.ofSize(1_500, 9), Fields.noise(2));
    Fields.expectSameInAnyWindow(filter(resampler), in, resampler.output(), new Random(1));
  }

  /**
   * The formula in double, pass after pass. Error: 2⁻²⁴ a term, of a range up to 41, two passes.
   */
  @Property(seed = "82", tries = 60)
  void itIsTheFormulaInDouble(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    int width = 1 + random.nextInt(40);
    int height = 1 + random.nextInt(40);
    int toWidth = 1 + random.nextInt(60);
    int toHeight = 1 + random.nextInt(60);
    Planes in = Fields.of(Region.ofSize(width, height), Fields.noise(seed));
    Planes made =
        run(
            filter(Resampler.of(width, height, toWidth, toHeight)),
            in,
            Region.ofSize(toWidth, toHeight));
    double[][] columns = new double[width][];
    for (int x = 0; x < width; x++) {
      double[] column = new double[height];
      for (int y = 0; y < height; y++) {
        column[y] = in.plane(0)[in.at(x, y)];
      }
      columns[x] = reference(column, toHeight);
    }
    for (int y = 0; y < toHeight; y++) {
      double[] row = new double[width];
      for (int x = 0; x < width; x++) {
        row[x] = columns[x][y];
      }
      double[] exact = reference(row, toWidth);
      for (int x = 0; x < toWidth; x++) {
        double got = made.plane(0)[made.at(x, y)];
        assertThat(got).as("%d, %d", x, y).isCloseTo(exact[x], within(4 * 41 * 0x1p-23));
      }
    }
  }

  private static double[] reference(double[] in, int to) {
    double[] out = new double[to];
    double wide = Math.max(1, (double) in.length / to);
    for (int x = 0; x < to; x++) {
      double u = (x + 0.5) * in.length / to - 0.5;
      u = Math.rint(u * 1024) / 1024;
      double sum = 0;
      double weights = 0;
      double lo = Double.POSITIVE_INFINITY;
      double hi = Double.NEGATIVE_INFINITY;
      for (int k = (int) Math.floor(u - 3 * wide); k <= u + 3 * wide + 1; k++) {
        double sample = in[Math.max(0, Math.min(in.length - 1, k))];
        double t = (k - u) / wide;
        double weight = t == 0 ? 1 : Math.abs(t) >= 3 ? 0 : sinc(t) * sinc(t / 3);
        sum += weight * sample;
        weights += weight;
        if (Math.abs(k - u) < wide) {
          lo = Math.min(lo, sample);
          hi = Math.max(hi, sample);
        }
      }
      double over = 0.1 * (hi - lo);
      out[x] = Math.max(lo - over, Math.min(hi + over, sum / weights));
    }
    return out;
  }

  private static double sinc(double t) {
    return Math.sin(Math.PI * t) / (Math.PI * t);
  }

  /** Lanczos-3: values computed outside this project (Duchon 1979, Turkowski 1990). */
  @ParameterizedTest
  @CsvSource({
    "0, 1",
    "0.25, 0.8900670517",
    "0.5, 0.6079271019",
    "0.75, 0.270189823",
    "1, 0",
    "1.25, -0.1328710184",
    "1.5, -0.1350949115",
    "1.75, -0.0677913359",
    "2, 0",
    "2.25, 0.0300210914",
    "2.5, 0.0243170841",
    "2.75, 0.007355926",
    "3, 0"
  })
  void theKernelHasItsPublishedValues(double t, double value) {
    assertThat(LanczosTable.lanczos(t)).isCloseTo(value, within(6e-11));
    assertThat(LanczosTable.lanczos(-t)).isEqualTo(LanczosTable.lanczos(t));
  }

  /** Normalised weights a quarter and half a sample on: computed outside this project. */
  @Test
  void weightsAreNormalised() {
    double[] quarter = {
      0.0301122854, -0.1332746355, 0.8927707741, 0.2710105683, -0.067997263, 0.0073782709
    };
    double[] half = {
      0.0244565217, -0.1358695652, 0.6114130435, 0.6114130435, -0.1358695652, 0.0244565217
    };
    // Twice the size looks ¼ on at odd places; the middle of 21 out of 20 looks between two.
    LanczosTable twice = LanczosTable.of(50, 100);
    assertThat(twice.place(41, 0)).isEqualTo(18);
    expectWeights(twice, 41, quarter);
    LanczosTable middle = LanczosTable.of(20, 21);
    assertThat(middle.place(10, 0)).isEqualTo(7);
    expectWeights(middle, 10, half);
    // Three times the size looks at a sample itself at every third place.
    LanczosTable thrice = LanczosTable.of(30, 90);
    assertThat(thrice.count(46)).isEqualTo(1);
    assertThat(thrice.weight(46, 0)).isEqualTo(1f);
  }

  private static void expectWeights(LanczosTable table, int x, double[] expected) {
    assertThat(table.count(x)).isEqualTo(expected.length);
    for (int i = 0; i < expected.length; i++) {
      // A weight is rounded to float: half an ulp of at most 1.
      assertThat((double) table.weight(x, i)).isCloseTo(expected[i], within(0x1p-24));
    }
  }

  /** The signal 0.1 0.1 0.2 0.8 0.9 0.9 read a quarter on: 0.330489281, outside this project. */
  @Test
  void aSignalReadsAsPublished() {
    float[] signal = {.1f, .1f, .2f, .8f, .9f, .9f};
    Planes in = Fields.of(Region.ofSize(6, 1), (x, y) -> signal[x]);
    Planes twice = run(filter(Resampler.of(6, 1, 12, 1)), in, Region.ofSize(12, 1));
    assertThat((double) twice.plane(0)[5]).isCloseTo(0.330489281, within(1e-7));
    assertThat((double) twice.plane(0)[6]).isCloseTo(0.669510719, within(1e-7));
    Planes odd = run(filter(Resampler.of(6, 1, 7, 1)), in, Region.ofSize(7, 1));
    assertThat((double) odd.plane(0)[3]).isCloseTo(0.5, within(1e-7));
  }

  @Test
  void theSameSizeCopiesBits() {
    Planes in = Fields.of(Region.ofSize(33, 21), Fields.noise(6));
    in.plane(0)[7] = -0f;
    Planes made = run(filter(Resampler.of(33, 21, 33, 21)), in, in.area());
    for (int i = 0; i < in.plane(0).length; i++) {
      assertThat(Float.floatToRawIntBits(made.plane(0)[i]))
          .isEqualTo(Float.floatToRawIntBits(in.plane(0)[i]));
    }
  }

  @ParameterizedTest
  @CsvSource({"60, 40, 23, 17", "23, 17, 60, 40", "60, 40, 1, 1", "1, 1, 9, 5", "300, 2, 7, 3"})
  void anEvenFieldKeepsItsBits(int width, int height, int toWidth, int toHeight) {
    Resampler resampler = Resampler.of(width, height, toWidth, toHeight);
    for (float value : new float[] {0f, 1f, 0.1f, -0.7234567f, 65504f}) {
      Planes in = Fields.of(Region.ofSize(width, height), (x, y) -> value);
      assertThat(run(filter(resampler), in, resampler.output()).plane(0)).containsOnly(value);
    }
  }

  /** Black and white by turns, halved in linear light, is the mean of both. */
  @Test
  void aFineCheckerHalvedIsHalfTheLight() {
    Resampler resampler = Resampler.of(64, 64, 32, 32);
    Planes in = Fields.of(Region.ofSize(64, 64), (x, y) -> (x + y) & 1);
    Planes made = run(filter(resampler), in, resampler.output());
    for (int y = 4; y < 28; y++) {
      for (int x = 4; x < 28; x++) {
        assertThat((double) made.plane(0)[made.at(x, y)]).isCloseTo(0.5, within(1e-6));
      }
    }
  }

  /** Reported of several libraries: a lamp gives black or negative rings when reduced. */
  @ParameterizedTest
  @CsvSource({"0.3", "0.5", "0.77", "1.9"})
  void aLampLeavesNoDarkRing(double scale) {
    int to = (int) Math.round(61 * scale);
    Resampler resampler = Resampler.of(61, 61, to, to);
    for (int lamp = 25; lamp < 35; lamp++) {
      int at = lamp;
      Planes in = Fields.of(Region.ofSize(61, 61), (x, y) -> x == at && y == at ? 50f : 0.1f);
      float greatest = 0;
      for (float v : run(filter(resampler), in, resampler.output()).plane(0)) {
        assertThat(v).isBetween(scale > 1 ? 0.1f - 0.1f * 49.9f * 1.3f : 0f, 55f);
        greatest = Math.max(greatest, v);
      }
      assertThat(greatest).isGreaterThan(1f);
    }
  }

  @Test
  void noiseStaysWithinATenthOfItsRangeAPass() {
    Resampler resampler = Resampler.of(90, 90, 41, 37);
    Planes in = Fields.of(Region.ofSize(90, 90), (x, y) -> ((x * 7 + y * 13) % 5) > 2 ? 1f : 0f);
    for (float v : run(filter(resampler), in, resampler.output()).plane(0)) {
      // A tenth of 1, then a tenth of 1.2.
      assertThat(v).isBetween(-0.2201f, 1.2201f);
    }
  }

  @Test
  void needsLieInThePictureAndGrowWithTheOutput() {
    Resampler resampler = Resampler.of(200, 100, 70, 35);
    assertThat(resampler.needs(resampler.output())).isEqualTo(Region.ofSize(200, 100));
    Region small = new Region(20, 10, 24, 13);
    Region needs = resampler.needs(small);
    assertThat(needs.width()).isLessThan(35);
    assertThat(resampler.needs(small.grow(1)).contains(needs)).isTrue();
    assertThat(resampler.needs(new Region(80, 0, 90, 5))).isEqualTo(Region.EMPTY);
  }

  @Test
  void whatCannotBeMeantIsRefused() {
    assertThatThrownBy(() -> Resampler.of(0, 4, 3, 3)).isInstanceOf(IllegalArgumentException.class);
    Resampler resampler = Resampler.of(9, 9, 3, 3);
    Planes in = new Planes(Region.ofSize(9, 8), 1);
    assertThatThrownBy(() -> resampler.apply(in, 0, new Planes(resampler.output(), 1), 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  @Tag("bits")
  void theBitsAreTheseOnEveryMachine() {
    Planes in = Fields.of(Region.ofSize(120, 90), Fields.noise(4));
    Resampler smaller = Resampler.of(120, 90, 47, 33);
    Resampler larger = Resampler.of(120, 90, 131, 207);
    long[] hashes = {
      Fields.hash(run(filter(smaller), in, smaller.output())),
      Fields.hash(run(filter(larger), in, larger.output()))
    };
    assertThat(hashes).containsExactly(8527532233261112459L, -9035562202963759197L);
  }
}
