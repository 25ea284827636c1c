package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bytes that are a recipe, and bytes that are not. */
class EncodingTest {
  private static final String TEXT = MistakeCases.SOUND + "\ntitle: café\n";

  @TempDir Path folder;

  @Test
  void byteOrderMarkIsNoPartOfTheText() {
    byte[] bytes = ("\uFEFF" + TEXT).getBytes(StandardCharsets.UTF_8);
    Recipe recipe = RecipeReader.strict().check("r.yaml", bytes).orThrow();
    assertThat(recipe.title()).isEqualTo("café");
    assertThat(recipe.places().at("duskply")).isEqualTo(new Place("r.yaml", 1, 10));
  }

  @Test
  void latin1IsRefusedAtItsFirstByte() {
    Reading reading =
        RecipeReader.strict().check("r.yaml", TEXT.getBytes(StandardCharsets.ISO_8859_1));
    assertThat(reading.problems()).hasSize(1);
    assertThat(MistakeCases.line(reading.problems().get(0)))
        .isEqualTo(
            "4:11 this file is not UTF-8: the character here was saved in another encoding"
                + " (byte E9); save it as UTF-8");
  }

  @Test
  void utf16IsNamed() {
    Reading reading = RecipeReader.strict().check("r.yaml", TEXT.getBytes(StandardCharsets.UTF_16));
    assertThat(reading.problems().get(0).sentence())
        .isEqualTo("this file is UTF-16 text; save it as UTF-8");
  }

  @Test
  void lineEndsOfEverySystem() {
    for (String end : new String[] {"\n", "\r\n", "\r"}) {
      Reading reading =
          RecipeReader.strict()
              .check("r.yaml", (TEXT + "steps: [{ pop: x }]\n").replace("\n", end));
      assertThat(MistakeCases.line(reading.problems().get(0)))
          .isEqualTo("5:16 there is no frame called `x`; known ones are dusk");
      assertThat(reading.problems().get(0).snippet())
          .isEqualTo("    5 | steps: [{ pop: x }]\n      |                ^");
    }
  }

  /** A parser of YAML loses its way where its buffer of 1,024 ends within such a character. */
  @Test
  void charactersOfTwoUnitsAtAnyOffset() {
    for (int offset = 0; offset < 8; offset++) {
      String smiles = "😀".repeat(3000);
      String text = TEXT + "notes: \"" + "x".repeat(offset) + smiles + "\"\n# " + smiles;
      Recipe recipe = RecipeReader.strict().check("r.yaml", text).orThrow();
      assertThat(recipe.notes()).isEqualTo("x".repeat(offset) + smiles);
    }
  }

  @Test
  void filesThatCannotBeOpened() throws Exception {
    Path missing = folder.resolve("missing.yaml");
    assertThat(RecipeReader.strict().check(missing).problems().get(0).toString())
        .isEqualTo(missing + ":1:1: there is no such file");
    assertThat(RecipeReader.strict().check(folder).problems().get(0).sentence())
        .isEqualTo("this is a folder; name the recipe's file in it");
    Path file = Files.writeString(folder.resolve("r.yaml"), TEXT);
    assertThat(RecipeReader.read(file).base()).isEqualTo("dusk");
  }
}
