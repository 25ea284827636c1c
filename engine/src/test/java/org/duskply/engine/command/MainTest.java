package org.duskply.engine.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.Pictures;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command line as a photographer meets it: what it prints, where, and with which status. */
class MainTest {
  private static final String RIGHT =
      """
      duskply: 1
      title: Boathouse
      base: dusk
      frames: { dusk: frames/0.tif, hull: frames/1.tif, night: frames/2.tif }
      masks:
        hull: { polygon: "5,5 35,5 35,25 5,25", feather: 2 }
      steps:
        - { pop: hull, mask: hull, opacity: 0.85, treat: [ { exposure: 0.3 } ] }
        - id: print
          adjust: [ { contrast: 0.1 }, { curve: { points: [[0, 0], [0.5, 0.55], [1, 1]], channel: luminance } } ]
      deliverables:
        print: out/<title>.tif
        web: { file: out/<title>-<width>.jpg, long-edge: 20 }
      """;

  @TempDir Path folder;
  private Desk desk;
  private String out = "";
  private String err = "";

  @BeforeEach
  void frames() {
    desk = new Desk(folder, 40, 30);
    for (int i = 0; i < 3; i++) {
      desk.frame("frames/" + i + ".tif", i);
    }
  }

  private int run(Object... arguments) {
    ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
    ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
    int status =
        Main.run(
            new PrintStream(outBytes, true, StandardCharsets.UTF_8),
            new PrintStream(errBytes, true, StandardCharsets.UTF_8),
            Arrays.stream(arguments).map(Object::toString).toArray(String[]::new));
    out = outBytes.toString(StandardCharsets.UTF_8);
    err = errBytes.toString(StandardCharsets.UTF_8);
    assertThat(err).doesNotContain("\tat ").doesNotContain("Exception");
    return status;
  }

  @Test
  void renderWritesTheFilesBesideTheRecipeAndSaysWhich() {
    assertThat(run("render", desk.recipe(RIGHT))).isEqualTo(Exit.DONE);
    assertThat(folder.resolve("out/Boathouse.tif")).isRegularFile();
    assertThat(folder.resolve("out/Boathouse-20.jpg")).isRegularFile();
    assertThat(out).contains("print: ").contains("40 × 30 pixels").contains("20 × 15 pixels");
    assertThat(err).contains("nothing uses the frame `night`").contains("100 % rendered");
  }

