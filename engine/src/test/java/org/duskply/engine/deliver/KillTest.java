package org.duskply.engine.deliver;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a killed process leaves (on Unix, SIGKILL): the whole old file, and a temporary one whose
 * name tells what it is. The property {@code duskply.kills} sets how many times it is killed at
 * random.
 */
class KillTest {
  private static final int KILLS = Integer.getInteger("duskply.kills", 2);

  @TempDir private Path folder;

  private Path target() {
    return folder.resolve("print.tif");
  }

  /** Runs the writer until it is in the middle of a file and the given time longer. */
  private void kill(String mode, long millis) throws IOException, InterruptedException {
    Process child =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xshare:auto",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                KilledWriter.class.getName(),
                target().toString(),
                mode)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    byte[] said = child.getInputStream().readNBytes("ready".length());
    assertThat(new String(said, UTF_8)).isEqualTo("ready");
    Thread.sleep(millis);
    child.destroyForcibly().waitFor();
  }

  private List<Path> leftOvers() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> !f.equals(target())).toList();
    }
  }

  /** Every byte of the file is of one generation, and none is missing. */
  private int generation() throws IOException {
    byte[] bytes = Files.readAllBytes(target());
    assertThat(bytes).hasSize(KilledWriter.SIZE);
    for (byte b : bytes) {
      assertThat(b).isEqualTo(bytes[0]);
    }
    return bytes[0];
  }

  @Test
  void inTheMiddleOfAFileTheOldOneStays() throws Exception {
    kill("stall", 0);
    assertThat(generation()).isEqualTo(1);
    assertThat(leftOvers()).singleElement().matches(SafeFile::isLeftOver);
    try (SafeFile next = SafeFile.open(target())) { // what was left does not stand in the way
      next.append("next".getBytes(UTF_8));
      next.commit();
    }
    assertThat(target()).hasContent("next");
  }

  @Test
  void atAnyTimeTheFileIsWhole() throws Exception {
    Random random = new Random(5);
    for (int i = 0; i < KILLS; i++) {
      kill("run", random.nextInt(60));
      generation();
      assertThat(leftOvers()).allMatch(SafeFile::isLeftOver).hasSizeLessThanOrEqualTo(i + 1);
    }
  }
}
