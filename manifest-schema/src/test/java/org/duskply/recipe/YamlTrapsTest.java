package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.duskply.recipe.step.Pop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Words and numbers that readers of YAML have been reported to turn into something else (YAML 1.1
 * booleans, octal and sexagesimal numbers, keys given twice): here they are what they look like, or
 * a problem in words. Bombs and depths are in {@code LimitsTest}, marks of byte order in {@code
 * EncodingTest}.
 */
class YamlTrapsTest {
  private static final String HEAD = "duskply: 1\nbase: no\nframes: { no: a.tif, n: b.tif }\n";

  private static Recipe read(String rest) {
    return RecipeReader.read("r.yaml", HEAD + rest);
  }

  private static List<Problem> problems(String rest) {
    return RecipeReader.strict().check("r.yaml", HEAD + rest).problems().stream()
        .filter(p -> !p.isNotice())
        .toList();
  }

  @Test
  void wordsThatMeantTrueOrFalseAreWords() {
    Recipe recipe =
        read("title: off\nsteps: [ { id: on, pop: n }, { id: y, pop: no, title: yes } ]\n");
    assertThat(recipe.base()).isEqualTo("no");
    assertThat(recipe.title()).isEqualTo("off");
    assertThat(recipe.steps().get(0).id()).isEqualTo("on");
    assertThat(((Pop) recipe.steps().get(1).verb()).frame()).isEqualTo("no");
    assertThat(recipe.steps().get(1).title()).isEqualTo("yes");
  }

  @ParameterizedTest
  @CsvSource({"1e3, 1000", "1E1, 10", "+7, 7", "0.5, 0.5", "-0, 0"})
  void numbersAreDecimalNumbers(String written, double feather) {
    Recipe recipe =
        read(
            "masks: { m: { polygon: \"0,0 9,0 9,9\", feather: "
                + written
                + " } }\nsteps: [ { pop: n, mask: m } ]\n");
    assertThat(recipe.masks().get("m").feather()).isEqualTo(feather);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "steps: [ { lay: n, blend: on } ] | `blend` is `on`",
        "steps: [ { pop: n, opacity: 16:9 } ] | two numbers with a colon are text here",
        "steps: [ { pop: 0012 } ] | `0012` cannot be a name",
        "steps: [ { pop: n, opacity: 010 } ] | write 10, without the 0 in front",
        "steps: [ { pop: n, opacity: .5 } ] | write 0.5, with a digit before the point",
        "steps: [ { pop: n, opacity: 0o7 } ] | `opacity` is `0o7`",
        "steps: [ { pop: n, opacity: 1_0 } ] | `opacity` is `1_0`",
        "steps: [ { pop: n, opacity: .nan } ] | `opacity` is `.nan`",
        "steps: [ { pop: n, skip: yes } ] | write true",
        "steps: [ { pop: n, mask: { feather: 1 }, mask: { feather: 2 } } ] | mask",
        "title: 2024-05-31 | 2024-05-31",
        "title: 12:30 | 12:30",
      })
  void whatCouldBeMeantInTwoWaysIsAskedBack(String text, String sentence) {
    List<Problem> told = problems(text + "\n");
    if (text.startsWith("title")) {
      // A date and a time of day are texts, as they look.
      assertThat(told).isEmpty();
      assertThat(read(text + "\n").title()).isEqualTo(sentence);
    } else {
      assertThat(told).singleElement().matches(p -> p.sentence().contains(sentence));
      assertThat(told.get(0).place().line()).isEqualTo(4);
    }
  }
}
