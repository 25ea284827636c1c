package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is said about each kind of mistake, word for word, and where. */
class MistakesTest {
  static Stream<MistakeCases.Case> cases() {
    return MistakeCases.all().stream();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void saysWhatIsWrongAndWhere(MistakeCases.Case mistake) {
    Reading reading = RecipeReader.strict().check("test", mistake.text());
    assertThat(reading.problems().stream().map(MistakeCases::line).toList())
        .isEqualTo(mistake.expected());
    boolean sound = reading.problems().stream().allMatch(Problem::isNotice);
    assertThat(reading.recipe() != null).isEqualTo(sound);
  }

  @ParameterizedTest
  @MethodSource("cases")
  void eachProblemHasItsLineWithACaretBelowTheColumn(MistakeCases.Case mistake) {
    String[] lines = mistake.text().split("\n", -1);
    for (Problem problem : RecipeReader.strict().check("test", mistake.text()).problems()) {
      String[] snippet = problem.snippet().split("\n", -1);
      assertThat(snippet).hasSize(2);
      String shown = snippet[0].substring(8);
      assertThat(
              lines[problem.place().line() - 1]
                  .replaceAll("[\t\u0007]", " ")
                  .codePoints()
                  .toArray())
          .startsWith(shown.replace("…", "").codePoints().limit(90).toArray());
      assertThat(snippet[1].indexOf('^') - 8).isEqualTo(problem.place().column() - 1);
    }
  }

  @Test
  void noTwoCasesShareATitle() {
    List<String> titles = MistakeCases.all().stream().map(MistakeCases.Case::title).toList();
    assertThat(titles).doesNotHaveDuplicates().hasSizeGreaterThan(80);
  }
}
