package org.duskply.benchmarks.sidebyside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.duskply.benchmarks.workload.MakeWorkload;
import org.duskply.benchmarks.workload.Workload;
import org.duskply.engine.Composite;
import org.duskply.engine.Engine;
import org.duskply.engine.Progress;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole of it on the smallest workload. That it is done is asked here, never how fast. */
class SideBySideTest {
  @TempDir static Path work;
  private static Path recipe = Path.of("");

  @BeforeAll
  static void make() throws IOException {
    Path folder = work.resolve("small");
    MakeWorkload.make(Workload.called("small").orElseThrow(), folder);
    recipe = folder.resolve("recipe.yaml");
  }

  private static OwnProgram own() {
    return new OwnProgram(
        List.of("-cp", System.getProperty("java.class.path"), "org.duskply.engine.command.Main"));
  }

  @Test
  void measuresOurProgramAndWritesItDown() throws IOException {
    assumeTrue(Processes.canTime(), "GNU time is not installed");
    Path root = Path.of("..").toAbsolutePath();
    Options options =
        Options.of(root, List.of("--work", work.toString(), "--rounds", "2", "--only", "small"));
    Path file = new SideBySide(root, options, own()).measure();
    assertThat(file).isEqualTo(work.resolve("RESULTS.md"));
    assertThat(Files.readString(file))
        .contains("- Commit: ", "- Processor: ", "- Java: ", "- Our flags: `java -Xmx1g ")
        .containsPattern("\\| small \\| Duskply \\| [\\d.]+ \\([\\d.]+ to [\\d.]+\\) \\|")
        .contains("## Again")
        .doesNotContain("libvips 8");
  }

  @Test
  void aProgramThatFailsIsNamedWithWhatItSaid() {
    assumeTrue(Processes.canTime(), "GNU time is not installed");
    // In a folder without a recipe.
    Program wrong = own().render(Workload.called("small").orElseThrow(), work);
    Contest contest = new Contest("small", List.of(wrong), work.resolve("pictures"), line -> {});
    assertThatThrownBy(() -> contest.run(1))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("ended with status")
        .hasMessageContaining("recipe.yaml");
  }

  /** The floor encodes the very picture, and prints a number alone. */
  @Test
  void theFloorEncodesTheFinishedPicture() {
    Path finished;
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      finished =
          composite
              .deliver(work.resolve("finished"), Set.of(), Progress.SILENT)
              .files()
              .get(0)
              .path();
    }
    Path file = work.resolve("floor.tif");
    List<String> command =
        OwnProgram.command(OwnProgram.FLAGS, Floor.class, recipe, finished, file);
    assertThat(Double.parseDouble(Processes.run(command, work))).isPositive();
    assertThat(PictureDifference.mean(finished, file)).isZero();
  }

  @Test
  void editsAreMadeInTheOrderOfTheWork() {
    List<String> rows = Edits.table(recipe, work.resolve("edits"), 1).lines().skip(2).toList();
    assertThat(rows.stream().map(r -> r.substring(0, r.indexOf("|", r.indexOf("|", 2) + 1) + 1)))
        .containsExactly(
            "| nothing kept | 1/4 |",
            "| nothing kept | full size |",
            "| last step, #24 | 1/4 |",
            "| last step, #24 | full size |",
            "| step #3 | 1/4 |",
            "| step #3 | full size |",
            "| last pop, #23 | 1/4 |",
            "| last pop, #23 | full size |");
    // Every strip of the base, and some of each other frame.
    String cold = rows.get(0);
    String[] cells = cold.split("\\|");
    assertThat(Integer.parseInt(cells[cells.length - 1].strip())).isGreaterThan(24);
    assertThat(rows.get(2)).contains("(≤ 0.10: ");
    assertThat(rows.get(5)).contains("(≤ 0.30: ");
  }
}
