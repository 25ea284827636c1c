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
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The Gaussian: bits first, then its shape against closed forms. */
class GaussianTest {
  private static final double[] RADII = {0.3, 1, 3, 16, 31.9, 32, 48, 79, 130};

  @Property(seed = "61", tries = 25)
  void anyWindowHasTheBitsOfTheWhole(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    Gaussian gaussian = Gaussian.of(RADII[random.nextInt(RADII.length)]);
    int left = random.nextInt(200) - 100;
    int top = random.nextInt(200) - 100;
    Region whole = new Region(left, top, left + 90, top + 70);
    Planes in = Fields.of(gaussian.needs(whole), Fields.noise(seed));
    Fields.expectSameInAnyWindow(filter(gaussian), in, whole, random);
  }

  @Test
  void widePicturesAreTheSameAcrossChunks() {
    Gaussian gaussian = Gaussian.of(5);
    Region whole = new Region(-3, 0, 1_400, 3);
    Planes in = Fields.of(gaussian.needs(whole), Fields.noise(3));
    Fields.expectSameInAnyWindow(filter(gaussian), in, whole, new Random(1));
  }

  @Property(seed = "62", tries = 40)
  void needsLieWithinTheReachAndGrowWithTheOutput(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    Gaussian gaussian = Gaussian.of(random.nextDouble() * 600);
    int x = random.nextInt(2_000) - 1_000;
    Region out = new Region(x, -x, x + 1 + random.nextInt(99), -x + 1 + random.nextInt(99));
    Region needs = gaussian.needs(out);
    assertThat(needs.contains(out)).isTrue();
    assertThat(out.grow(gaussian.reach()).contains(needs)).isTrue();
    assertThat(gaussian.needs(out.grow(1)).contains(needs)).isTrue();
    assertThat(gaussian.needs(Region.EMPTY)).isEqualTo(Region.EMPTY);
  }

