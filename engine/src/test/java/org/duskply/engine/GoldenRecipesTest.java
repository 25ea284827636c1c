package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.Rule;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.Pictures;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeReader;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Blend;
import org.duskply.recipe.step.Burn;
import org.duskply.recipe.step.Dodge;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Small recipes that together use the whole vocabulary. Each keeps its bits from version to
 * version, on every JDK, and under every way of cutting up the work. {@code -Dgolden.write=true}
 * writes the hashes anew; do that only when a formula has changed on purpose, and say why in the
 * commit.
 */
@Tag("bits")
class GoldenRecipesTest {
  private static final Path GOLDEN = Path.of("src", "test", "resources", "golden");
  private static final Path HASHES = GOLDEN.resolve("hashes.txt");
  private static final int WIDTH = 120;
  private static final int HEIGHT = 80;
  private static final PlanSettings PLAIN = new PlanSettings(HEIGHT, WIDTH, false);

  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void frames() throws IOException {
    desk = new Desk(folder, WIDTH, HEIGHT);
    for (int i = 0; i < 6; i++) {
      desk.frame("frames/" + i + ".tif", i);
    }
    desk.write("masks/outlines.svg", Files.readAllBytes(GOLDEN.resolve("outlines.svg")));
    desk.frame("frames/p3.tif", 7, NamedSpace.DISPLAY_P3);
    desk.frame("frames/rec2020.tif", 8, NamedSpace.REC2020);
    desk.frame("frames/a98.tif", 9, NamedSpace.A98_RGB);
    desk.write(
        "masks/painted.tif",
        new TiffFile(WIDTH, HEIGHT, 1, 8, (x, y, c) -> desk.sample(11, x, y, c) / 257)
            .strips(7)
            .bytes());
  }

