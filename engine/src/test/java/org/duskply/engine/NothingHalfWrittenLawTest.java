package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.Pictures;
import org.junit.jupiter.api.Test;

/** Law 6: whatever stops a rendering, the old file stays and nothing else does. */
class NothingHalfWrittenLawTest extends ThreeFrames {
  @Test
  void aDamagedFrameLeavesTheOldFileAndNothingElse() throws IOException {
    Desk desk = desk(60, 200);
    Path out = desk.write("out/print.tif", new byte[] {1, 2, 3});
    byte[] torn = desk.file(1).bytes();
    Arrays.fill(torn, torn.length / 2, torn.length / 2 + 200, (byte) 0x55);
    desk.write("frames/1.tif", torn);
    Path recipe = desk.recipe(HEAD + "steps: [ { pop: a } ]\ndeliverables: { print: print.tif }\n");
    try (Engine engine = Engine.builder().build()) {
      assertThatThrownBy(() -> deliver(engine, recipe))
          .isInstanceOf(DuskplyException.class)
          .hasMessageContaining("1.tif");
    }
    assertThat(Pictures.bytes(out)).containsExactly(1, 2, 3);
    assertThat(filesIn("out")).containsExactly("print.tif");
  }

  @Test
  void aCancelledRenderingLeavesTheOldFileAndNothingElse() throws IOException {
    Desk desk = desk(60, 2000);
    Path out = desk.write("out/print.tif", new byte[] {1, 2, 3});
    Path recipe = desk.recipe(HEAD + "steps: [ { pop: a } ]\ndeliverables: { print: print.tif }\n");
    Progress half =
        new Progress() {
          private volatile double share;

          @Override
          public void reached(double share) {
            this.share = share;
          }

          @Override
          public boolean cancelled() {
            return share > 0.5;
          }
        };
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      assertThatThrownBy(() -> composite.deliver(folder.resolve("out"), Set.of(), half))
          .isInstanceOf(CancelledException.class);
    }
    assertThat(Pictures.bytes(out)).containsExactly(1, 2, 3);
    assertThat(filesIn("out")).containsExactly("print.tif");
  }

  private List<String> filesIn(String sub) throws IOException {
    try (Stream<Path> files = Files.walk(folder.resolve(sub))) {
      return files
          .filter(Files::isRegularFile)
          .map(f -> f.getFileName().toString())
          .sorted()
          .toList();
    }
  }
}