  /**
   * A Gaussian filter that darkens or lightens an even field was reported of a well-known library;
   * tiny σ that empties the picture of another.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-9, 0.01, 0.5, 2, 31, 32, 45, 200})
  void anEvenFieldKeepsItsBits(double radius) {
    Gaussian gaussian = Gaussian.of(radius);
    for (float value : new float[] {0f, 1f, 0.1f, 0.7234567f, -3f, 40.1f, 1e-30f}) {
      Region out = new Region(5, 5, 9, 7);
      Planes in = Fields.of(gaussian.needs(out), (x, y) -> value);
      assertThat(run(filter(gaussian), in, out).plane(0)).containsOnly(value);
    }
  }

  @Test
  void anEvenFieldKeepsItsBitsUnderAWideOne() {
    Gaussian gaussian = Gaussian.of(1_200);
    Planes out = new Planes(new Region(-3, 5, 2, 7), 1);
    Planes in = Fields.of(gaussian.needs(out.area()), (x, y) -> 0.1f);
    gaussian.apply(in, 0, out, 0);
    assertThat(out.plane(0)).containsOnly(0.1f);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-300, 1e-9, 0.01, 0.2})
  void aVerySmallRadiusChangesNothing(double radius) {
    Gaussian gaussian = Gaussian.of(radius);
    assertThat(gaussian.reach()).isZero();
    Planes in = Fields.of(Region.ofSize(20, 20), Fields.noise(9));
    assertThat(run(filter(gaussian), in, in.area()).plane(0)).isEqualTo(in.plane(0));
  }

  @Property(seed = "63", tries = 30)
  void nothingPassesTheLeastAndTheGreatest(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    Gaussian gaussian = Gaussian.of(RADII[random.nextInt(RADII.length)]);
    float low = random.nextInt(3) * 0.1f;
    Region out = Region.ofSize(40, 40);
    int one = 2 + random.nextInt(30);
    // Mostly one of two values, so that many windows are all but even.
    Planes in =
        Fields.of(
            gaussian.needs(out),
            (x, y) -> Math.floorMod(x * 31 + y * 17 + seed, one) == 0 ? low : 1f);
    for (float v : run(filter(gaussian), in, out).plane(0)) {
      assertThat(v).isBetween(low, 1f);
    }
  }

  /**
   * A step against ½·(1 + erf(x/σ√2)). Below σ = 16 the sum stands for an integral by the midpoint
   * rule, off by at most max|g′|/24 = 0.0101/σ², and leaves out 7e-5 beyond 4σ; from there on 1e-3
   * is what is promised.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1, 2, 3.7, 8, 15.99, 16, 17, 23.9, 24, 31, 40, 57.3, 100, 200})
  void aStepComesOutAsTheErrorFunction(double sigma) {
    Gaussian gaussian = Gaussian.of(2 * sigma);
    double bound = sigma < 16 ? 0.0101 / (sigma * sigma) + 1e-4 : 1e-3;
    int span = (int) (5 * sigma) + 2;
    for (int edge : new int[] {0, 3, -7}) {
      Region out = new Region(edge - span, 0, edge + span, 1);
      Planes across = Fields.of(gaussian.needs(out), (x, y) -> x >= edge ? 1f : 0f);
      Planes made = run(filter(gaussian), across, out);
      for (int x = out.left(); x < out.right(); x++) {
        double exact = 0.5 * (1 + Erf.erf((x + 0.5 - edge) / (sigma * Math.sqrt(2))));
        assertThat((double) made.plane(0)[made.at(x, 0)]).isCloseTo(exact, within(bound));
      }
    }
  }

  /**
   * Weights of σ = 1 and 2 from the centre outward, normalised over ±3σ: the values of W3C Filter
   * Effects 1 "feGaussianBlur", computed outside this project. Ratios to the centre do not depend
   * on where the sum ends. Rounding: a few 2⁻²⁴ of 1, over a centre of 0.2 or more squared.
   */
  @Test
  void aDotSpreadsByThePublishedWeights() {
    double[][] published = {
      {0.3990502797, 0.2420362294, 0.0540055826, 0.0044330482},
      {
        0.1996756275,
        0.1762131228,
        0.1211093901,
        0.0648251851,
        0.0270231576,
        0.0087731348,
        0.0022181959
      }
    };
    for (int i = 0; i < 2; i++) {
      Gaussian gaussian = Gaussian.of(2 * (i + 1));
      Region out = new Region(-8, 0, 9, 1);
      Planes in = Fields.of(gaussian.needs(out), (x, y) -> x == 0 ? 1f : 0f);
      Planes made = run(filter(gaussian), in, out);
      float centre = made.plane(0)[made.at(0, 0)];
      for (int d = 1; d < published[i].length; d++) {
        double ratio = published[i][d] / published[i][0];
        assertThat((double) made.plane(0)[made.at(d, 0)] / centre).isCloseTo(ratio, within(1e-6));
        assertThat(made.plane(0)[made.at(-d, 0)]).isEqualTo(made.plane(0)[made.at(d, 0)]);
      }
    }
  }

  /** Against the weighted sum in double. Error: a product and a sum each, 64 terms, 2⁻²⁴ of 1. */
  @ParameterizedTest
  @ValueSource(doubles = {0.6, 2.5, 9, 20, 31.9})
  void theDirectSumIsTheFormulaInDouble(double radius) {
    Gaussian gaussian = Gaussian.of(radius);
    Region out = new Region(-4, 2, 9, 12);
    Planes in = Fields.of(gaussian.needs(out), (x, y) -> (float) Math.abs(Math.sin(x * 7 + y * y)));
    Planes made = run(filter(gaussian), in, out);
    double[] weights = weights(radius / 2);
    for (int y = out.top(); y < out.bottom(); y++) {
      for (int x = out.left(); x < out.right(); x++) {
        double exact = reference(in, weights, x, y);
        double got = made.plane(0)[made.at(x, y)];
        assertThat(got).isCloseTo(exact, within(64 * 0x1p-24));
      }
    }
  }

