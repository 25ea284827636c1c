package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Stream;
import org.duskply.engine.testing.Desk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A delivery of several files that is stopped changes none of them, whenever it is stopped. */
class AllOrNoneTest {
  private static final String RECIPE =
      """
      duskply: 1
      base: dusk
      frames: { dusk: dusk.tif }
      deliverables: { a: a.tif, b: b.jpg, c: c.png }
      """;

  @TempDir Path folder;

  @Test
  void stoppedAtAnyQuestionAllFilesAreThereOrNone() throws IOException {
    Desk desk = new Desk(folder, 30, 20);
    desk.frame("dusk.tif", 1);
    Path recipe = desk.recipe(RECIPE);
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(recipe)) {
      int questions = 1;
      while (stopped(composite, questions)) {
        assertThat(files()).as("stopped at question %d", questions).isZero();
        questions++;
      }
      assertThat(questions).isGreaterThan(3);
      assertThat(files()).isEqualTo(3);
    }
  }

  /** Answers that question with yes; false if it was never asked. */
  private boolean stopped(Composite composite, int question) {
    Asked progress = new Asked(question);
    Path out = folder.resolve("out");
    if (question > 1_000) {
      throw new AssertionError("The work asks without end");
    }
    try {
      composite.deliver(out, Set.of(), progress);
      return false;
    } catch (CancelledException e) {
      return true;
    }
  }

  private long files() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("out"))) {
      return files.count();
    }
  }

  @Test
  void aNameThatIsNotThereIsRefusedBeforeAnythingIsMade() {
    Desk desk = new Desk(folder, 30, 20);
    desk.frame("dusk.tif", 1);
    Path recipe = desk.recipe(RECIPE);
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(recipe)) {
      assertThatThrownBy(
              () -> composite.deliver(folder.resolve("out"), Set.of("a", "d"), Progress.SILENT))
          .isInstanceOf(UnknownNameException.class)
          .hasMessage("The recipe has no deliverable d; it has a, b, c.");
      assertThat(folder.resolve("out")).doesNotExist();
    }
  }

  /** Says yes to one question. */
  private static final class Asked implements Progress {
    private int left;

    Asked(int question) {
      this.left = question;
    }

    @Override
    public void reached(double share) {}

    @Override
    public synchronized boolean cancelled() {
      left--;
      return left <= 0;
    }
  }
}
