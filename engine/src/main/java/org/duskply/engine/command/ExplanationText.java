package org.duskply.engine.command;

import java.util.Locale;
import org.duskply.engine.Composite;
import org.duskply.engine.Explanation;

/** An {@link Explanation} as text for a terminal. */
final class ExplanationText {
  private static final int WIDTH = 100;
  private static final double MEGABYTE = 1 << 20;

  private final StringBuilder text = new StringBuilder();

  private ExplanationText() {}

  static String of(Composite composite, Explanation explanation) {
    ExplanationText page = new ExplanationText();
    String title = composite.recipe().title();
    page.line(title == null ? "This recipe" : title, "");
    page.line(
        composite.width()
            + " × "
            + composite.height()
            + " pixels, made in linear light of "
            + composite.working()
            + ".",
        "");
    page.text.append('\n');
    explanation.steps().forEach(page::step);
    page.text.append("\nFrames\n");
    explanation.frames().forEach(page::frame);
    page.text.append('\n');
    page.line(
        String.format(
            Locale.ROOT,
            "Rendering needs %.0f MB of working memory at least, may use %.0f MB, and takes about"
                + " %.1f s of one core; %d threads will work.",
            explanation.floorBytes() / MEGABYTE,
            explanation.allowedBytes() / MEGABYTE,
            explanation.coreSeconds(),
            explanation.cores()),
        "");
    return page.text.toString();
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
            + " will be read.",
        "    ");
  }

  /** Appends words, wrapped, each line behind {@code indent}. */
  private void line(String words, String indent) {
    int column = indent.length();
    text.append(indent);
    boolean first = true;
    for (String word : words.split(" ", -1)) {
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
