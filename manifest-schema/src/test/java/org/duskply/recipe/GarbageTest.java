package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Whatever bytes come in: a recipe, or problems with places; never anything else. */
class GarbageTest {
  private static final String SOUND =
      """
      duskply: 1
      title: "Boathouse café"
      grid: [6000, 4000]
      base: dusk
      frames:
        dusk: frames/a.tif
        hull: { file: frames/b.tif, exposure: 0.5, profile: srgb }
      masks:
        m: { polygon: "0,0 9,0 9,9", feather: 24, rule: evenodd }
        p: { path: "M0 0 C1 2 3 4 5 6Z", except: [m, { any-of: [m] }] }
      steps:
        - id: one
          group:
            - { pop: hull, mask: m, treat: [{ curve: { points: [[0, 0], [1, 1]] } }] }
        - { lay: dusk, blend: screen, mask: { except: [p] }, opacity: 0.5 }
        - adjust: [{ contrast: { strength: 0.1, pivot: 0.2 } }]
      deliverables:
        web: { file: out/<title>.jpg, long-edge: 2048, quality: 0.9 }
      """;

  @Property(tries = 500, seed = "20260615")
  void anyBytes(@ForAll @Size(max = 300) byte[] bytes) {
    check("any.yaml", bytes);
    check("any.json", bytes);
  }

  /** Characters that mean something to YAML and JSON, in any order. */
  @Property(tries = 1000, seed = "20260616")
  void anyPunctuation(@ForAll long seed) {
    String signs = "{}[],:-?&*!|>'\"%@`#\\ \n\t0ae.~<=😀\u0085\u2028";
    int[] points = signs.codePoints().toArray();
    Random random = new Random(seed);
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(60); i >= 0; i--) {
      text.appendCodePoint(points[random.nextInt(points.length)]);
    }
    check("any.yaml", text.toString().getBytes(StandardCharsets.UTF_8));
    check("any.json", text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** A sound recipe with pieces cut out, doubled, swapped or replaced by signs. */
  @Property(tries = 1500, seed = "20260617")
  void anyDamage(@ForAll long seed) {
    Random random = new Random(seed);
    StringBuilder text = new StringBuilder(SOUND);
    for (int i = random.nextInt(4); i >= 0; i--) {
      int from = random.nextInt(text.length());
      int to = Math.min(text.length(), from + random.nextInt(12));
      String piece = text.substring(from, to);
      switch (random.nextInt(4)) {
        case 0 -> text.delete(from, to);
        case 1 -> text.insert(random.nextInt(text.length()), piece);
        case 2 -> text.setCharAt(from, "{}[],:-&*!|'\"#\t 9".charAt(random.nextInt(17)));
        default -> text.replace(from, to, "null");
      }
    }
    check("damaged.yaml", text.toString().getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void everyBeginningOfARecipe() {
    for (int end = 0; end < SOUND.length(); end++) {
      check("cut.yaml", SOUND.substring(0, end).getBytes(StandardCharsets.UTF_8));
    }
    String json = Canonical.recipe(RecipeReader.read("r.yaml", SOUND));
    for (int end = 0; end < json.length(); end++) {
      check("cut.json", json.substring(0, end).getBytes(StandardCharsets.UTF_8));
    }
  }

  private static void check(String name, byte[] bytes) {
    Reading reading = RecipeReader.strict().check(name, bytes);
    boolean sound = reading.problems().stream().allMatch(Problem::isNotice);
    assertThat(reading.recipe() != null).isEqualTo(sound);
    for (Problem problem : reading.problems()) {
      assertThat(problem.place().line()).isPositive();
      assertThat(problem.place().column()).isPositive();
      assertThat(problem.sentence()).isNotBlank().doesNotContain("Exception", "\n");
      // Only the last resort of the reader says no more than this: nothing should come to it.
      assertThat(problem.sentence()).doesNotContain("cannot be read as");
    }
    if (reading.recipe() != null) {
      Recipe again = RecipeReader.read("again.yaml", RecipeWriter.write(reading.recipe()));
      assertThat(again).isEqualTo(reading.recipe().withPlaces(again.places()));
    }
  }
}