  private static double[] weights(double sigma) {
    int reach = (int) Math.ceil(4 * sigma);
    double[] weights = new double[2 * reach + 1];
    double sum = 0;
    for (int i = -reach; i <= reach; i++) {
      weights[i + reach] = Math.exp(-i * i / (2 * sigma * sigma));
      sum += weights[i + reach];
    }
    for (int i = 0; i < weights.length; i++) {
      weights[i] /= sum;
    }
    return weights;
  }

  private static double reference(Planes in, double[] weights, int x, int y) {
    int reach = weights.length / 2;
    double sum = 0;
    for (int j = -reach; j <= reach; j++) {
      for (int i = -reach; i <= reach; i++) {
        double weight = weights[i + reach] * weights[j + reach];
        // Weights that the filter leaves out reach beyond what it asks for.
        sum += weight < 1e-9 ? 0 : weight * in.plane(0)[in.at(x + i, y + j)];
      }
    }
    return sum;
  }

  /** Property of Gaussians: variances add. Support of ±4σ leaves 6e-5 out, twice. */
  @Test
  void twoInARowAreOneOfTheJoinedVariance() {
    Region out = new Region(-30, 0, 31, 1);
    Planes dot = Fields.of(out.grow(200), (x, y) -> x == 0 ? 1f : 0f);
    Planes once = run(filter(Gaussian.of(10)), dot, out);
    Region between = Gaussian.of(8).needs(out);
    Planes twice = run(filter(Gaussian.of(8)), run(filter(Gaussian.of(6)), dot, between), out);
    for (int i = 0; i < once.plane(0).length; i++) {
      assertThat(twice.plane(0)[i]).isCloseTo(once.plane(0)[i], within(2e-4f * 0.08f));
    }
  }

  /** A feathered mask over the whole frame stays 1 at the frame's edge. */
  @Test
  void continuedByItsEdgeValueAFullMaskStaysFull() {
    for (double radius : RADII) {
      Gaussian gaussian = Gaussian.of(radius);
      Region picture = Region.ofSize(30, 20);
      Planes in = new Planes(gaussian.needs(picture), 1);
      in.copyFrom(Fields.of(picture, (x, y) -> 1f));
      EdgeValues.extend(in, picture);
      assertThat(run(filter(gaussian), in, picture).plane(0)).containsOnly(1f);
    }
  }

  @Test
  void lampsAndBlacksStayFinite() {
    Gaussian gaussian = Gaussian.of(40);
    Region out = Region.ofSize(50, 50);
    Planes in = Fields.of(gaussian.needs(out), (x, y) -> (x + y) % 7 == 0 ? 65504f : -65504f);
    for (float v : run(filter(gaussian), in, out).plane(0)) {
      assertThat(v).isBetween(-65504f, 65504f);
    }
  }

  @Test
  void whatCannotBeMeantIsRefused() {
    assertThatThrownBy(() -> Gaussian.of(-1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Gaussian.of(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    Planes small = new Planes(Region.ofSize(9, 9), 1);
    assertThatThrownBy(() -> Gaussian.of(4).apply(small, 0, small, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  @Tag("bits")
  void theBitsAreTheseOnEveryMachine() {
    Region out = new Region(-20, 7, 100, 90);
    long[] hashes = new long[2];
    for (int i = 0; i < 2; i++) {
      Gaussian gaussian = Gaussian.of(i == 0 ? 9.3 : 83);
      Planes in = Fields.of(gaussian.needs(out), Fields.noise(4));
      hashes[i] = Fields.hash(run(filter(gaussian), in, out));
    }
    assertThat(hashes).containsExactly(-6932064621368877553L, -7581378859419430783L);
  }
}
