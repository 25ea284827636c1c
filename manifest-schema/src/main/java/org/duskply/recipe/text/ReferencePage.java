package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.duskply.recipe.FilePaths;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Names;
import org.duskply.recipe.shape.Shape;

/** The reference page of all keys, as Markdown, made from Shapes. */
public final class ReferencePage {
  private final StringBuilder page = new StringBuilder();
  private final Atlas atlas;

  private ReferencePage(Shape<?> root) {
    this.atlas = new Atlas(root);
  }

  /** The page of everything that can be met from {@code root} on. */
  public static String text(Shape<?> root) {
    ReferencePage reference = new ReferencePage(root);
    reference.opening(root);
    reference.atlas.shapes().forEach(reference::section);
    reference.limits();
    return reference.page.toString();
  }

  private void opening(Shape<?> root) {
    line("# The recipe, key by key");
    line("");
    line("This page is made from the program's own tables; `DEVELOPERS.md` says how.");
    line("");
    line(root.sentence());
    line("A recipe is a text file in UTF-8, as YAML or, with the ending `.json`, as JSON.");
    line("");
    line("- **Short and long.** Where a key is marked ●, its value alone stands for the whole: ");
    line("  `dusk: frames/bh-0007.tif` is `dusk: { file: frames/bh-0007.tif }`.");
    line("- **Left out.** A key without \"required\" may be left out; the table says what then.");
    line("- **Names** are " + Names.RULE + ".");
    line(
        "  Not to be used: "
            + Words.list(Names.RESERVED.stream().map(Words::quoted).toList(), "and")
            + ".");
    line(
        "- **Your own keys** begin with `x-` and may stand where the table says so; they are kept");
    line("  and change nothing.");
    line(
        "- **Positions and lengths** are pixels of the `grid`: x from the left, y from the top, from");
    line("  the outer corner of the top-left pixel.");
    line("- **Placeholders** in a deliverable's file: " + placeholders() + ".");
    line("");
  }

  private static String placeholders() {
    return Words.list(FilePaths.PLACEHOLDERS.stream().map(Words::quoted).toList(), "and");
  }

  private void section(Shape<?> shape) {
    line("## " + atlas.heading(shape));
    line("");
    line(shape.sentence());
    line("");
    if (shape.layout() == Shape.Layout.ROW) {
      line("Written " + Words.quoted(Words.record(shape)) + ".");
      line("");
    }
    shape.inlined().map(Atlas::alternatives).ifPresent(this::alternatives);
    line("| key | takes | left out | meaning |");
    line("| --- | --- | --- | --- |");
    shape.fields().stream().filter(Field::keyed).forEach(this::row);
    if (shape.extensible()) {
      line("| `x-…` | anything | | Your own keys. |");
    }
    line("");
    example(shape);
  }

  private void alternatives(Alternatives<?> alternatives) {
    List<String> links = new ArrayList<>();
    alternatives.keys().forEach(key -> links.add("[`" + key + "`](#" + key + ")"));
    line(
        (alternatives.optional() ? "At most one " : "Exactly one ")
            + alternatives.noun()
            + ": "
            + Words.list(links, "or")
            + ", with its keys beside these:");
    line("");
  }

  private void row(Field field) {
    String mark = field.isPrincipal() ? " ●" : "";
    line(
        String.format(
            "| `%s`%s | %s | %s | %s |",
            field.key(), mark, takes(field.kind()), leftOut(field), meaning(field)));
  }

  private static String takes(Kind kind) {
    return Words.of(kind).replace("|", "\\|");
  }

  private static String leftOut(Field field) {
    if (field.required()) {
      return "required";
    }
    Object fallback = field.fallback();
    if (fallback == null) {
      return field.fallbackWords().isEmpty() ? "nothing" : field.fallbackWords();
    }
    Object plain = PlainWriter.shortForm(field.kind(), fallback);
    if (plain instanceof String word) {
      return Words.quoted(word);
    }
    boolean empty = plain.equals(List.of()) || plain.equals(Map.of());
    return empty ? "none" : Words.quoted(CanonicalJson.text(plain));
  }

  private static String meaning(Field field) {
    String example = field.example().isEmpty() ? "" : " Example: `" + field.example() + "`";
    return (field.sentence() + example).replace("|", "\\|");
  }

  private void example(Shape<?> shape) {
    if (!shape.example().isEmpty()) {
      line("```yaml");
      line(shape.example());
      line("```");
      line("");
    }
  }

  private void limits() {
    line("## Limits");
    line("");
    line("A recipe that exceeds one of these is refused with a sentence that says which.");
    line("");
    line("| what | at most |");
    line("| --- | --- |");
    limit("size of the file", (Limits.FILE_BYTES >> 20) + " MB");
    limit("keys and values, all together", Limits.VALUES);
    limit("brackets or blocks inside each other", Limits.DEPTH);
    limit("members of a list, keys of a mapping", Limits.MEMBERS);
    limit("steps, those in groups included", Limits.STEPS);
    limit("groups inside each other", Limits.GROUP_DEPTH);
    limit("alternates", Limits.ALTERNATES);
    limit("masks that use each other in a chain", Limits.MASK_DEPTH);
    limit("corners of a polygon", Limits.POINTS);
    limit("points of a curve", Limits.CURVE_POINTS);
    limit("adjustments of one list", Limits.ADJUSTMENTS);
    limit("characters of a text", Limits.TEXT);
    limit("characters of a line of YAML", Limits.LINE);
    limit("characters of a title", Limits.TITLE);
    limit("characters of a caption and other prose in files", Limits.CAPTION);
    limit("keywords", Limits.KEYWORDS);
    limit("characters of a keyword", Limits.KEYWORD);
    limit("characters of a file's path", Limits.FILE_PATH);
    limit("characters of a key", Limits.KEY);
    limit("characters of a number", Limits.NUMBER);
    limit("problems listed one by one", Limits.PROBLEMS);
  }

  private void limit(String what, Object most) {
    line("| " + what + " | " + most + " |");
  }

  private void line(String text) {
    page.append(text).append('\n');
  }
}
