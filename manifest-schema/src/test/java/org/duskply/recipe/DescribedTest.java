package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/**
 * The committed schema and reference page are those of the Shapes. To write them anew: {@code mvn
 * -pl manifest-schema test -Dtest=DescribedTest -Dduskply.write=true}
 */
class DescribedTest {
  private static final boolean WRITE = Boolean.getBoolean("duskply.write");

  @Test
  void schemaIsThatOfTheShapes() throws IOException {
    same(Path.of("duskply-1.schema.json"), RecipeSchema.text());
  }

  @Test
  void referencePageIsThatOfTheShapes() throws IOException {
    same(Path.of("REFERENCE.md"), RecipeSchema.reference());
  }

  private static void same(Path file, String text) throws IOException {
    if (WRITE) {
      Files.writeString(file, text);
    }
    assertThat(Files.readString(file))
        .as(
            "%s is out of date; write it anew with: mvn -pl manifest-schema test"
                + " -Dtest=DescribedTest -Dduskply.write=true",
            file)
        .isEqualTo(text);
  }
}
