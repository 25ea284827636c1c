package org.duskply.engine.command;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.duskply.engine.Composite;
import org.duskply.engine.Explanation;
import org.duskply.recipe.Alternate;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.Size;

/** An {@link Explanation} as text for a terminal, in lines of at most 100 columns. */
final class ExplanationText {
  private static final int WIDTH = 100;
  private static final double MEGABYTE = 1 << 20;
  private static final String LEGEND =
      "Encoded values are those of the sRGB curve, 0 black and 1 white; linear ones are the light"
          + " itself. The equations are of linear light: b is the picture below, f the frame, m the"
          + " mask, c the frame's coverage, x a channel, Y luminance; E leads to encoded values, L"
          + " back.";

  /** Numbers stay on one line with what they count, and the two numbers of a position together. */
  private static final Pattern UNIT =
      Pattern.compile(
          "(?<=\\d) (?=[%×→]|(?:s|stops?|MB|px|K|mired|bits|pixels)\\b)|(?<=\\d [×→]|ISO) (?=\\d)|(?<=\\([−.\\d]{1,30},) (?=[−\\d])");

  private static final String GLUE = "\u00a0";

  private final StringBuilder text = new StringBuilder();

  private ExplanationText() {}

  static String of(Composite composite, Explanation explanation) {
    ExplanationText page = new ExplanationText();
    String title = composite.recipe().title();
    String alternate =
        explanation.alternate().equals(Alternate.MAIN)
            ? ""
            : ", alternate " + explanation.alternate();
    page.line((title == null ? "This recipe" : title) + alternate, "");
    page.line(head(composite), "");
    page.text.append('\n');
    page.line("Steps", "");
    if (explanation.steps().isEmpty()) {
      page.line("There are none: the picture is the base as it is.", "");
    } else {
      page.line(LEGEND, "");
      explanation.steps().forEach(page::step);
    }
    page.text.append('\n');
    page.finish(explanation);
    page.named("More masks", explanation.masks());
    page.line("Frames", "");
    explanation.frames().forEach(page::frame);
    page.text.append('\n');
    page.named("Alternates", explanation.alternates());
    page.named("Deliverables", explanation.deliverables());
    page.line(
        String.format(
            Locale.ROOT,
            "Rendering needs %.0f MB of working memory at least, may use %.0f MB, and takes %s of"
                + " one core; %s.",
            Math.ceil(explanation.floorBytes() / MEGABYTE),
            explanation.allowedBytes() / MEGABYTE,
            explanation.coreSeconds() < 0.1
                ? "less than 0.1 s"
                : String.format(Locale.ROOT, "about %.1f s", explanation.coreSeconds()),
            explanation.cores() == 1
                ? "one thread will work"
                : explanation.cores() + " threads will work"),
        "");
    return page.text.toString();
  }

  private static String head(Composite composite) {
    Recipe recipe = composite.recipe();
    Size grid = recipe.grid();
    return "The picture is "
        + composite.width()
        + " × "
        + composite.height()
        + " pixels. It starts from the frame "
        + recipe.base()
        + " and is made in linear light in the primaries of "
        + composite.working()
        + ". Positions and lengths are in pixels of "
        + (grid == null ? "the base" : "a grid of " + grid.width() + " × " + grid.height())
        + ", from its top left corner.";
  }

  private void named(String title, List<Explanation.NamedLine> lines) {
    if (!lines.isEmpty()) {
      line(title, "");
      lines.forEach(each -> line(each.name() + ": " + each.sentence(), ""));
      text.append('\n');
    }
  }

  private void finish(Explanation explanation) {
    String crop = explanation.crop();
    if (crop == null && explanation.finish().isEmpty()) {
      return;
    }
    line("Finish", "");
    if (crop != null) {
      line(crop, "");
    }
    if (!explanation.finish().isEmpty()) {
      line("These steps are done last, over what is kept.", "");
    }
    explanation.finish().forEach(this::step);
    text.append('\n');
  }

  private void step(Explanation.StepLine step) {
    String indent = "  ".repeat(step.depth());
    String title = step.title() == null ? "" : " (" + step.title() + ")";
    String skipped = step.done() ? "" : " (left out)";
    line(step.name() + title + skipped + ": " + step.sentence(), indent);
    line(step.formula(), indent + "    ");
  }

  private void frame(Explanation.FrameLine frame) {
    line(frame.name() + ": " + frame.description(), "");
    line(
        frame.reader()
            + (frame.reader().endsWith(".") ? " " : ". ")
            + frame.unitsRead().cardinality()
            + " of "
            + frame.units()
            + (frame.units() == 1 ? " piece" : " pieces")
            + " will be decoded.",
        "    ");
  }

  /** Appends words, wrapped, each line behind {@code indent}. */
  private void line(String words, String indent) {
    int column = indent.length();
    text.append(indent);
    boolean first = true;
    for (String glued : UNIT.matcher(words).replaceAll(GLUE).split(" ", -1)) {
      String word = glued.replace(GLUE, " ");
      if (!first && column + 1 + word.length() > WIDTH) {
        text.append('\n').append(indent).append("  ");
        column = indent.length() + 2;
      } else if (!first) {
        text.append(' ');
        column++;
      }
      text.append(word);
      column += word.length();
      first = false;
    }
    text.append('\n');
  }
}
