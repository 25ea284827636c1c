package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Whole recipes, sound and wrong, on which the reader and the schema must agree; the schema is
 * asked by a validator of other hands. All files in the folder {@code agreement} are read: a recipe
 * begins after {@code == sound: title}, {@code == wrong: title} or, where a schema cannot know,
 * {@code == wrong to the reader alone: title}; {@code @} stands for the lines of the least recipe.
 */
class AgreementTest {
  private static final Path FOLDER = Path.of("src", "test", "resources", "agreement");
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(RecipeSchema.text());

  /** What is to be said of a recipe. */
  private enum Verdict {
    SOUND("sound"),
    WRONG("wrong"),
    WRONG_TO_THE_READER_ALONE("wrong to the reader alone");

    private final String words;

    Verdict(String words) {
      this.words = words;
    }

    static Verdict of(String words) {
      return Stream.of(values()).filter(v -> v.words.equals(words)).findFirst().orElseThrow();
    }
  }

  /** A recipe with what is to be said of it. */
  private record Case(String file, String title, Verdict verdict, String text) {
    @Override
    public String toString() {
      return file + ": " + title + " (" + verdict.words + ")";
    }
  }

  static List<Case> cases() throws IOException {
    List<Case> cases = new ArrayList<>();
    try (Stream<Path> files = Files.list(FOLDER)) {
      for (Path file : files.sorted().toList()) {
        for (String block : Files.readString(file).split("(?m)^== ")) {
          if (!block.isBlank()) {
            cases.add(one(file, block));
          }
        }
      }
    }
    return cases;
  }

  private static Case one(Path file, String block) {
    int end = block.indexOf('\n');
    String[] head = block.substring(0, end).split(": ", 2);
    String body = block.substring(end + 1);
    String text = body.startsWith("@\n") ? MistakeCases.SOUND + body.substring(1) : body;
    return new Case(file.getFileName().toString(), head[1], Verdict.of(head[0]), text);
  }

  @Test
  void thereAreEnoughAndHalfOfThemAreWrong() throws IOException {
    assertThat(cases()).hasSizeGreaterThanOrEqualTo(80);
    assertThat(cases()).extracting(Case::toString).doesNotHaveDuplicates();
    assertThat(of(Verdict.WRONG)).isGreaterThanOrEqualTo(40);
    assertThat(of(Verdict.SOUND)).isGreaterThanOrEqualTo(50);
    // Few, against those that a schema can know.
    assertThat(of(Verdict.WRONG_TO_THE_READER_ALONE)).isLessThan(of(Verdict.WRONG) / 2);
  }

  private static long of(Verdict verdict) throws IOException {
    return cases().stream().filter(c -> c.verdict() == verdict).count();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void readerAndSchemaAgree(Case recipe) {
    Reading reading = RecipeReader.strict().check("recipe", recipe.text());
    List<Error> errors = errors(recipe.text());
    assertThat(reading.recipe() != null)
        .as("the reader says %s", reading.problems())
        .isEqualTo(recipe.verdict() == Verdict.SOUND);
    assertThat(errors.isEmpty())
        .as("the schema says %s", errors)
        .isEqualTo(recipe.verdict() != Verdict.WRONG);
  }

  private static List<Error> errors(String text) {
    return SCHEMA.validate(text, text.startsWith("{\"") ? InputFormat.JSON : InputFormat.YAML);
  }
}
