package org.duskply.engine.pixel;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/** Every question a region answers, asked pixel by pixel on a small board. */
class RegionTest {
  private static final int BOARD = 8;

  @Provide
  Arbitrary<Region> small() {
    Arbitrary<Integer> edge = Arbitraries.integers().between(-BOARD, BOARD);
    return Combinators.combine(edge, edge, edge, edge).as(Region::new);
  }

  @Property(seed = "7")
  void meetHoldsWhatBothHold(@ForAll("small") Region a, @ForAll("small") Region b) {
    Region both = a.meet(b);
    boolean any = false;
    for (int y = -BOARD; y < BOARD; y++) {
      for (int x = -BOARD; x < BOARD; x++) {
        boolean in = a.contains(x, y) && b.contains(x, y);
        any |= in;
        assertThat(both.contains(x, y)).isEqualTo(in);
      }
    }
    assertThat(a.meets(b)).isEqualTo(any);
    assertThat(both.empty()).isEqualTo(!any);
  }

  @Property(seed = "8")
  void hullIsTheLeastThatHoldsBoth(@ForAll("small") Region a, @ForAll("small") Region b) {
    Region hull = a.hull(b);
    assertThat(hull.contains(a)).isTrue();
    assertThat(hull.contains(b)).isTrue();
    if (!a.empty() && !b.empty()) {
      assertThat(hull.left()).isEqualTo(Math.min(a.left(), b.left()));
      assertThat(hull.bottom()).isEqualTo(Math.max(a.bottom(), b.bottom()));
    }
  }

  @Property(seed = "9")
  void growUndoesShrinkWhereSomethingIsLeft(@ForAll("small") Region a) {
    assertThat(a.grow(2).grow(-2)).isEqualTo(a);
    assertThat(a.grow(1, 0).count()).isEqualTo(a.empty() ? 0 : (long) (a.width() + 2) * a.height());
  }

  @Property(seed = "10")
  void aMovedRegionHoldsTheMovedPixels(@ForAll("small") Region a) {
    for (int y = -BOARD; y < BOARD; y++) {
      for (int x = -BOARD; x < BOARD; x++) {
        assertThat(a.move(3, -2).contains(x + 3, y - 2)).isEqualTo(a.contains(x, y));
      }
    }
  }

  @Test
  void everyRegionWithoutAPixelIsTheSame() {
    assertThat(new Region(5, 0, 5, 9)).isEqualTo(Region.EMPTY);
    assertThat(new Region(5, 0, 3, 9)).isEqualTo(Region.EMPTY);
    assertThat(new Region(0, 4, 3, 4)).isEqualTo(Region.EMPTY);
    assertThat(Region.EMPTY.grow(10)).isEqualTo(Region.EMPTY);
    assertThat(Region.EMPTY.move(3, 3)).isEqualTo(Region.EMPTY);
  }

  @Test
  void growingEverywhereStaysEverywhere() {
    assertThat(Region.EVERYWHERE.grow(1_000_000)).isEqualTo(Region.EVERYWHERE);
    assertThat(new Region(0, 0, Region.FAR, 1).grow(Region.FAR).left()).isEqualTo(-Region.FAR);
  }

  @Test
  void rowsCutsTheHeightAlone() {
    assertThat(new Region(1, 2, 5, 9).rows(4, 6)).isEqualTo(new Region(1, 4, 5, 6));
    assertThat(new Region(1, 2, 5, 9).rows(-4, 3)).isEqualTo(new Region(1, 2, 5, 3));
    assertThat(new Region(1, 2, 5, 9).rows(20, 30)).isEqualTo(Region.EMPTY);
  }
}
