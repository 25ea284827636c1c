package org.duskply.engine.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.duskply.engine.filter.Fields.run;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The 5 × 5 median: its network for every pattern, then bits. */
class MedianTest {
  private static final Fields.Filter MEDIAN =
      new Fields.Filter() {
        @Override
        public Region needs(Region out) {
          return Median.needs(out);
        }

        @Override
        public void apply(Planes in, int plane, Planes out, int outPlane) {
          Median.apply(in, plane, out, outPlane);
        }
      };

  /**
   * All 2²⁵ patterns of zeros and ones, 64 at a time as the bits of longs, where the lesser is
   * "and" and the greater "or". By the zero-one principle that proves the network for all values.
   */
  @Test
  void theNetworkFindsTheMedianOfEveryPattern() {
    long[] lines = new long[25];
    for (int high = 0; high < 1 << 19; high++) {
      for (int i = 0; i < 25; i++) {
        lines[i] = i < 6 ? LOW[i] : (high >> (i - 6) & 1) == 0 ? 0 : -1;
      }
      long many = atLeastThirteen(lines);
      for (int x = 0; x < 5; x++) {
        sort(lines, x, 5);
      }
      for (int y = 0; y < 5; y++) {
        sort(lines, 5 * y, 1);
      }
      for (int[] pair : MedianNetwork.SELECT) {
        order(lines, pair[0], pair[1]);
      }
      if (lines[MedianNetwork.MEDIAN] != many) {
        throw new AssertionError("wrong for a pattern of " + high);
      }
    }
  }

  /** Bit n of line i is bit i of n: all patterns of six values side by side. */
  private static final long[] LOW = new long[6];

  static {
    for (int n = 0; n < 64; n++) {
      for (int i = 0; i < 6; i++) {
        LOW[i] |= (long) (n >> i & 1) << n;
      }
    }
  }

  /** Whether at least thirteen of the lines hold a one, bit by bit: a counter of five planes. */
  private static long atLeastThirteen(long[] lines) {
    long[] sum = new long[5];
    for (long line : lines) {
      long carry = line;
      for (int p = 0; p < 5; p++) {
        long kept = sum[p];
        sum[p] = kept ^ carry;
        carry &= kept;
      }
    }
    return sum[4] | sum[3] & sum[2] & (sum[1] | sum[0]);
  }

  private static void sort(long[] lines, int first, int step) {
    for (int[] pair : MedianNetwork.SORT) {
      order(lines, first + step * pair[0], first + step * pair[1]);
    }
  }

  private static void order(long[] lines, int lesser, int greater) {
    long a = lines[lesser];
    long b = lines[greater];
    lines[lesser] = a & b;
    lines[greater] = a | b;
  }

  @Property(seed = "81", tries = 30)
  void itIsTheThirteenthOfTheSortedSamples(@ForAll @IntRange(max = 1_000_000) int seed) {
    int at = seed % 300 - 150;
    Region out = new Region(at, -at, at + 150, -at + 12);
    Planes in = Fields.of(Median.needs(out), Fields.noise(seed));
    Planes made = run(MEDIAN, in, out);
    float[] window = new float[25];
    for (int y = out.top(); y < out.bottom(); y++) {
      for (int x = out.left(); x < out.right(); x++) {
        for (int i = 0; i < 25; i++) {
          window[i] = in.plane(0)[in.at(x - 2 + i % 5, y - 2 + i / 5)];
        }
        Arrays.sort(window);
        assertThat(made.plane(0)[made.at(x, y)]).isEqualTo(window[12]);
      }
    }
  }

  @Property(seed = "82", tries = 15)
  void anyWindowHasTheBitsOfTheWhole(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    int left = random.nextInt(200) - 100;
    Region whole = new Region(left, -left, left + 190, -left + 70);
    Planes in = Fields.of(Median.needs(whole), Fields.noise(seed));
    Fields.expectSameInAnyWindow(MEDIAN, in, whole, random);
  }

  @Test
  void aSpeckGoesAndAnEdgeStays() {
    Region out = Region.ofSize(30, 20);
    Planes speck =
        Fields.of(Median.needs(out), (x, y) -> x / 3 == 4 && y / 4 == 2 ? 65504f : -1e-6f);
    assertThat(run(MEDIAN, speck, out).plane(0)).containsOnly(-1e-6f);
    Planes edge = Fields.of(Median.needs(out), (x, y) -> x < 11 ? 0.2f : 0.9f);
    Planes made = run(MEDIAN, edge, out);
    assertThat(made.plane(0)[made.at(10, 9)]).isEqualTo(0.2f);
    assertThat(made.plane(0)[made.at(11, 9)]).isEqualTo(0.9f);
  }

  @Test
  void tooSmallAnInputIsRefused() {
    Planes small = new Planes(Region.ofSize(9, 9), 1);
    assertThatThrownBy(() -> Median.apply(small, 0, small, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  @Tag("bits")
  void theBitsAreTheseOnEveryMachine() {
    Region out = new Region(-20, 7, 120, 60);
    Planes in = Fields.of(Median.needs(out), Fields.noise(4));
    assertThat(Fields.hash(run(MEDIAN, in, out))).isEqualTo(268145218147555887L);
  }
}
