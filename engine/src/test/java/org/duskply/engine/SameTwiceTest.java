package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.Pictures;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The same bits from the interpreter and from both compilers, in another time zone and language,
 * and the same bytes of every file when it is written again. Java's own {@code Math.pow} has
 * differed between interpreter and compiler; other libraries between machines, threads and
 * releases.
 */
@Tag("bits")
class SameTwiceTest {
  private static final String RECIPE =
      """
      duskply: 1
      base: dusk
      frames: { dusk: 0.tif, a: 1.tif, b: { file: 2.tif, exposure: 0.37, gel: 42 } }
      masks: { hull: { polygon: "5,5 40,9 30,35", feather: 7 } }
      steps:
        - { pop: a, mask: hull }
        - { lay: b, blend: screen, opacity: 0.6 }
        - adjust:
            - { curve: { points: [[0, 0], [0.4, 0.46], [1, 1]], channel: luminance } }
            - { contrast: 0.2 }
            - { saturation: 1.1 }
            - { power: 1.2 }
      deliverables:
        print: { file: print.tif, profile: a98-rgb }
        web: { file: web.jpg, long-edge: 30 }
        screen: { file: screen.png, depth: 8 }
      """;

  @TempDir Path folder;

  private Path recipe() {
    Desk desk = new Desk(folder, 48, 40);
    for (int i = 0; i < 3; i++) {
      desk.frame(i + ".tif", i);
    }
    return desk.recipe(RECIPE);
  }

  /** What a child process says of a recipe: the hash of the picture and of its files. */
  public static void main(String[] args) {
    System.out.print(told(Path.of(args[0]), Path.of(args[1]), 2, Set.of("print")));
  }

  private static String told(Path recipe, Path out, int threads, Set<String> names) {
    StringBuilder text = new StringBuilder();
    try (Engine engine = Engine.builder().threads(threads).build();
        Composite composite = engine.open(recipe)) {
      text.append(PictureBits.sha256(Pictures.planes(composite.image())));
      for (Delivered.File file : composite.deliver(out, names, Progress.SILENT).files()) {
        text.append(' ').append(sha256(Pictures.bytes(file.path())));
      }
    }
    return text.toString();
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError(e);
    }
  }

  /** A process that says, in time, what it makes of a recipe. */
  private Process anotherJvm(Path recipe, String... options) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of(options));
    command.addAll(
        List.of("-cp", System.getProperty("java.class.path"), SameTwiceTest.class.getName()));
    Path out = folder.resolve("child " + options[0]);
    command.addAll(List.of(recipe.toString(), out.toString()));
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  private static String said(Process child) throws IOException, InterruptedException {
    String said = new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(child.waitFor(1, TimeUnit.MINUTES)).isTrue();
    return said;
  }

  @Test
  void interpretedAndCompiledAreTheSameBits() throws Exception {
    Path recipe = recipe();
    String here = told(recipe, folder.resolve("out"), 1, Set.of("print"));
    // Side by side: each takes seconds on one core.
    Process interpreted = anotherJvm(recipe, "-Xint");
    Process compiled =
        anotherJvm(
            recipe,
            "-Xcomp",
            "-XX:CompileCommand=quiet",
            "-XX:CompileCommand=compileonly,org.duskply.*::*");
    assertThat(said(interpreted)).isEqualTo(here);
    assertThat(said(compiled)).isEqualTo(here);
  }

  @Test
  void placeAndLanguageDoNotMatter() throws Exception {
    Path recipe = recipe();
    String here = told(recipe, folder.resolve("out"), 1, Set.of("print"));
    Process elsewhere =
        anotherJvm(
            recipe,
            "-XX:TieredStopAtLevel=1",
            "-Duser.language=tr",
            "-Duser.country=TR",
            "-Duser.timezone=GMT+14:00",
            "-Dfile.encoding=ISO-8859-1");
    assertThat(said(elsewhere)).isEqualTo(here);
  }

  @Test
  void filesWrittenAgainAreTheSameBytes() {
    Path recipe = recipe();
    String first = told(recipe, folder.resolve("one"), 1, Set.of());
    for (int threads : new int[] {1, 2, 8}) {
      assertThat(told(recipe, folder.resolve("again-" + threads), threads, Set.of()))
          .isEqualTo(first);
    }
  }
}
