package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.DecodeTable;
import org.duskply.engine.colour.TransferCurve;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;

/** Kept tables are the same numbers as fresh ones, and not too many are kept. */
class CodeTablesTest {
  private static final TransferCurve SRGB = ColourSpace.of(NamedSpace.SRGB).curve(0);

  @Test
  void framesOfOneCurveShareATable() {
    float[] first = CodeTables.of(SRGB, 65_536, 65_536);
    assertThat(CodeTables.of(SRGB, 65_536, 65_536)).isSameAs(first);
    // Two files' own tables of the same samples are one curve.
    float[] sampled = CodeTables.of(TransferCurve.sampled(0, 0.3, 1), 256, 256);
    assertThat(CodeTables.of(TransferCurve.sampled(0, 0.3, 1), 256, 256)).isSameAs(sampled);
  }

  @Test
  void tablesAreThoseOfTheCurveFilledUpAboveFullScale() {
    float[] twelve = CodeTables.of(SRGB, 4096, 65_536);
    float[] plain = DecodeTable.of(SRGB, 4096);
    assertThat(twelve).hasSize(65_536).startsWith(plain);
    assertThat(twelve[4096]).isEqualTo(1f);
    assertThat(twelve[65_535]).isEqualTo(1f);
    assertThat(CodeTables.of(SRGB, 256, 256)).isEqualTo(DecodeTable.of(SRGB, 256));
  }

  @Test
  void oldTablesAreLetGoAndComeBackTheSame() {
    float[] first = CodeTables.of(TransferCurve.gamma(1.5), 256, 256);
    for (int i = 0; i < 100; i++) {
      CodeTables.of(TransferCurve.gamma(2 + i / 100.0), 256, 256);
    }
    float[] again = CodeTables.of(TransferCurve.gamma(1.5), 256, 256);
    assertThat(again).isNotSameAs(first).isEqualTo(first);
  }

  @Test
  void severalThreadsGetTheSameNumbers() throws Exception {
    ExecutorService pool = Executors.newFixedThreadPool(8);
    try {
      List<Future<float[]>> made = new ArrayList<>();
      for (int i = 0; i < 400; i++) {
        double gamma = 1 + i % 25 / 10.0;
        made.add(pool.submit(() -> CodeTables.of(TransferCurve.gamma(gamma), 256, 256)));
      }
      for (int i = 0; i < made.size(); i++) {
        double gamma = 1 + i % 25 / 10.0;
        assertThat(made.get(i).get()).isEqualTo(DecodeTable.of(TransferCurve.gamma(gamma), 256));
      }
    } finally {
      pool.shutdownNow();
    }
  }
}
