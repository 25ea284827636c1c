package org.duskply.benchmarks.workload;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.junit.jupiter.api.Test;

/** Frames are made again to the bit, so that measurements years apart are of the same work. */
class SceneryTest {
  private final Scenery scenery = new Scenery(Workload.called("small").orElseThrow());

  private static int hash(Planes rows) {
    int hash = 0;
    for (int c = 0; c < rows.count(); c++) {
      hash = 31 * hash + Arrays.hashCode(rows.plane(c));
    }
    return hash;
  }

  /** The hashes are of the frames that the first measurements were made with. */
  @Test
  void pixelsStayAsTheyWere() {
    assertThat(hash(scenery.rows(0, new Region(0, 0, 600, 64)))).isEqualTo(1533231256);
    assertThat(hash(scenery.rows(7, new Region(0, 100, 600, 164)))).isEqualTo(-316421947);
  }

  @Test
  void rowsDoNotDependOnTheRowsMadeWithThem() {
    Planes many = scenery.rows(3, new Region(0, 0, 600, 90));
    Planes few = scenery.rows(3, new Region(0, 71, 600, 90));
    for (int c = 0; c < 3; c++) {
      float[] lower =
          Arrays.copyOfRange(many.plane(c), many.at(0, 71), many.at(0, 71) + few.plane(c).length);
      assertThat(few.plane(c)).isEqualTo(lower);
    }
  }
}
