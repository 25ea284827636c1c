package org.duskply.engine.command;

import java.util.Locale;
import java.util.regex.Pattern;
import org.duskply.engine.Composite;
import org.duskply.engine.Explanation;
import org.duskply.recipe.Alternate;

/** An {@link Explanation} as text for a terminal, in lines of at most 100 columns. */
final class ExplanationText {
  private static final int WIDTH = 100;
  private static final double MEGABYTE = 1 << 20;
  private static final String LEGEND =
      "Equations are in linear light: b is the picture below, f the frame, m the mask, c the"
          + " frame's coverage, x a channel, Y luminance; E leads to the encoded axis from 0 to 1"
          + " (the sRGB curve), L back.";

  /** Numbers stay on one line with what they count. */
  private static final Pattern UNIT = Pattern.compile("(?<=\\d) (?=%|(?:s|stops|MB|px)\\b)");

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
    page.line(
        composite.width()
            + " × "
            + composite.height()
            + " pixels, made in linear light of "
            + composite.working()
            + ".",
        "");
    page.text.append('\n');
    page.line("Steps", "");
    if (explanation.steps().isEmpty()) {
      page.line("None: the picture is the base as it is.", "");
    } else {
      page.line(LEGEND, "");
      explanation.steps().forEach(page::step);
    }
    page.text.append('\n');
    page.finish(explanation);
    page.line("Frames", "");
    explanation.frames().forEach(page::frame);
    page.text.append('\n');
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

  private void finish(Explanation explanation) {
    String crop = explanation.crop();
    if (crop == null && explanation.finish().isEmpty()) {
      return;
    }
    line("Finish", "");
    if (crop != null) {
      line(crop, "");
    }
    explanation.finish().forEach(this::step);
    text.append('\n');
  }

  private void step(Explanation.StepLine step) {
    String indent = "  ".repeat(step.depth());
    line(step.name() + (step.done() ? "" : " (left out)") + ": " + step.sentence(), indent);
    line(step.formula(), indent + "    ");
  }

  private void frame(Explanation.FrameLine frame) {
    line(frame.name() + ": " + frame.file() + ", " + frame.description(), "");
    line(
        frame.reader()
            + (frame.reader().endsWith(".") ? " " : ". ")
            + frame.unitsRead()
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
