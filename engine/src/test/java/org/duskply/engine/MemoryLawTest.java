package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import org.duskply.engine.testing.Desk;
import org.junit.jupiter.api.Test;

/** Law 5: memory is a setting, and a job that cannot fit is refused before it starts. */
class MemoryLawTest extends ThreeFrames {
  @Test
  void theFloorIsEnoughAndOneByteLessIsRefused() {
    Desk desk = desk(200, 300);
    Path recipe =
        desk.recipe(
            HEAD
                + """
                steps:
                  - { pop: a, mask: { polygon: "20,20 150,30 120,250", feather: 20 } }
                  - { lay: b, mask: { polygon: "0,0 200,0 200,100 0,100", feather: 3 } }
                deliverables: { print: print.tif, web: { file: web.jpg, long-edge: 100 } }
                """);
    long floor;
    try (Engine engine = Engine.builder().memory(1).build()) {
      MemoryException refused =
          catchThrowableOfType(MemoryException.class, () -> deliver(engine, recipe));
      floor = refused.needed();
      assertThat(refused)
          .hasMessageContaining("needs at least")
          .hasMessageContaining("may be used");
    }
    assertThat(Files.exists(folder.resolve("out/print.tif"))).isFalse();
    try (Engine engine = Engine.builder().memory(floor).threads(4).build()) {
      assertThat(deliver(engine, recipe).peakBytes()).isLessThanOrEqualTo(floor);
    }
    try (Engine engine = Engine.builder().memory(floor - 1).build()) {
      assertThatThrownBy(() -> deliver(engine, recipe)).isInstanceOf(MemoryException.class);
    }
  }
}
