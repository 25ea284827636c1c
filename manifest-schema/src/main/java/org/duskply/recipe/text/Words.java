package org.duskply.recipe.text;

import java.util.List;
import java.util.stream.IntStream;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;

/** Kinds of value in a photographer's words: "a number from 0 to 1". */
final class Words implements Kind.Visitor<String> {
  private static final Words ONE = new Words();
  private static final int LONGEST = 60;

  private Words() {}

  /** What a value of this kind is. */
  static String of(Kind kind) {
    return kind.accept(ONE);
  }

  /** A number without needless digits. */
  static String number(double value) {
    return Es6Number.text(value);
  }

  /** {@code a, b and c}; with another last word, {@code a, b or c}. */
  static String list(List<String> words, String last) {
    if (words.size() < 2) {
      return String.join("", words);
    }
    int end = words.size() - 1;
    return String.join(", ", words.subList(0, end)) + " " + last + " " + words.get(end);
  }

  /** At most so many characters of something found, on one line. */
  static String shortened(String text) {
    String line = text.replace('\n', ' ');
    if (line.length() <= LONGEST) {
      return line;
    }
    int end = Character.isHighSurrogate(line.charAt(LONGEST - 1)) ? LONGEST - 1 : LONGEST;
    return line.substring(0, end) + "…";
  }

  /** Something found, in the marks that set off what stands in a recipe. */
  static String quoted(String text) {
    return "`" + shortened(text) + "`";
  }

  @Override
  public String decimal(Kind.Decimal kind) {
    String unit = unit(kind.unit());
    boolean low = kind.least() > -Double.MAX_VALUE;
    boolean high = kind.most() < Double.MAX_VALUE;
    if (!low && !high) {
      return "a number" + unit;
    }
    String from = !low ? "" : kind.exclusive() ? " above " : high ? " from " : " of at least ";
    return "a number"
        + unit
        + from
        + (low ? number(kind.least()) : "")
        + (!high ? "" : (low && kind.exclusive() ? ", up to " : low ? " to " : " up to "))
        + (high ? number(kind.most()) : "");
  }

  @Override
  public String channels(Kind.Channels kind) {
    return of(kind.each()) + ", or three of them as [red, green, blue]";
  }

  @Override
  public String whole(Kind.Whole kind) {
    if (kind.least() == kind.most()) {
      return "the number " + kind.least();
    }
    if (kind.every() > 1) {
      List<String> values =
          IntStream.rangeClosed(kind.least(), kind.most())
              .filter(kind::holds)
              .mapToObj(Integer::toString)
              .toList();
      return list(values, "or");
    }
    return "a whole number" + unit(kind.unit()) + " from " + kind.least() + " to " + kind.most();
  }

  @Override
  public String flag(Kind.Flag kind) {
    return "true or false";
  }

  @Override
  public String text(Kind.Text kind) {
    return kind.noun();
  }

  @Override
  public String file(Kind.File kind) {
    return kind.read() ? "the path of a picture file" : "the path of a file to write";
  }

  @Override
  public String word(Kind.Word kind) {
    return (kind.words().size() > 2 ? "one of " : "") + list(kind.keys(), "or");
  }

  @Override
  public String mention(Kind.Mention kind) {
    return "the name of a " + kind.list().noun();
  }

  @Override
  public String newName(Kind.NewName kind) {
    return "a name for the " + kind.list().noun();
  }

  @Override
  public String items(Kind.Items kind) {
    return "a list of " + plural(kind.noun()) + ", " + atLeast(kind.least());
  }

  @Override
  public String positions(Kind.Positions kind) {
    return "a list of points as \"x,y x,y\" or [[x, y], …], " + atLeast(kind.least());
  }

  @Override
  public String table(Kind.Table kind) {
    return "names, each with its " + kind.list().noun();
  }

  @Override
  public String changes(Kind.Changes kind) {
    return "names of " + kind.list().key() + ", each with the keys to change";
  }

  @Override
  public String nested(Kind.Nested kind) {
    return record(kind.shape().get());
  }

  @Override
  public String tagged(Kind.Tagged kind) {
    return "one of " + list(kind.alternatives().keys(), "or") + " with its value";
  }

  @Override
  public String inlined(Kind.Inlined kind) {
    return "one of " + list(kind.alternatives().keys(), "or");
  }

  @Override
  public String namedOr(Kind.NamedOr kind) {
    return "the name of a " + kind.list().noun() + ", or one written out in { }";
  }

  @Override
  public String extensions(Kind.Extensions kind) {
    return "anything";
  }

  @Override
  public String derived(Kind.Derived kind) {
    return "nothing";
  }

  /** A record as its layout shows it: {@code [x, y]}, or keys and values. */
  static String record(Shape<?> shape) {
    if (shape.layout() == Shape.Layout.ROW) {
      return "[" + String.join(", ", shape.keys()) + "]";
    }
    String keys = "keys and values in { } or on lines of their own";
    return shape.principal().map(Field::kind).map(kind -> of(kind) + ", or " + keys).orElse(keys);
  }

  static String plural(String noun) {
    return noun + "s";
  }

  private static String atLeast(int least) {
    return least == 0 ? "which may be empty" : "at least " + least;
  }

  private static String unit(Unit unit) {
    return unit == Unit.NONE ? "" : " of " + unit.symbol();
  }
}