  static List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(GOLDEN)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(file -> file.endsWith(".yaml"))
          .map(file -> file.substring(0, file.length() - ".yaml".length()))
          .sorted()
          .toList();
    }
  }

  private Path recipe(String name) throws IOException {
    return desk.write(name + ".yaml", Files.readAllBytes(GOLDEN.resolve(name + ".yaml")));
  }

  private static Engine engine(PlanSettings settings, int threads, long keep) {
    return Engine.builder().settings(settings).threads(threads).keep(keep).build();
  }

  private static Planes picture(Path recipe, PlanSettings settings) {
    try (Engine engine = engine(settings, 1, 0);
        Composite composite = engine.open(recipe)) {
      return Pictures.planes(composite.image());
    }
  }

  @ParameterizedTest
  @MethodSource("names")
  void keepsItsBits(String name) throws IOException {
    Planes picture = picture(recipe(name), PlanSettings.DEFAULT);
    String hash = PictureBits.sha256(picture);
    Map<String, String> hashes = hashes();
    if (Boolean.getBoolean("golden.write")) {
      hashes.put(name, hash);
      write(hashes);
    }
    assertThat(hash).as("bits of %s", name).isEqualTo(hashes.get(name));
  }

  @ParameterizedTest
  @MethodSource("names")
  void isTheSameHoweverTheWorkIsCut(String name) throws IOException {
    Path recipe = recipe(name);
    Planes plain = picture(recipe, PLAIN);
    for (int chunk : new int[] {1, 16, 512}) {
      PictureBits.same(
          plain,
          picture(recipe, new PlanSettings(64, chunk, true).withLegLeaves(chunk)),
          name + " in chunks of " + chunk);
    }
    try (Engine engine = engine(PlanSettings.DEFAULT, 1, 0)) {
      Random random = new Random(3);
      for (int i = 0; i < 4; i++) {
        try (Composite composite = engine.open(recipe)) {
          int left = random.nextInt(WIDTH - 1);
          int top = random.nextInt(HEIGHT - 1);
          Region part =
              new Region(
                  left,
                  top,
                  left + 1 + random.nextInt(WIDTH - left),
                  top + 1 + random.nextInt(HEIGHT - top));
          PictureBits.same(plain, Pictures.planes(composite.image(), part), name + " " + part);
        }
      }
    }
  }

  /** What a rule leaves out changes no bit, whether it does so alone or all others do. */
  @ParameterizedTest
  @MethodSource("names")
  void isTheSameWithoutAnyRule(String name) throws IOException {
    Path recipe = delivered(name);
    short[] all = null;
    for (PlanSettings settings : rules()) {
      try (Engine engine = engine(settings, 2, 0)) {
        short[] codes = delivered(engine, recipe);
        all = all == null ? codes : all;
        assertThat(codes).as("%s with %s", name, settings).isEqualTo(all);
      }
    }
  }

  /** All rules, all but one, one alone; and all with legs of any length. */
  private static List<PlanSettings> rules() {
    PlanSettings all = new PlanSettings(16, 50, true);
    List<PlanSettings> settings = new ArrayList<>(List.of(all));
    for (Rule rule : Rule.values()) {
      settings.add(all.without(rule));
      settings.add(new PlanSettings(16, 50, all.legLeaves(), Set.of(rule)));
    }
    for (int leaves : new int[] {1, 2, 3, 1000}) {
      settings.add(all.withLegLeaves(leaves));
    }
    return settings;
  }

  private Path delivered(String name) throws IOException {
    String text =
        Files.readString(GOLDEN.resolve(name + ".yaml"))
            + "deliverables: { print: { file: print.tif, profile: prophoto-rgb } }\n";
    return desk.write(name + "-delivered.yaml", text.getBytes(StandardCharsets.UTF_8));
  }

  @ParameterizedTest
  @MethodSource("names")
  void deliversTheSameCodesByAnyRoad(String name) throws IOException {
    Path recipe = delivered(name);
    short[] first = null;
    for (PlanSettings settings :
        List.of(
            PlanSettings.DEFAULT,
            PLAIN,
            new PlanSettings(1, 512, true).withLegLeaves(1),
            new PlanSettings(7, 33, true).withLegLeaves(4))) {
      for (int threads : new int[] {1, 8}) {
        try (Engine engine = engine(settings, threads, threads == 8 ? 1 << 24 : 0)) {
          for (int again = 0; again < 2; again++) {
            short[] codes = delivered(engine, recipe);
            first = first == null ? codes : first;
            assertThat(codes)
                .as("%s with %s on %d threads, time %d", name, settings, threads, again)
                .isEqualTo(first);
          }
        }
      }
    }
  }

  private short[] delivered(Engine engine, Path recipe) {
    try (Composite composite = engine.open(recipe)) {
      Delivered delivered =
          composite.deliver(folder.resolve("out"), Set.of("print"), Progress.SILENT);
      return Pictures.codes(delivered.files().get(0).path());
    }
  }

  @Test
  void togetherTheyUseEveryWordOfTheVocabulary() throws IOException {
    Set<Class<?>> used = new LinkedHashSet<>();
    Set<Blend> blends = new LinkedHashSet<>();
    try (Stream<Path> files = Files.list(GOLDEN)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList()) {
        Recipe recipe = RecipeReader.read(file);
        recipe.masks().values().stream()
            .map(Mask::kind)
            .filter(k -> k != null)
            .forEach(k -> used.add(k.getClass()));
        collect(recipe.steps(), used, blends);
      }
    }
    assertThat(used)
        .containsAll(List.of(Verb.class.getPermittedSubclasses()))
        .containsAll(List.of(MaskKind.class.getPermittedSubclasses()))
        .containsAll(List.of(Adjustment.class.getPermittedSubclasses()));
    assertThat(blends).containsExactlyInAnyOrder(Blend.values());
  }

  private static void collect(List<Step> steps, Set<Class<?>> used, Set<Blend> blends) {
    for (Step step : steps) {
      used.add(step.verb().getClass());
      List<Adjustment> adjustments = List.of();
      if (step.verb() instanceof Group group) {
        collect(group.steps(), used, blends);
        adjustments = group.treat();
      } else if (step.verb() instanceof Lay lay) {
        blends.add(lay.blend());
        adjustments = lay.treat();
      } else if (step.verb() instanceof Pop pop) {
        adjustments = pop.treat();
      } else if (step.verb() instanceof Adjust adjust) {
        adjustments = adjust.adjustments();
      } else if (step.verb() instanceof Dodge dodge) {
        adjustments = dodge.adjustments();
      } else if (step.verb() instanceof Burn burn) {
        adjustments = burn.adjustments();
      }
      adjustments.forEach(a -> used.add(a.getClass()));
    }
  }

  private static Map<String, String> hashes() throws IOException {
    Map<String, String> hashes = new TreeMap<>();
    if (Files.exists(HASHES)) {
      for (String line : Files.readAllLines(HASHES)) {
        String[] parts = line.split(" +", 2);
        hashes.put(parts[0], parts[1]);
      }
    }
    return hashes;
  }

  private static void write(Map<String, String> hashes) throws IOException {
    String text =
        hashes.entrySet().stream()
            .map(e -> e.getKey() + " " + e.getValue() + "\n")
            .collect(Collectors.joining());
    Files.writeString(HASHES, text);
  }
}
