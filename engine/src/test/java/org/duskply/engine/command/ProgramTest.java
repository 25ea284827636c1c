package org.duskply.engine.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.duskply.engine.testing.Desk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The program as a process of its own: what only shows from outside. */
class ProgramTest {
  private static final int SECONDS = 60;

  @TempDir Path folder;

  private static final class Ran {
    int status;
    byte[] output = new byte[0];
    String errors = "";
  }

  private Process start(Map<String, String> environment, String main, Object... arguments)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx200m", "-XX:TieredStopAtLevel=1", "-Djava.awt.headless=true"));
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), main));
    Stream.of(arguments).map(Object::toString).forEach(command::add);
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().keySet().removeIf(k -> k.startsWith("LC_") || k.startsWith("JAVA_"));
    builder.environment().remove("JDK_JAVA_OPTIONS");
    builder.environment().putAll(environment);
    builder.redirectOutput(folder.resolve("stdout").toFile());
    builder.redirectError(folder.resolve("stderr").toFile());
    return builder.start();
  }

  private Ran end(Process process) throws Exception {
    assertThat(process.waitFor(SECONDS, TimeUnit.SECONDS)).isTrue();
    Ran ran = new Ran();
    ran.status = process.exitValue();
    ran.output = Files.readAllBytes(folder.resolve("stdout"));
    ran.errors = Files.readString(folder.resolve("stderr"), StandardCharsets.ISO_8859_1);
    assertThat(ran.errors).doesNotContain("\tat ").doesNotContain("Exception");
    return ran;
  }

  private Ran run(Map<String, String> environment, Object... arguments) throws Exception {
    return end(start(environment, Main.class.getName(), arguments));
  }

  @Test
  @DisabledOnOs(OS.WINDOWS) // a locale is chosen otherwise there
  void aTerminalWithoutUtf8GetsPlainLettersAndProgramsGetUtf8() throws Exception {
    Desk desk = new Desk(folder, 20, 10);
    desk.frame("a.tif", 1);
    Path recipe =
        desk.recipe(
            """
            duskply: 1
            title: Café
            base: a
            frames: { a: a.tif }
            deliverables: { print: "<title>.tif" }
            """);
    Map<String, String> plain = Map.of("LC_ALL", "C");
    Ran explained = run(plain, "explain", recipe);
    assertThat(explained.status).isEqualTo(Exit.DONE);
    assertThat(new String(explained.output, StandardCharsets.US_ASCII))
        .startsWith("Cafe")
        .contains("20 x 10 pixels");
    Ran canonical = run(plain, "check", "--canonical", recipe);
    assertThat(new String(canonical.output, StandardCharsets.UTF_8)).startsWith("{\"base\"");
    Ran schema = run(plain, "schema");
    assertThat(new String(schema.output, StandardCharsets.UTF_8))
        .isEqualTo(org.duskply.recipe.RecipeSchema.text());
    Ran rendered = run(Map.of("LC_ALL", "C.UTF-8"), "render", recipe);
    assertThat(rendered.status).isEqualTo(Exit.DONE);
    assertThat(new String(rendered.output, StandardCharsets.UTF_8)).contains("20 × 10 pixels");
  }

  /** Enough bands that the signal comes before the end; frames of a few rows decode fast. */
  @Test
  @DisabledOnOs(OS.WINDOWS) // ends processes without asking
  void aSignalLeavesNeitherFilesNorTraces() throws Exception {
    Desk desk = new Desk(folder, 700, 9000);
    desk.frame("a.tif", 1);
    Path recipe =
        desk.recipe(
            """
            duskply: 1
            base: a
            frames: { a: a.tif }
            masks: { m: { polygon: "10,10 690,10 690,8990 10,8990", feather: 300 } }
            steps: [ { adjust: [ { saturation: 1.2 }, { power: 1.1 } ], mask: m } ]
            deliverables: { print: out/a.tif, web: out/a.png }
            """);
    Process process = start(Map.of(), Main.class.getName(), "render", recipe, "--threads", "1");
    Path errors = folder.resolve("stderr");
    for (int i = 0; i < SECONDS * 100 && !Files.readString(errors).contains("% rendered"); i++) {
      assertThat(process.isAlive()).isTrue();
      Thread.sleep(10);
    }
    process.destroy();
    Ran ran = end(process);
    assertThat(ran.status).isIn(Exit.CANCELLED, 128 + 15); // the JVM tells which signal it was
    assertThat(ran.errors)
        .contains("% rendered")
        .contains("The rendering was cancelled; no file has been changed.");
    try (Stream<Path> left = Files.list(folder.resolve("out"))) {
      assertThat(left).isEmpty();
    }
  }

  /**
   * Shading jars into one loses service files unless they are merged, and ImageIO then finds no
   * readers. Ours are made directly: with every service file hidden the frames are read all the
   * same.
   */
  @Test
  void framesAreReadWithoutServiceFiles() throws Exception {
    Desk desk = new Desk(folder, 40, 30);
    desk.frame("own.tif", 1);
    desk.write("packbits.tif", desk.file(2).compression(32773).predictor(1).bytes());
    BufferedImage picture = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
    picture.setRGB(7, 9, 0xffeedd);
    ImageIO.write(picture, "png", folder.resolve("a.png").toFile());
    ImageIO.write(picture, "jpg", folder.resolve("a.jpg").toFile());
    Path recipe =
        desk.recipe(
            """
            duskply: 1
            base: own
            frames: { own: own.tif, packed: packbits.tif, png: a.png, jpg: a.jpg }
            steps: [ { pop: packed }, { pop: png }, { pop: jpg, opacity: 0.5 } ]
            deliverables: { tif: out/a.tif, png: out/a.png, jpg: out/a.jpg }
            """);
    Ran ran = end(start(Map.of(), WithoutServices.class.getName(), "render", recipe));
    assertThat(ran.errors).contains("100 % rendered");
    assertThat(ran.status).isEqualTo(Exit.DONE);
    assertThat(ImageIO.read(folder.resolve("out/a.png").toFile()).getWidth()).isEqualTo(40);
    assertThat(folder.resolve("out/a.jpg")).isNotEmptyFile();
    assertThat(folder.resolve("out/a.tif")).isNotEmptyFile();
  }
}
