package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.duskply.recipe.Limits;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.dataformat.yaml.YAMLFactory;

/**
 * Builds a {@link Tree} from the tokens of one YAML or JSON document. Whatever a recipe may not use
 * (anchors, aliases, merge keys, tags, a second document, a key twice) is reported at its token and
 * never expanded; the limits are counted token by token, so that a hostile text is dropped as soon
 * as it exceeds one.
 */
final class TreeReader {
  private static final StreamReadConstraints CONSTRAINTS =
      StreamReadConstraints.builder()
          .maxNestingDepth(Limits.DEPTH * 2)
          .maxStringLength(Limits.FILE_BYTES)
          .maxNameLength(Limits.FILE_BYTES)
          .maxNumberLength(Limits.FILE_BYTES)
          .build();
  private static final YAMLFactory YAML =
      YAMLFactory.builder().streamReadConstraints(CONSTRAINTS).build();
  private static final JsonFactory JSON =
      JsonFactory.builder().streamReadConstraints(CONSTRAINTS).build();

  private final Problems problems;
  private final JsonParser parser;
  private final boolean yaml;
  private final Columns columns;
  private int values;
  private int depth;

  private TreeReader(Source source, JsonParser parser, boolean yaml, Problems problems) {
    this.parser = parser;
    this.yaml = yaml;
    this.problems = problems;
    this.columns = new Columns(source, yaml);
  }

  /**
   * Reads one document.
   *
   * @param text the source's text, or the same with characters replaced one for one
   * @return its root; null when the text is empty, exceeds a limit, or holds a second document
   * @throws JacksonException where the text is not YAML or JSON
   */
  static @Nullable Tree read(Source source, String text, boolean yaml, Problems problems) {
    try (JsonParser parser =
        yaml
            ? YAML.createParser(ObjectReadContext.empty(), new WholeCharacters(text))
            : JSON.createParser(ObjectReadContext.empty(), text)) {
      return new TreeReader(source, parser, yaml, problems).document();
    } catch (Exceeded e) {
      return null;
    }
  }

