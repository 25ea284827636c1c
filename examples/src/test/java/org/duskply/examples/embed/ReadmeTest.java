package org.duskply.examples.embed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.duskply.recipe.RecipeReader;
import org.junit.jupiter.api.Test;

/** What the README quotes is what there is: code, recipe, printed problems, pictures, links. */
class ReadmeTest {
  private static final Path ROOT = Path.of(System.getProperty("basedir", "."), "..");
  private static final String EMBED =
      "examples/src/main/java/org/duskply/examples/embed/TenLines.java";
  private static final String RECIPE = "examples/boathouse/boathouse.yaml";
  private static final String MISTAKES = "examples/boathouse/mistakes.yaml";
  private static final int PICTURE_BYTES = 150_000;

  @Test
  void quotesTheTenLines() throws IOException {
    List<String> lines = Files.readAllLines(ROOT.resolve(EMBED));
    int begin = indexOf(lines, "// README: begin");
    int end = indexOf(lines, "// README: end");
    String code = String.join("\n", lines.subList(begin + 1, end)).stripIndent();

    assertThat(blocks("java")).containsExactly(code);
    assertThat(code.lines()).hasSize(10);
  }

  /**
   * Each line stands in the recipe as it is, in the same order; "# …" stands for what is left out.
   */
  @Test
  void quotesTheDemosRecipe() throws IOException {
    List<String> recipe = Files.readAllLines(ROOT.resolve(RECIPE));
    assertThat(blocks("yaml")).hasSize(1);
    int from = 0;
    for (String line : blocks("yaml").get(0).split("\n")) {
      if (!line.isBlank() && !line.strip().equals("# …")) {
        int at = recipe.subList(from, recipe.size()).indexOf(line);
        assertThat(at).as("after line %d of the recipe: %s", from, line).isNotNegative();
        from += at + 1;
      }
    }
  }

  /** Every printed problem is one that the reader prints, to the letter. */
  @Test
  void quotesProblemsAsPrinted() throws IOException {
    String text = Files.readString(ROOT.resolve(MISTAKES));
    List<String> printed =
        RecipeReader.strict().check(MISTAKES, text).problems().stream()
            .map(Object::toString)
            .toList();
    assertThat(blocks("text")).isNotEmpty();
    for (String block : blocks("text")) {
      for (String quoted : block.split("\n(?=examples/)")) {
        assertThat(printed).contains(quoted);
      }
    }
  }

  @Test
  void leadsToFilesThatAreThere() throws IOException {
    List<String> targets = all("\\]\\(([^)#:]+)\\)", readme());
    assertThat(targets).isNotEmpty();
    for (String target : targets) {
      assertThat(ROOT.resolve(target)).exists();
    }
  }

  @Test
  void showsSixSmallPictures() throws IOException {
    List<String> pictures = all("src=\"([^\"]+)\"", readme());
    assertThat(pictures).hasSize(6);
    for (String picture : pictures) {
      assertThat(Files.size(ROOT.resolve(picture))).as(picture).isLessThan(PICTURE_BYTES);
    }
  }

  private static String readme() throws IOException {
    return Files.readString(ROOT.resolve("README.md"));
  }

  /** What stands in the README between fences of a kind. */
  private static List<String> blocks(String kind) throws IOException {
    return all("(?s)```" + kind + "\n(.*?)\n```", readme());
  }

  private static List<String> all(String pattern, String text) {
    List<String> found = new ArrayList<>();
    Pattern.compile(pattern).matcher(text).results().map(ReadmeTest::group).forEach(found::add);
    return found;
  }

  private static String group(MatchResult match) {
    return match.group(1);
  }

  private static int indexOf(List<String> lines, String marker) {
    List<String> stripped = lines.stream().map(String::strip).toList();
    assertThat(stripped).containsOnlyOnce(marker);
    return stripped.indexOf(marker);
  }
}