  @Test
  void renderTakesADeliverableAFolderAScaleAndSteps() {
    Path recipe = desk.recipe(RIGHT);
    Path elsewhere = folder.resolve("elsewhere");
    assertThat(
            run(
                "render",
                recipe,
                "--deliver",
                "print",
                "--out",
                elsewhere,
                "--scale",
                "1/2",
                "--threads",
                "2",
                "--memory",
                "300m"))
        .isEqualTo(Exit.DONE);
    assertThat(out).contains("20 × 15 pixels").doesNotContain("web: ");
    assertThat(elsewhere.resolve("out/Boathouse.tif")).isRegularFile();
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void stepsCanBeShownAloneLeftOutOrStoppedAt() {
    Path recipe = desk.recipe(RIGHT);
    List<short[]> pictures = new ArrayList<>();
    for (String[] choice :
        new String[][] {
          {"--until", "hull"},
          {"--only", "hull"},
          {"--skip", "print"},
          {"--skip", "hull"},
          {"--only", "print"}
        }) {
      assertThat(run("render", recipe, "--deliver", "print", choice[0], choice[1]))
          .isEqualTo(Exit.DONE);
      pictures.add(Pictures.codes(folder.resolve("out/Boathouse.tif")));
    }
    assertThat(pictures.get(1)).isEqualTo(pictures.get(0));
    assertThat(pictures.get(2)).isEqualTo(pictures.get(0));
    assertThat(pictures.get(4)).isEqualTo(pictures.get(3));
    assertThat(pictures.get(3)).isNotEqualTo(pictures.get(0));
  }

  @Test
  void aStepThatIsNotThereIsAnsweredWithTheNearestName() {
    assertThat(run("render", desk.recipe(RIGHT), "--only", "hul")).isEqualTo(Exit.FAILED);
    assertThat(err).contains("The recipe has no step hul; did you mean hull?");
  }

  @Test
  void aDeliverableThatIsNotThereIsAnsweredWithThoseThatAre() {
    assertThat(run("render", desk.recipe(RIGHT), "--deliver", "prnt")).isEqualTo(Exit.FAILED);
    assertThat(err).contains("The recipe has no deliverable prnt; it has print, web.");
  }

  @Test
  void checkNamesEverythingWrongAtOnce() {
    Path recipe =
        desk.recipe(
            """
            duskply: 1
            base: dsuk
            frames: { dusk: frames/0.tif }
            masks:
              hull: { polygon: "5,5 35,5" }
            steps:
              - { pop: dusk, mask: hul }
              - { adjust: [ { exposure: lots } ] }
              - { pop: dusk, opacity: 1.5 }
              - { pop: dusk, blend: normal }
            deliverables: { print: out/picture.gif }
            """);
    assertThat(run("check", recipe)).isEqualTo(Exit.PROBLEMS);
    assertThat(err)
        .contains(":2:7:", ":5:", ":7:", ":8:", ":9:", ":10:", ":11:")
        .contains("dusk")
        .contains("^")
        .contains("7 problems.");
  }

  @Test
  void checkOfARightRecipeGivesItsHashes() {
    assertThat(run("check", desk.recipe(RIGHT))).isEqualTo(Exit.DONE);
    assertThat(out)
        .containsPattern("is right\\.\\R")
        .containsPattern("picture [0-9a-f]{64}")
        .containsPattern("recipe  [0-9a-f]{64}");
    assertThat(run("check", folder.resolve("recipe.yaml"), "--canonical")).isEqualTo(Exit.DONE);
    assertThat(out).startsWith("{\"base\":\"dusk\"").endsWith("}" + System.lineSeparator());
  }

  @Test
  void explainTellsStepsFramesAndNeeds() {
    assertThat(run("explain", desk.recipe(RIGHT))).isEqualTo(Exit.DONE);
    String words = out.replaceAll("\\s+", " ");
    assertThat(words)
        .contains(
            "hull: lightens with the frame hull, frames/1.tif (treated with exposure 0.3 stops), where the mask hull shows (50.0 % of the picture), at opacity 0.85.")
        .contains("out = b + m·0.85·(max(b, treated(f)) − b)")
        .contains(
            "print: adjusts what is there: contrast 0.1, then curve points 0→0 0.5→0.55 1→1, channel luminance, everywhere.")
        .contains("40 × 30 pixels, 16 bits")
        .containsPattern("needs \\d+ MB of working memory at least");
  }

  @Test
  void whatIsWrongWithFramesIsSaidInSentences() {
    Path recipe = desk.recipe(RIGHT.replace("frames/1.tif", "frames/gone.tif"));
    assertThat(run("check", recipe)).isEqualTo(Exit.PROBLEMS);
    assertThat(err).contains("frames/gone.tif").contains(":4:").contains("1 problem.");

    byte[] whole = Pictures.bytes(folder.resolve("frames/1.tif"));
    desk.write("frames/1.tif", Arrays.copyOf(whole, whole.length / 2));
    int status = run("render", desk.recipe(RIGHT));
    assertThat(status).isIn(Exit.PROBLEMS, Exit.FAILED);
    assertThat(err).contains("1.tif");
    assertThat(folder.resolve("out/Boathouse.tif")).doesNotExist();
  }

  @Test
  void tooLittleMemoryIsRefusedWithBothNumbers() {
    assertThat(run("render", desk.recipe(RIGHT), "--memory", "1k")).isEqualTo(Exit.FAILED);
    assertThat(err)
        .containsPattern("needs at least \\d+ MB of working memory, and 1 MB may be used");
  }

  @Test
  void aFolderThatCannotBeMadeIsSaid() {
    Path file = desk.write("taken", new byte[1]);
    assertThat(run("render", desk.recipe(RIGHT), "--out", file)).isEqualTo(Exit.FAILED);
    assertThat(err).contains("taken");
  }

  @Test
  void aRecipeThatIsNotThereIsAProblem() {
    assertThat(run("render", folder.resolve("none.yaml"))).isEqualTo(Exit.PROBLEMS);
    assertThat(err).contains("none.yaml").contains("there is no such file");
  }

  @Test
  void wordsThatAreNoCommandAreUsage() {
    assertThat(run()).isEqualTo(Exit.USAGE);
    assertThat(out).contains("render").contains("Exit status");
    assertThat(run("paint")).isEqualTo(Exit.USAGE);
    assertThat(run("render", desk.recipe(RIGHT), "--scale", "2")).isEqualTo(Exit.USAGE);
    assertThat(err).contains("write 1/2, 1/4");
    assertThat(run("render", desk.recipe(RIGHT), "--memory", "much")).isEqualTo(Exit.USAGE);
    assertThat(run("render", desk.recipe(RIGHT), "--threads", "5000")).isEqualTo(Exit.USAGE);
  }

  @Test
  void everyOptionIsDescribed() {
    for (String command : List.of("render", "check", "explain", "schema")) {
      assertThat(run(command, "--help")).isEqualTo(Exit.DONE);
      for (String line : out.split("\\R")) {
        if (line.matches(" +(-\\w, +)?--[a-z]+(=\\S+)?\\.*")) {
          assertThat(out)
              .as("%s: %s", command, line.strip())
              .containsPattern(line.strip() + "\\s+\\S");
        }
      }
    }
  }

  @Test
  void schemaIsJson() {
    assertThat(run("schema")).isEqualTo(Exit.DONE);
    assertThat(out)
        .startsWith("{")
        .contains("https://json-schema.org/draft/2020-12/schema")
        .contains("\"polygon\"");
  }

  @Test
  void nothingStaysBehindInTheRecipesFolder() throws Exception {
    run("render", desk.recipe(RIGHT));
    try (var files = Files.walk(folder)) {
      assertThat(files.map(f -> f.getFileName().toString())).noneMatch(n -> n.endsWith(".part"));
    }
  }
}
