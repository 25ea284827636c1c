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

/** The mean over a window: bits first, then against the plain sum. */
class WindowMeanTest {
  @Property(seed = "71", tries = 40)
  void anyWindowHasTheBitsOfTheWhole(
      @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(max = 40) int radius) {
    Random random = new Random(seed);
    WindowMean mean = WindowMean.of(radius);
    int left = random.nextInt(200) - 100;
    int top = random.nextInt(200) - 100;
    Region whole = new Region(left, top, left + 90, top + 70);
    Planes in = Fields.of(mean.needs(whole), Fields.noise(seed));
    Fields.expectSameInAnyWindow(filter(mean), in, whole, random);
  }

  /** The plain sum in double: each pass rounds once to float, 2⁻²⁴ of up to 40. */
  @Property(seed = "72", tries = 40)
  void itIsTheMeanOfAllSamplesInTheWindow(
      @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(max = 25) int radius) {
    WindowMean mean = WindowMean.of(radius);
    int at = seed % 300 - 150;
    Region out = new Region(at, -at, at + 30, -at + 20);
    Planes in = Fields.of(mean.needs(out), Fields.noise(seed));
    Planes made = run(filter(mean), in, out);
    int length = 2 * radius + 1;
    for (int y = out.top(); y < out.bottom(); y++) {
      for (int x = out.left(); x < out.right(); x++) {
        double sum = 0;
        for (int j = y - radius; j <= y + radius; j++) {
          for (int i = x - radius; i <= x + radius; i++) {
            sum += in.plane(0)[in.at(i, j)];
          }
        }
        double got = made.plane(0)[made.at(x, y)];
        assertThat(got).isCloseTo(sum / (length * length), within(2 * 40 * 0x1p-24));
      }
    }
  }

  @Test
  void anEvenFieldKeepsItsBits() {
    for (int radius : new int[] {0, 1, 2, 50, 300}) {
      WindowMean mean = WindowMean.of(radius);
      Region out = new Region(-2, 3, 6, 8);
      for (float value : new float[] {0f, 1f, 0.1f, -0.7234567f, 65504f, 1e-30f}) {
        Planes in = Fields.of(mean.needs(out), (x, y) -> value);
        assertThat(run(filter(mean), in, out).plane(0)).containsOnly(value);
      }
    }
  }

  @Test
  void aDarkFieldBesideALampIsNotTroubledByIt() {
    // A running sum would carry the lamp's rounding along the row.
    WindowMean mean = WindowMean.of(3);
    Region out = Region.ofSize(200, 1);
    Planes in = Fields.of(mean.needs(out), (x, y) -> x == 20 ? 65504f : 1e-6f);
    Planes made = run(filter(mean), in, out);
    for (int x = 24; x < 200; x++) {
      assertThat(made.plane(0)[made.at(x, 0)]).isEqualTo(1e-6f);
    }
  }

  @Test
  void aRadiusOfNoneChangesNothing() {
    Planes in = Fields.of(Region.ofSize(20, 20), Fields.noise(9));
    assertThat(run(filter(WindowMean.of(0)), in, in.area()).plane(0)).isEqualTo(in.plane(0));
  }

  @Test
  void whatCannotBeMeantIsRefused() {
    assertThatThrownBy(() -> WindowMean.of(-1)).isInstanceOf(IllegalArgumentException.class);
    Planes small = new Planes(Region.ofSize(9, 9), 1);
    assertThatThrownBy(() -> WindowMean.of(4).apply(small, 0, small, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  @Tag("bits")
  void theBitsAreTheseOnEveryMachine() {
    WindowMean mean = WindowMean.of(11);
    Region out = new Region(-20, 7, 100, 90);
    Planes in = Fields.of(mean.needs(out), Fields.noise(4));
    assertThat(Fields.hash(run(filter(mean), in, out))).isEqualTo(-4500425326294464554L);
  }
}
