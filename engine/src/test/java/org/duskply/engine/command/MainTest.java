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
import org.duskply.engine.measure.Scene;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.Pictures;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;

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
  void alternatesAreRenderedTogetherOrOneAlone() {
    Path recipe =
        desk.recipe(
            RIGHT.replace(
                    "out/<title>.tif",
                    "{ file: out/<title>-<alternate>.tif, alternates: [main, plain] }")
                + "alternates: { plain: { skip: [print] } }\n");
    assertThat(run("render", recipe, "--deliver", "print")).isEqualTo(Exit.DONE);
    assertThat(out).contains("print: ").contains("print (plain): ");
    assertThat(folder.resolve("out/Boathouse-main.tif")).isRegularFile();
    assertThat(folder.resolve("out/Boathouse-plain.tif")).isRegularFile();
    Path alone = folder.resolve("alone");
    assertThat(run("render", recipe, "--alternate", "plain", "--out", alone)).isEqualTo(Exit.DONE);
    assertThat(out).contains("print (plain): ").doesNotContain("web");
    assertThat(alone.resolve("out/Boathouse-main.tif")).doesNotExist();
    assertThat(run("explain", recipe, "--alternate", "plain")).isEqualTo(Exit.DONE);
    assertThat(out).startsWith("Boathouse, alternate plain").contains("print (left out): ");
    assertThat(run("explain", recipe, "--alternate", "plane")).isEqualTo(Exit.USAGE);
    assertThat(err).contains("The recipe has no alternate plane; did you mean plain?");
  }

  @Test
  void checkSpeaksOfAllAlternates() {
    Path recipe =
        desk.recipe(
            RIGHT + "alternates: { more: { show: [late], set: { late: { opacity: 3 } } } }\n");
    assertThat(run("check", recipe)).isEqualTo(Exit.PROBLEMS);
    assertThat(err).contains("there is no step called `late`");
    Path other =
        desk.recipe(
            RIGHT
                    .replace("- id: print", "- { id: late, pop: gone, skip: true }\n  - id: print")
                    .replace("night: frames/2.tif", "gone: frames/gone.tif")
                + "alternates: { more: { show: [late] } }\n");
    assertThat(run("check", other)).isEqualTo(Exit.PROBLEMS);
    assertThat(err).contains("frames/gone.tif");
    assertThat(run("render", other, "--alternate", "main")).isEqualTo(Exit.DONE);
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
    assertThat(run("render", desk.recipe(RIGHT), "--only", "hul")).isEqualTo(Exit.USAGE);
    assertThat(err).contains("The recipe has no step hul; did you mean hull?");
    assertThat(run("explain", desk.recipe(RIGHT), "--until", "nothing-like-it"))
        .isEqualTo(Exit.USAGE);
    assertThat(err).contains("The recipe has no step nothing-like-it.");
  }

  @Test
  void aDeliverableThatIsNotThereIsAnsweredWithThoseThatAre() {
    assertThat(run("render", desk.recipe(RIGHT), "--deliver", "prnt")).isEqualTo(Exit.USAGE);
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
  void checkMeasuresWhetherFramesWereDevelopedAlikeUnlessToldNotTo() {
    Desk scenes = new Desk(folder, Scene.WIDTH, Scene.HEIGHT);
    for (int i = 0; i < 2; i++) {
      byte[] file = Scene.frame(i, 16, -2 * i, Scene.curve(0.5), Scene.Flash.NONE).bytes();
      scenes.write("frames/" + i + ".tif", file);
    }
    Path recipe =
        desk.recipe(
            "duskply: 1\nbase: dusk\nframes: { dusk: frames/0.tif, dark: frames/1.tif }\n"
                + "steps: [ { pop: dark } ]\n");
    assertThat(run("check", recipe)).isEqualTo(Exit.DONE);
    assertThat(err).contains("notice: Between dusk and dark the exposure ratio changes from");
    assertThat(run("check", recipe, "--headers-only")).isEqualTo(Exit.DONE);
    assertThat(err).doesNotContain("Between dusk and dark");
  }

  @Test
  void renderCanMakeWhatTheFinishedPictureIsComparedWith() {
    Path recipe = desk.recipe("before: hull\n" + RIGHT);
    assertThat(run("render", recipe, "--before", "--deliver", "print")).isEqualTo(Exit.DONE);
    assertThat(out).startsWith("print (before): ").contains("Boathouse-before.tif, 40 × 30 pixels");
    assertThat(folder.resolve("out/Boathouse.tif")).doesNotExist();
    assertThat(Pictures.codes(folder.resolve("out/Boathouse-before.tif")))
        .isEqualTo(Pictures.codes(folder.resolve("frames/1.tif")));
  }

  @Test
  void explainTellsStepsFramesAndNeeds() {
    assertThat(run("explain", desk.recipe(RIGHT))).isEqualTo(Exit.DONE);
    String words = out.replaceAll("\\s+", " ");
    assertThat(words)
        .contains(
            "hull: The frame hull (frames/1.tif) lightens the picture channel by channel at 85 %, inside"
                + " the mask hull (a polygon of 4 corners, feathered by 2 px; 50.0 % of the picture). Before that, the frame"
                + " is made brighter by 0.3 stops.")
        .contains("out = b + m·0.85·(max(b, T(f)) − b); T: x·2^0.3")
        .contains(
            "print: The picture is adjusted everywhere: its contrast is raised by 10 % about a linear"
                + " grey of 0.18, with hues kept; then its encoded luminance follows a curve through"
                + " 0 → 0, 0.5 → 0.55 and 1 → 1.")
        .contains("out = A(b); A: Y → 0.18·(Y/0.18)^1.1, then Y → L(curve(E(Y)))")
        .contains("40 × 30 pixels of 16 bits")
        .containsPattern("needs \\d+ MB of working memory at least");
    assertThat(out.lines()).allMatch(line -> line.length() <= 100);
    assertThat(out.lines()).noneMatch(line -> line.strip().startsWith("%"));
    assertThat(err).contains("nothing uses the frame `night`");
  }

  @Test
  void explainFollowsTheSteps() {
    Path recipe = desk.recipe(RIGHT);
    assertThat(run("explain", recipe, "--only", "print")).isEqualTo(Exit.DONE);
    assertThat(out)
        .contains("hull (left out): The frame hull")
        .contains("print: The picture is adjusted")
        .doesNotContain("hull: The file");
    assertThat(run("explain", recipe, "--skip", "print")).isEqualTo(Exit.DONE);
    assertThat(out).contains("hull: The frame hull").contains("print (left out): The picture");
    assertThat(run("explain", recipe, "--until", "hull", "--scale", "1/2")).isEqualTo(Exit.DONE);
    assertThat(out).contains("print (left out): The picture").contains("20 × 15 pixels");
  }

  @Test
  void whatIsWrongWithFramesIsSaidInSentences() {
    Path recipe = desk.recipe(RIGHT.replace("frames/1.tif", "frames/gone.tif"));
    assertThat(run("check", recipe)).isEqualTo(Exit.PROBLEMS);
    assertThat(err).contains("frames/gone.tif").contains(":4:").contains("1 problem.");

    byte[] whole = Pictures.bytes(folder.resolve("frames/1.tif"));
    desk.write("frames/1.tif", Arrays.copyOf(whole, whole.length / 2));
    assertThat(run("render", desk.recipe(RIGHT))).isEqualTo(Exit.PROBLEMS);
    assertThat(err).contains("1.tif");
    assertThat(folder.resolve("out/Boathouse.tif")).doesNotExist();
  }

  /** Enough is left of the file for its directory; the pixels are found missing when rendered. */
  @Test
  void aFrameWhosePixelsAreDamagedIsAProblemOfTheFrames() {
    Path frame = folder.resolve("frames/1.tif");
    byte[] damaged = Pictures.bytes(frame);
    Arrays.fill(damaged, damaged.length / 2, damaged.length * 3 / 4, (byte) 0x55);
    desk.write("frames/1.tif", damaged);
    assertThat(run("render", desk.recipe(RIGHT))).isEqualTo(Exit.PROBLEMS);
    assertThat(err).contains("1.tif");
    assertThat(folder.resolve("out/Boathouse.tif")).doesNotExist();
  }

  @Test
  void aFrameOfAnotherSizeIsAProblemThatNamesBoth() {
    new Desk(folder, 41, 30).frame("frames/1.tif", 1);
    assertThat(run("render", desk.recipe(RIGHT))).isEqualTo(Exit.PROBLEMS);
    assertThat(err).contains("frames/1.tif is 41 × 30 pixels and the base dusk is 40 × 30");
  }

  @Test
  void framesElsewhereNeedLeave() throws Exception {
    Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
    Path recipe = folder.resolve("recipes/recipe.yaml");
    Files.createDirectories(recipe.getParent());
    Files.move(folder.resolve("frames"), elsewhere.resolve("frames"));
    Files.writeString(recipe, RIGHT.replace("frames/", "../elsewhere/frames/"));
    assertThat(run("check", recipe)).isEqualTo(Exit.PROBLEMS);
    assertThat(err).contains("--allow DIR");
    assertThat(run("check", recipe, "--allow", elsewhere)).isEqualTo(Exit.DONE);
  }

  @Test
  void tooLittleMemoryIsRefusedWithBothNumbers() {
    assertThat(run("render", desk.recipe(RIGHT), "--memory", "1k")).isEqualTo(Exit.FAILED);
    assertThat(err)
        .containsPattern("needs at least [1-9]\\d* [kM]B of working memory, and 1 kB may be used");
    assertThat(folder.resolve("out/Boathouse.tif")).doesNotExist();
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
  void progressIsALineEveryTenthWhereNoTerminalIs() {
    assertThat(run("render", desk.recipe(RIGHT))).isEqualTo(Exit.DONE);
    List<Integer> tenths =
        err.lines()
            .filter(line -> line.contains(" % rendered"))
            .map(line -> Integer.parseInt(line.substring(0, line.indexOf(' '))))
            .toList();
    assertThat(tenths).isSorted().doesNotHaveDuplicates().endsWith(100).allMatch(t -> t % 10 == 0);
    assertThat(err).doesNotContain("\r").doesNotContain("\033");
    assertThat(out.lines()).hasSize(2);
  }

  @Test
  void whatAFileCouldNotHoldIsSaid() {
    String bright = RIGHT.replace("contrast: 0.1", "exposure: 1");
    assertThat(run("render", desk.recipe(bright), "--deliver", "print")).isEqualTo(Exit.DONE);
    assertThat(out)
        .containsPattern("print: .*Boathouse\\.tif, 40 × 30 pixels, \\d+\\.\\d kB, \\d+\\.\\d\\d %")
        .contains("of them brighter or purer than the file can hold");
    String dark = RIGHT.replace("contrast: 0.1", "exposure: -3");
    assertThat(run("render", desk.recipe(dark), "--deliver", "print")).isEqualTo(Exit.DONE);
    assertThat(out).doesNotContain("can hold");
    assertThat(RenderCommand.clipped(1e-7)).startsWith(", less than 0.01 % of them");
    assertThat(RenderCommand.size(1_234_567)).isEqualTo("1.2 MB");
  }

  @Test
  void whatIsNotWrittenRightlyIsSaidWithWhereHelpIs() {
    Path recipe = desk.recipe(RIGHT);
    assertThat(run()).isEqualTo(Exit.USAGE);
    assertThat(err).contains("render").contains("Exit status");
    assertWrong("`duskply` has no command `rendr`; did you mean `render`?", "rendr", recipe);
    assertWrong("Missing required parameter: 'RECIPE'", "check");
    assertWrong("`duskply check` has no option `--scale`", "check", recipe, "--scale", "1/2");
    assertWrong("did you mean `--threads`?", "render", recipe, "--thread", "2");
    assertWrong("is one word too many for `duskply render`.", "render", recipe, recipe);
    assertWrong("write 1/2, 1/4", "render", recipe, "--scale", "2");
    assertWrong("write 1/2, 1/4", "render", recipe, "--scale", "1/65");
    assertWrong("write 800m or 2g", "render", recipe, "--memory", "much");
    assertWrong("write 800m or 2g", "render", recipe, "--memory", "0m");
    assertWrong("write 800m or 2g", "render", recipe, "--memory", "999999999999g");
    assertWrong("write 1 to 1024", "render", recipe, "--threads", "5000");
    assertWrong("write 1 to 1024", "render", recipe, "--threads", "two");
    assertWrong("a path cannot be empty", "check", "");
  }

  private void assertWrong(String sentence, Object... arguments) {
    assertThat(run(arguments)).as(sentence).isEqualTo(Exit.USAGE);
    assertThat(err).contains(sentence).contains("--help` says what can be written.");
    assertThat(err.lines()).hasSize(2);
    assertThat(out).isEmpty();
  }

  @Test
  void everyCommandOptionAndWordIsDescribed() {
    CommandLine program = Main.commands(Streams.of(System.out, System.err));
    List<CommandLine> all = new ArrayList<>(program.getSubcommands().values());
    assertThat(program.getSubcommands().keySet())
        .containsExactlyInAnyOrder("render", "check", "explain", "schema");
    all.add(program);
    for (CommandLine command : all) {
      CommandSpec spec = command.getCommandSpec();
      assertThat(spec.usageMessage().description()).as(spec.name()).isNotEmpty();
      for (ArgSpec argument : spec.args()) {
        assertThat(argument.description()).as(spec.name() + " " + argument).isNotEmpty();
        assertThat(argument.description()[0]).endsWith(".");
      }
    }
  }

  @Test
  void helpAndVersionAreResults() {
    assertThat(run("render", "--help")).isEqualTo(Exit.DONE);
    assertThat(out).contains("--scale=1/n").contains("65 % of Java's heap");
    assertThat(out.lines()).allMatch(line -> line.length() <= 100);
    assertThat(err).isEmpty();
    assertThat(run("--help")).isEqualTo(Exit.DONE);
    assertThat(out)
        .contains("  0     done")
        .contains("  1     the recipe or its frames have problems")
        .contains("  2  ")
        .contains("  3  ")
        .contains("  130   given up");
    assertThat(run("--version")).isEqualTo(Exit.DONE);
    assertThat(out).startsWith("duskply ");
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