  /** A limit was exceeded and has been reported. */
  private static final class Exceeded extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Exceeded() {
      super("limit", null, false, false);
    }
  }

  private @Nullable Tree document() {
    JsonToken first = parser.nextToken();
    if (first == null) {
      problems.add(Spot.START, "", "this file holds no recipe: it is empty", "nothing", "a recipe");
      return null;
    }
    Tree root = value(first, "");
    if (parser.nextToken() != null) {
      problems.add(
          spot(),
          "",
          yaml
              ? "a second document begins here; a file holds one recipe, so delete the --- above"
                  + " or move what follows into a file of its own"
              : "something follows after the recipe's closing bracket; delete it",
          "a second document",
          "the end of the file");
      return null;
    }
    return root;
  }

  private Tree value(JsonToken token, String path) {
    count();
    Spot spot = spot();
    boolean refused = yaml && refused(spot, path);
    Tree tree =
        switch (token) {
          case START_OBJECT -> mapping(spot, path);
          case START_ARRAY -> listing(spot, path);
          default -> scalar(token, spot, path);
        };
    return refused ? new Tree.Broken(spot) : tree;
  }

  private Tree mapping(Spot spot, String path) {
    deeper(spot, path);
    List<Tree.Entry> entries = new ArrayList<>();
    Map<String, Spot> seen = new HashMap<>();
    int keys = 0;
    for (JsonToken token = parser.nextToken();
        token != JsonToken.END_OBJECT;
        token = parser.nextToken()) {
      count();
      tooMany(++keys, spot, path, "keys");
      Spot keySpot = spot();
      String key = parser.currentName();
      String keyPath = path.isEmpty() ? key : path + "/" + key;
      boolean kept = key(key, keySpot, keyPath, seen);
      Tree value = value(parser.nextToken(), kept ? keyPath : path);
      if (kept) {
        entries.add(new Tree.Entry(key, keySpot, value));
      }
    }
    depth--;
    return new Tree.Mapping(spot, List.copyOf(entries));
  }

  /** Whether the key can be kept; it is reported when not. */
  private boolean key(String key, Spot spot, String path, Map<String, Spot> seen) {
    if (key.length() > Limits.KEY) {
      exceeded(spot, "", "a key", key.length(), Limits.KEY, "characters");
    }
    if (yaml && refused(spot, path)) {
      return false;
    }
    if (Refusals.halfCharacter(key, spot, "", problems)) {
      return false;
    }
    boolean bare = yaml && !quotedHere();
    if (bare && Refusals.keyReported(key, spot, path, problems)) {
      return false;
    }
    Spot first = seen.putIfAbsent(key, spot);
    if (first != null) {
      problems.add(
          spot,
          path,
          Words.quoted(key)
              + " stands here a second time (first in line "
              + first.line()
              + "); keep one of the two",
          key,
          "each key once");
      return false;
    }
    return true;
  }

  private Tree listing(Spot spot, String path) {
    deeper(spot, path);
    List<Tree> members = new ArrayList<>();
    for (JsonToken token = parser.nextToken();
        token != JsonToken.END_ARRAY;
        token = parser.nextToken()) {
      members.add(value(token, path + "/#" + (members.size() + 1)));
      tooMany(members.size(), spot, path, "members");
    }
    depth--;
    return new Tree.Listing(spot, List.copyOf(members));
  }

  private Tree scalar(JsonToken token, Spot spot, String path) {
    String text = token == JsonToken.VALUE_NULL ? "null" : parser.getString();
    if (text == null) {
      text = "";
    }
    boolean number = token.isNumeric() || NumberText.matches(text);
    if (number && text.length() > Limits.NUMBER && !quoted(token)) {
      exceeded(spot, path, "a number", text.length(), Limits.NUMBER, "characters");
    }
    if (text.length() > Limits.TEXT) {
      exceeded(spot, path, "a text", text.length(), Limits.TEXT, "characters");
    }
    if (Refusals.halfCharacter(text, spot, path, problems)) {
      return new Tree.Broken(spot);
    }
    return new Tree.Scalar(spot, text, quoted(token) ? Tree.Form.TEXT : Tree.Form.BARE);
  }

  private boolean quoted(JsonToken token) {
    if (!yaml) {
      return token == JsonToken.VALUE_STRING;
    }
    return quotedHere();
  }

  private boolean quotedHere() {
    int first = columns.characterAtToken(parser.currentTokenLocation());
    return first == '"' || first == '\'' || first == '|' || first == '>';
  }

  private boolean refused(Spot spot, String path) {
    return Refusals.reported(
        columns.characterAtToken(parser.currentTokenLocation()), spot, path, problems);
  }

  private void count() {
    if (++values > Limits.VALUES) {
      exceeded(spot(), "", "a recipe", values, Limits.VALUES, "keys and values");
    }
  }

  private void deeper(Spot spot, String path) {
    if (++depth > Limits.DEPTH) {
      problems.add(
          spot,
          path.length() > Limits.KEY ? "" : path,
          "brackets or blocks are nested more than "
              + Limits.DEPTH
              + " deep here, which is the limit of a recipe",
          "nesting " + depth + " deep",
          "at most " + Limits.DEPTH);
      throw new Exceeded();
    }
  }

  private void tooMany(int count, Spot spot, String path, String what) {
    if (count > Limits.MEMBERS) {
      problems.add(
          spot,
          path,
          (path.isEmpty() ? "the recipe" : Words.quoted(path))
              + " has more than "
              + Limits.MEMBERS
              + " "
              + (path.equals("steps") ? "steps" : what)
              + ", which is the limit; the file was read no further",
          "more than " + Limits.MEMBERS,
          "at most " + Limits.MEMBERS);
      throw new Exceeded();
    }
  }

  private void exceeded(Spot spot, String path, String what, int found, int limit, String unit) {
    problems.add(
        spot,
        path,
        what + " has " + found + " " + unit + "; the limit is " + limit,
        found + " " + unit,
        "at most " + limit);
    throw new Exceeded();
  }

  private Spot spot() {
    return columns.spot(parser.currentTokenLocation());
  }
}
