package org.duskply.engine.pixel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** A mask that is known to be full is like one that was made. */
class UniformTest {
  private static final Region AREA = new Region(-3, 5, 40, 12);

  private static Planes made() {
    Planes planes = new Planes(AREA, 1);
    Arrays.fill(planes.plane(0), 1f);
    return planes;
  }

  @Test
  void itsSamplesAreThoseOfOneThatWasFilled() {
    Planes copy = new Planes(AREA.grow(1), 1);
    copy.copyFrom(Planes.uniform(AREA, 1f));
    Planes wanted = new Planes(AREA.grow(1), 1);
    wanted.copyFrom(made());
    assertThat(copy.plane(0)).isEqualTo(wanted.plane(0));
  }

  @Test
  void itsRunsAreThoseOfOneThatWasFilled() {
    Runs known = Runs.full(AREA);
    Runs found = Runs.of(made());
    assertThat(known.area()).isEqualTo(AREA);
    assertThat(known.count()).isEqualTo(found.count());
    for (int y = AREA.top(); y < AREA.bottom(); y++) {
      assertThat(known.first(y)).isEqualTo(found.first(y));
      assertThat(known.end(y)).isEqualTo(found.end(y));
    }
    for (int run = 0; run < found.count(); run++) {
      assertThat(known.left(run)).isEqualTo(found.left(run));
      assertThat(known.right(run)).isEqualTo(found.right(run));
      assertThat(known.kind(run)).isEqualTo(found.kind(run));
    }
  }
}
