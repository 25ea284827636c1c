package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskUse;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What changes which hash. */
@Tag("bits")
class CanonicalTest {
  private static final String RECIPE =
      """
      duskply: 1
      grid: [600, 400]
      base: dusk
      frames: { dusk: a.tif, hull: { file: b.tif, exposure: 0.5 } }
      masks: { soft: { polygon: "0,0 9,0 9,9", feather: 2 } }
      steps:
        - { pop: hull, mask: soft, treat: [{ exposure: 1 }] }
        - { adjust: [{ power: 0.9 }], opacity: 0.5 }
      deliverables: { web: out/a.jpg }
      """;

  @Test
  void canonicalTexts() {
    Recipe recipe = RecipeReader.read("r.yaml", RECIPE);
    assertThat(Canonical.recipe(recipe))
        .isEqualTo(
            "{\"base\":\"dusk\",\"deliverables\":{\"web\":{\"file\":\"out/a.jpg\"}},\"duskply\":1,"
                + "\"frames\":{\"dusk\":{\"file\":\"a.tif\"},"
                + "\"hull\":{\"exposure\":0.5,\"file\":\"b.tif\"}},\"grid\":[600,400],"
                + "\"masks\":{\"soft\":{\"feather\":2,\"polygon\":[[0,0],[9,0],[9,9]]}},"
                + "\"steps\":[{\"mask\":\"soft\",\"pop\":\"hull\","
                + "\"treat\":[{\"exposure\":{\"stops\":1}}]},"
                + "{\"adjust\":[{\"power\":{\"power\":0.9}}],\"opacity\":0.5}]}");
    assertThat(Canonical.picture(recipe))
        .isEqualTo(
            "{\"base\":\"#1\",\"duskply\":1,\"frames\":[{\"file\":\"a.tif\"},"
                + "{\"exposure\":0.5,\"file\":\"b.tif\"}],\"grid\":[600,400],"
                + "\"masks\":[{\"feather\":2,\"polygon\":[[0,0],[9,0],[9,9]]}],"
                + "\"steps\":[{\"mask\":\"#1\",\"pop\":\"#2\","
                + "\"treat\":[{\"exposure\":{\"stops\":1}}]},"
                + "{\"adjust\":[{\"power\":{\"power\":0.9}}],\"opacity\":0.5}]}");
  }

  /** SHA-256 of the texts above, computed with Python's hashlib. */
  @Test
  void hashes() {
    Recipe recipe = RecipeReader.read("r.yaml", RECIPE);
    assertThat(Canonical.pictureHash(recipe))
        .isEqualTo("8628d135b2bb568eae77d7a4d31a77b52282a31ad75b1f4d380e7261266f5e95");
    assertThat(Canonical.recipeHash(recipe))
        .isEqualTo("39dc71408dbe499d2e5adad9c935b8bf6ad1873c68136a7b1cdeb6f811906f47");
  }

  @Test
  void whatChangesNeither() {
    same(RECIPE.replace("0.5 }", "5e-1 }"), true, true);
    same(
        RECIPE.replace("treat: [{ exposure: 1 }]", "treat: [{ exposure: { stops: 1.0 } }]"),
        true,
        true);
    same(RECIPE.replace("\"0,0 9,0 9,9\"", "[[0, -0], [9, 0], [9.0, 9]]"), true, true);
    same(RECIPE.replace("dusk: a.tif", "dusk: { file: a.tif, exposure: 0 }"), true, true);
    same(RECIPE + "title: other\nnotes: words\nx-own: { a: 1 }\nneeds: 1\n", true, true);
    same(RECIPE.replace("web: out/a.jpg", "web: { file: out/a.jpg, depth: 8 }"), true, true);
    same(RECIPE.replace("mask: soft,", "mask: soft, compare: channels,"), true, true);
  }

  @Test
  void whatChangesTheRecipeAndNotThePicture() {
    same(RECIPE.replace("out/a.jpg", "out/b.jpg"), true, false);
    same(RECIPE.replace("hull", "boat"), true, false);
    same(RECIPE.replace("soft", "edge"), true, false);
    same(RECIPE.replace("dusk: a.tif,", "dusk: a.tif, spare: c.tif,"), true, false);
    same(RECIPE.replace("masks: {", "masks: { idle: {},"), true, false);
    same(RECIPE.replace("{ pop: hull,", "{ id: one, pop: hull,"), true, false);
    same(
        RECIPE.replace("mask: soft", "mask: { feather: 2, polygon: \"0,0 9,0 9,9\" }"),
        true,
        false);
    same(RECIPE.replace("opacity: 0.5", "opacity: 0.5, mask: {}"), true, false);
    same(RECIPE.replace("steps:\n", "steps:\n  - { pop: dusk, skip: true }\n"), true, false);
    same(RECIPE.replace("steps:\n", "steps:\n  - { pop: dusk, opacity: 0 }\n"), true, false);
    same(RECIPE.replace("steps:\n", "steps:\n  - { adjust: [{ contrast: 0 }] }\n"), true, false);
    same(
        RECIPE.replace("steps:\n", "steps:\n  - { group: [{ adjust: [{ power: 1 }] }] }\n"),
        true,
        false);
    same(RECIPE.replace("[{ exposure: 1 }]", "[{ exposure: 1 }, { saturation: 1 }]"), true, false);
    same(RECIPE.replace("steps:\n", "steps:\n  - { dodge: 0 }\n"), true, false);
    same(RECIPE.replace("steps:\n", "steps:\n  - { burn: { stops: 0, gel: 0 } }\n"), true, false);
    same(
        RECIPE.replace("steps:\n", "steps:\n  - { vignette: { stops: 0, full: 3 } }\n"),
        true,
        false);
    same(
        RECIPE.replace(
            "steps:\n", "steps:\n  - { group: [{ dodge: 0 }], treat: [{ power: 1 }] }\n"),
        true,
        false);
  }

