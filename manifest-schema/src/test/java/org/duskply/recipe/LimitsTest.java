package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.time.Duration;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Hostile recipes end soon, with one sentence, whatever their size. */
class LimitsTest {
  private static final Duration SOON = Duration.ofSeconds(60);

  @TempDir Path folder;

  @Test
  void fileOfAHundredMegabytesIsNotEvenOpened() throws IOException {
    Path file = folder.resolve("huge.yaml");
    try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
      sparse.setLength(100L << 20);
    }
    Reading reading = soon(() -> RecipeReader.strict().check(file));
    assertSays(reading, "this file is larger than 4 MB, the limit of a recipe; is it one?");
  }

  @Test
  void streamOfAHundredMegabytesIsDroppedAtTheLimit() {
    Endless stream = new Endless(100L << 20);
    Reading reading = soon(() -> RecipeReader.strict().check("huge", stream));
    assertSays(reading, "this file is larger than 4 MB, the limit of a recipe; is it one?");
    // The stream is asked for at most one buffer beyond the limit.
    assertThat(stream.given).isLessThan(Limits.FILE_BYTES + (1 << 20));
  }

  @Test
  void aFileOfExactlyTheLimitIsRead() {
    String head = MistakeCases.SOUND + "\n";
    String text = head + "# note\n".repeat((Limits.FILE_BYTES - head.length()) / 7);
    text += " ".repeat(Limits.FILE_BYTES - text.length());
    assertThat(text).hasSize(Limits.FILE_BYTES);
    byte[] bytes = text.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    assertThat(soon(() -> RecipeReader.strict().check("limit.yaml", bytes)).recipe()).isNotNull();
  }

  @Test
  void aliasBombIsNeverExpanded() {
    StringBuilder text = new StringBuilder(MistakeCases.SOUND).append("\nx-0: &a0 [lol]\n");
    for (int level = 1; level <= 9; level++) {
      String alias = "*a" + (level - 1);
      String row = IntStream.range(0, 9).mapToObj(i -> alias).collect(Collectors.joining(", "));
      text.append("x-").append(level).append(": &a").append(level);
      text.append(" [").append(row).append("]\n");
    }
    Reading reading = soon(() -> RecipeReader.strict().check("bomb.yaml", text.toString()));
    assertThat(reading.recipe()).isNull();
    assertThat(MistakeCases.line(reading.problems().get(0)))
        .startsWith("4:6 anchors (&name) are not used in recipes");
    assertThat(reading.problems()).hasSize(10 + 81);
  }

  @Test
  void aHundredThousandStepsAreCountedNoFurtherThanTheLimit() {
    String text = MistakeCases.SOUND + "\nsteps:\n" + "  - { pop: dusk }\n".repeat(100_000);
    Reading reading = soon(() -> RecipeReader.strict().check("steps.yaml", text));
    assertSays(
        reading,
        "`steps` has more than 10000 steps, which is the limit; the file was read no further");
  }

  @Test
  void tenThousandStepsAreRead() {
    String text = MistakeCases.SOUND + "\nsteps:\n" + "  - { pop: dusk }\n".repeat(Limits.STEPS);
    Reading reading = soon(() -> RecipeReader.strict().check("steps.yaml", text));
    Recipe recipe = reading.orThrow();
    assertThat(recipe.steps()).hasSize(Limits.STEPS);
    assertThat(recipe.places().at("steps/#10000/pop").line()).isEqualTo(Limits.STEPS + 4);
  }

  @Test
  void aHundredAdjustmentsAreReadAndOneMoreIsNot() {
    String list = "{ exposure: 0.1 },".repeat(Limits.ADJUSTMENTS - 1) + "{ exposure: 0.1 }";
    String steps = "\nsteps:\n  - { adjust: [" + list + "] }\n  - { pop: dusk, treat: [" + list;
    RecipeReader reader = RecipeReader.strict();
    assertThat(reader.check("a.yaml", MistakeCases.SOUND + steps + "] }").recipe()).isNotNull();
    Reading over = reader.check("a.yaml", MistakeCases.SOUND + steps + ", { power: 2 }] }");
    assertSays(over, "`treat` has 101 adjustments; the limit is 100");
  }

  @Test
  void stepsInGroupsCountToo() {
    String group = "  - group: [" + "{ pop: dusk },".repeat(4000) + "{ pop: dusk }]\n";
    Reading reading =
        soon(
            () ->
                RecipeReader.strict()
                    .check("g.yaml", MistakeCases.SOUND + "\nsteps:\n" + group.repeat(3)));
    assertSays(reading, "the recipe has 12006 steps with those in groups; the limit is 10000");
  }

  @Test
  void alternatesAreFew() {
    StringBuilder text = new StringBuilder(MistakeCases.SOUND).append("\nalternates:\n");
    for (int i = 0; i <= Limits.ALTERNATES; i++) {
      text.append("  a").append(i).append(": {}\n");
    }
    assertSays(
        soon(() -> RecipeReader.strict().check("a.yaml", text.toString())),
        "there are 65 alternates; the limit is 64");
  }

  @Test
  void deliverablesAreFew() {
    StringBuilder text = new StringBuilder(MistakeCases.SOUND).append("\ndeliverables:\n");
    for (int i = 0; i <= Limits.DELIVERABLES; i++) {
      text.append("  d").append(i).append(": out/<deliverable>.jpg\n");
    }
    assertSays(
        soon(() -> RecipeReader.strict().check("d.yaml", text.toString())),
        "there are 65 deliverables; the limit is 64");
  }

  /** Those of alternates count, since all of them are prepared; dodges have nothing to prepare. */
  @Test
  void adjustmentsAreCountedInAllTheRecipe() {
    String list = "[" + "{ power: 2 },".repeat(99) + "{ power: 3 }]";
    String steps =
        "\nsteps:\n"
            + ("  - { adjust: " + list + " }\n").repeat(8)
            + ("  - group: [{ pop: dusk, treat: " + list + " }, { lay: dusk, treat: " + list)
            + (" }]\n    treat: " + list + "\n  - { dodge: 1 }\n")
            + ("finish: { steps: [{ id: last, adjust: " + list + " }] }\nalternates:\n");
    String set = ": { set: { last: { adjust: " + list + " }, \"#9\": { treat: " + list + " } } }\n";
    String within = MistakeCases.SOUND + steps;
    for (int i = 0; i < 4; i++) {
      within += "  a" + i + set;
    }
    RecipeReader reader = RecipeReader.strict();
    assertThat(reader.check("a.yaml", within).recipe()).isNotNull();
    Reading over =
        reader.check("a.yaml", within + "  one: { set: { last: { adjust: [{ power: 2 }] } } }\n");
    assertThat(over.problems().stream().filter(p -> !p.isNotice()).map(Problem::sentence))
        .containsExactly(
            "the recipe has 2001 adjustments in all its steps and alternates; the limit is 2000");
  }

  /** Each of ten thousand masks asks for thousands of steps by one that they share. */
  @Test
  void masksThatShareAListOfStepsCostLittle() {
    StringBuilder text =
        new StringBuilder(MistakeCases.SOUND).append("\nmasks:\n  all-s:\n    steps:\n");
    for (int i = 0; i < 5_000; i++) {
      text.append("      - s").append(i).append('\n');
    }
    for (int i = 0; i < 5_000; i++) {
      text.append("  m").append(i).append(": { within: [all-s] }\n");
    }
    text.append("steps:\n");
    for (int i = 0; i < 10_000; i++) {
      String mask = i < 5_000 ? "" : ", mask: m" + (i - 5_000);
      text.append("  - { id: s").append(i).append(", pop: dusk").append(mask).append(" }\n");
    }
    text.append("alternates:\n");
    for (int i = 0; i < Limits.ALTERNATES; i++) {
      text.append("  a").append(i).append(": { set: { s9999: { mask: m0 } } }\n");
    }
    String sound = text.toString();
    assertThat(soon(() -> RecipeReader.strict().check("s.yaml", sound)).recipe()).isNotNull();
    String late = sound.replace("- s0\n", "- s9998\n");
    Reading reading = soon(() -> RecipeReader.strict().check("s.yaml", late));
    assertThat(reading.problems().get(0).sentence())
        .startsWith("the mask `m0` asks where `s9998` shows, which comes later");
  }

  /** A problem is shown however many notices stand before it. */
  @Test
  void noticesLeaveRoomForProblems() {
    String text =
        MistakeCases.SOUND
            + "\nmasks: { m: { steps: [last] } }\nsteps:\n"
            + "  - { pop: dusk, opacity: 0 }\n".repeat(1_500)
            + "  - { pop: dusk, mask: m }\n  - { id: last, pop: dusk }\n";
    Reading reading = RecipeReader.strict().check("n.yaml", text);
    assertThat(reading.problems()).hasSize(Limits.PROBLEMS + 1);
    assertThat(reading.problems().stream().filter(p -> !p.isNotice()).map(Problem::sentence))
        .anyMatch(s -> s.startsWith("the mask `m` asks where `last` shows"));
  }

  /** A large step is not read again for each small change of it. */
  @Test
  void manyChangesOfALargeStepCostLittle() {
    String corners = "0,0 ".repeat(Limits.POINTS - 1) + "1,1";
    StringBuilder text = new StringBuilder(MistakeCases.SOUND);
    text.append("\nsteps: [{ id: a, pop: dusk, mask: { polygon: \"").append(corners);
    text.append("\" } }]\nalternates:\n");
    for (int i = 0; i < Limits.ALTERNATES; i++) {
      text.append("  a").append(i).append(": { set: { a: { opacity: 0.5, skip: true } } }\n");
    }
    Recipe recipe = soon(() -> RecipeReader.strict().check("a.yaml", text.toString())).orThrow();
    soon(() -> Canonical.recipeHash(recipe));
  }

  @Test
  void listTenThousandDeep() {
    String open = "[".repeat(10_000);
    String close = "]".repeat(10_000);
    String sentence =
        "brackets or blocks are nested more than 64 deep here, which is the limit of a recipe";
    assertSays(
        soon(
            () ->
                RecipeReader.strict()
                    .check("d.yaml", MistakeCases.SOUND + "\nx-deep: " + open + close)),
        sentence);
    assertSays(
        soon(() -> RecipeReader.strict().check("d.json", "{\"x-deep\": " + open + close + "}")),
        sentence);
  }

  @Test
  void integerOfAMegabyte() {
    String digits = "7".repeat(1 << 20);
    String sentence = "a number has 1048576 characters; the limit is 100";
    assertSays(
        soon(() -> RecipeReader.strict().check("n.yaml", MistakeCases.SOUND + "\nx-n: " + digits)),
        "this line has 1048581 characters; the limit of a line is 300000");
    String fewer = digits.substring(0, 200_000);
    assertSays(
        soon(() -> RecipeReader.strict().check("n.yaml", MistakeCases.SOUND + "\nx-n: " + fewer)),
        "a number has 200000 characters; the limit is 100");
    assertSays(
        soon(() -> RecipeReader.strict().check("n.json", "{\"duskply\": " + digits + "}")),
        sentence);
  }

  @Test
  void lineOfYamlThatIsTooLong() {
    for (String line : new String[] {"#", "title: ", " ", "&", "!", "", "%YAML 1.", "\"", "'"}) {
      Reading reading =
          soon(() -> RecipeReader.strict().check("l.yaml", line + "1".repeat(4_000_000)));
      assertThat(reading.problems()).hasSize(1);
      assertThat(reading.problems().get(0).sentence())
          .isEqualTo(
              line.startsWith("%")
                  ? "lines that begin with % are not used in recipes; delete it, or indent it if it"
                      + " belongs to a text"
                  : "this line has "
                      + (4_000_000 + line.length())
                      + " characters; the limit of a line is 300000");
    }
  }

  @Test
  void textAndKeyAndTitleThatAreTooLong() {
    String head = MistakeCases.SOUND + "\n";
    assertSays(
        RecipeReader.strict().check("t.yaml", head + "notes: " + "n".repeat(Limits.TEXT + 1)),
        "a text has 262145 characters; the limit is 262144");
    assertSays(
        RecipeReader.strict().check("t.yaml", head + "x-" + "k".repeat(Limits.KEY) + ": 1"),
        "a key has 258 characters; the limit is 256");
    assertSays(
        RecipeReader.strict().check("t.yaml", head + "title: " + "t".repeat(Limits.TITLE + 1)),
        "`title` has 1001 characters; the limit is 1000");
  }

  @Test
  void moreValuesThanARecipeMayHold() {
    StringBuilder text = new StringBuilder(MistakeCases.SOUND).append('\n');
    for (String key : "a b c d e".split(" ")) {
      text.append("x-").append(key).append(": [");
      text.append("[1,1,1,1,1,1,1,1,1],".repeat(9_999)).append("1]\n");
    }
    Reading reading = soon(() -> RecipeReader.strict().check("v.yaml", text.toString()));
    assertThat(reading.recipe()).isNull();
    assertThat(reading.problems().get(reading.problems().size() - 1).sentence())
        .isEqualTo("a recipe has 400001 keys and values; the limit is 400000");
  }

  @Test
  void problemsBeyondTheFirstHundredAreCounted() {
    String text =
        MistakeCases.SOUND + "\nsteps:\n" + "  - { pop: dusk, opacity: 2 }\n".repeat(5_000);
    Reading reading = soon(() -> RecipeReader.strict().check("many.yaml", text));
    assertThat(reading.problems()).hasSize(Limits.PROBLEMS + 1);
    assertThat(reading.problems().get(Limits.PROBLEMS).sentence())
        .isEqualTo("and 4900 more like these; mend the first 100 and try again");
  }

  @Test
  void groupsInEachOther() {
    assertThat(RecipeReader.strict().check("g", groups(Limits.GROUP_DEPTH)).problems()).isEmpty();
    assertSays(
        RecipeReader.strict().check("g", groups(Limits.GROUP_DEPTH + 1)),
        "groups stand more than 16 deep in each other here");
  }

  private static String groups(int depth) {
    return MistakeCases.SOUND
        + "\nsteps: ["
        + "{ group: [".repeat(depth)
        + "{ pop: dusk }"
        + "] }".repeat(depth)
        + "]\n";
  }

  @Test
  void masksInAChain() {
    assertThat(RecipeReader.strict().check("m", chain(Limits.MASK_DEPTH)).problems()).isEmpty();
    assertSays(
        RecipeReader.strict().check("m", chain(Limits.MASK_DEPTH + 1)),
        "more than 32 masks use each other in a chain below this one");
  }

  @Test
  void aRingOfTenThousandMasksIsFoundWithoutRecursion() {
    StringBuilder text = new StringBuilder(MistakeCases.SOUND).append("\nmasks:\n");
    for (int i = 0; i < Limits.MEMBERS; i++) {
      int next = (i + 1) % Limits.MEMBERS;
      text.append("  m").append(i).append(": { within: [m").append(next).append("] }\n");
    }
    Reading reading = soon(() -> RecipeReader.strict().check("ring.yaml", text.toString()));
    assertThat(reading.problems().stream().map(Problem::sentence))
        .anyMatch(s -> s.startsWith("these masks use each other in a ring: m0 → m1 → "));
  }

  private static String chain(int length) {
    StringBuilder text = new StringBuilder(MistakeCases.SOUND).append("\nmasks:\n");
    for (int i = 1; i < length; i++) {
      text.append("  m").append(i).append(": { within: [m").append(i + 1).append("] }\n");
    }
    text.append("  m").append(length).append(": {}\n");
    return text + "steps: [{ pop: dusk, mask: m1 }]\n";
  }

  private static <T> T soon(org.junit.jupiter.api.function.ThrowingSupplier<T> read) {
    return assertTimeoutPreemptively(SOON, read);
  }

  private static void assertSays(Reading reading, String sentence) {
    assertThat(reading.recipe()).isNull();
    assertThat(reading.problems().stream().map(Problem::sentence)).containsExactly(sentence);
  }

  /** Gives the letter x, and counts. */
  private static final class Endless extends InputStream {
    private final long size;
    private long given;

    Endless(long size) {
      this.size = size;
    }

    @Override
    public int read() {
      return given++ < size ? 'x' : -1;
    }

    @Override
    public int read(byte[] bytes, int from, int length) {
      if (given >= size) {
        return -1;
      }
      java.util.Arrays.fill(bytes, from, from + length, (byte) 'x');
      given += length;
      return length;
    }
  }
}