  @Test
  void whatChangesBoth() {
    same(RECIPE.replace("[600, 400]", "[601, 400]"), false, false);
    same(RECIPE.replace("base: dusk", "base: hull"), false, false);
    same(RECIPE.replace("0.5 }", "0.6 }"), false, false);
    same(RECIPE.replace("feather: 2", "feather: 3"), false, false);
    same(RECIPE + "working: rec2020\n", false, false);
    same(RECIPE.replace("pop: hull", "lay: hull"), false, false);
    same(RECIPE.replace("a.tif", "c.tif"), false, false);
    same(RECIPE.replace("mask: soft,", "mask: soft, compare: luminance,"), false, false);
    // A treatment that lifts black lights even what the steps leave alone.
    same(
        RECIPE.replace(
            "steps:\n",
            "steps:\n  - { group: [{ dodge: 0 }], treat: [{ curve: { points: [[0, 0.1], [1, 1]] } }] }\n"),
        false,
        false);
  }

  /** Doubling at every level would make 2^30 masks of a form that wrote them out. */
  @Test
  void stepsThatAMaskAsksForGoByTheirPlaceAmongThoseThatCount() {
    String recipe =
        """
        duskply: 1
        base: dusk
        frames: { dusk: a.tif, hull: b.tif }
        masks: { lit: { steps: [flashes, "#3"] } }
        steps:
          - { lay: hull, skip: true }
          - { id: flashes, group: [ { pop: hull }, { pop: dusk, opacity: 0 } ] }
          - { id: off, lay: dusk, skip: true }
          - { lay: dusk, mask: lit }
        """;
    String picture = Canonical.picture(RecipeReader.read("r.yaml", recipe));
    assertThat(picture).contains("\"masks\":[{\"steps\":[\"#1\"]}]");
    for (String same :
        List.of(
            recipe.replace("flashes", "pops"),
            recipe.replace("  - { lay: hull, skip: true }\n", "").replace(", \"#3\"", ""),
            recipe.replace("[flashes, \"#3\"]", "[\"#2\"]"))) {
      assertThat(Canonical.picture(RecipeReader.read("r.yaml", same))).isEqualTo(picture);
    }
    String other = recipe.replace("[flashes,", "[flashes/#1,");
    assertThat(Canonical.picture(RecipeReader.read("r.yaml", other)))
        .contains("\"masks\":[{\"steps\":[\"#1/#1\"]}]");
  }

  /** A step that changes nothing still shows where its mask is, so its mask counts. */
  @Test
  void anIdleStepThatAMaskAsksForStays() {
    String recipe =
        """
        duskply: 1
        base: dusk
        frames: { dusk: a.tif, hull: b.tif }
        steps:
          - { id: place, adjust: [ { exposure: 0 } ], mask: { polygon: "0,0 9,0 9,9" } }
          - { lay: hull, mask: { steps: [place] } }
        """;
    String moved = recipe.replace("9,9", "9,8");
    assertThat(Canonical.pictureHash(RecipeReader.read("r.yaml", recipe)))
        .isNotEqualTo(Canonical.pictureHash(RecipeReader.read("r.yaml", moved)));
    String alone = recipe.replace(", mask: { steps: [place] }", "");
    assertThat(Canonical.pictureHash(RecipeReader.read("r.yaml", alone)))
        .isEqualTo(
            Canonical.pictureHash(
                RecipeReader.read("r.yaml", moved.replace(", mask: { steps: [place] }", ""))));
  }

  @Test
  void sharedMasksDoNotMultiply() {
    StringBuilder text = new StringBuilder(MistakeCases.SOUND).append("\nmasks:\n  m0: {}\n");
    for (int i = 1; i <= 30; i++) {
      int below = i - 1;
      text.append(
          "  m" + i + ": { any-of: [m" + below + ", m" + below + "], feather: " + i + " }\n");
    }
    text.append("steps: [{ pop: dusk, mask: m30 }]\n");
    assertThat(Canonical.picture(RecipeReader.read("m.yaml", text.toString())))
        .hasSizeLessThan(3000);
  }

  @Test
  void aRingOfMasksBuiltByAProgramIsRefused() {
    Recipe sound = RecipeReader.read("r.yaml", RECIPE);
    Map<String, Mask> ring = new LinkedHashMap<>();
    List<MaskUse> itself = List.of(new MaskUse.Named("soft"));
    ring.put("soft", new Mask(null, itself, List.of(), 0, 0, false, 1, Map.of()));
    Recipe recipe = Recipe.of("dusk", sound.frames(), sound.steps()).withMasks(ring);
    assertThatThrownBy(() -> Canonical.picture(recipe))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("masks use each other in a ring, or in too long a chain");
  }

  private static void same(String other, boolean picture, boolean recipe) {
    assertThat(other).isNotEqualTo(RECIPE);
    Recipe a = RecipeReader.read("r.yaml", RECIPE);
    Recipe b = RecipeReader.read("r.yaml", other);
    assertThat(Canonical.picture(b).equals(Canonical.picture(a))).as(other).isEqualTo(picture);
    assertThat(Canonical.recipe(b).equals(Canonical.recipe(a))).as(other).isEqualTo(recipe);
    assertThat(Canonical.pictureHash(b).equals(Canonical.pictureHash(a))).isEqualTo(picture);
    assertThat(Canonical.recipeHash(b).equals(Canonical.recipeHash(a))).isEqualTo(recipe);
  }
}
