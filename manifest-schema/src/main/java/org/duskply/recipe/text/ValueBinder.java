package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Keyed;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.PerChannel;
import org.jspecify.annotations.Nullable;

/** Makes the value of one field from the part of the tree that should hold it. */
final class ValueBinder implements Kind.Visitor<Object> {
  private static final Map<String, String> FLAG_WORDS =
      Map.of(
          "on", "true", "yes", "true", "y", "true", "true", "true", "1", "true", "off", "false",
          "no", "false", "n", "false", "false", "false", "0", "false");

  private final Binder binder;
  private final Tree tree;
  private final String path;
  private final Complaint complaint;

  ValueBinder(Binder binder, Tree tree, String path) {
    this.binder = binder;
    this.tree = tree;
    this.path = path;
    this.complaint = new Complaint(binder.problems, tree, path);
  }

  @Override
  public Object decimal(Kind.Decimal kind) {
    Double value = numeral(kind);
    if (value == null) {
      return Binder.FAILED;
    }
    boolean low = kind.exclusive() ? value <= kind.least() : value < kind.least();
    return low || value > kind.most() ? complaint.mismatch(Words.of(kind), "") : value;
  }

  @Override
  public Object channels(Kind.Channels kind) {
    if (tree instanceof Tree.Scalar) {
      Object all = decimal(kind.each());
      return all == Binder.FAILED ? all : PerChannel.all((Double) all);
    }
    if (!(tree instanceof Tree.Listing listing) || listing.members().size() != 3) {
      return complaint.mismatch(Words.of(kind), "");
    }
    List<Object> three = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      three.add(binder.value(kind.each(), listing.members().get(i), path + "/#" + (i + 1)));
    }
    return three.contains(Binder.FAILED)
        ? Binder.FAILED
        : new PerChannel((Double) three.get(0), (Double) three.get(1), (Double) three.get(2));
  }

  @Override
  public Object whole(Kind.Whole kind) {
    Double value = numeral(kind);
    if (value == null) {
      return Binder.FAILED;
    }
    return kind.holds(value)
        ? (Object) (int) (double) value
        : complaint.mismatch(Words.of(kind), "");
  }

  /** A finite number, or null after a problem. */
  private @Nullable Double numeral(Kind kind) {
    if (!(tree instanceof Tree.Scalar scalar) || scalar.empty()) {
      complaint.mismatch(Words.of(kind), "");
      return null;
    }
    boolean number = NumberText.matches(scalar.text());
    if (scalar.form() == Tree.Form.TEXT) {
      complaint.mismatch(Words.of(kind), number ? "; delete the quotes, which make it a text" : "");
      return null;
    }
    if (!number) {
      String advice = NumberText.advice(scalar.text());
      complaint.mismatch(Words.of(kind), advice == null ? "" : "; " + advice);
      return null;
    }
    double value = NumberText.value(scalar.text());
    if (!Double.isFinite(value)) {
      complaint.mismatch(Words.of(kind), "; it is too large");
      return null;
    }
    return value;
  }

  @Override
  public Object flag(Kind.Flag kind) {
    if (tree instanceof Tree.Scalar scalar) {
      if (scalar.flag()) {
        return Boolean.valueOf(scalar.text());
      }
      String word = FLAG_WORDS.get(scalar.text().toLowerCase(Locale.ROOT));
      if (word != null) {
        String quotes = scalar.form() == Tree.Form.TEXT ? " without quotes" : "";
        return complaint.mismatch(Words.of(kind), "; write " + word + quotes);
      }
    }
    return complaint.mismatch(Words.of(kind), "");
  }

  @Override
  public Object text(Kind.Text kind) {
    return text(kind.noun(), kind.most(), kind.check());
  }

  @Override
  public Object file(Kind.File kind) {
    Object file = text(Words.of(kind), Limits.FILE_PATH, kind.check());
    if (file != Binder.FAILED && kind.read()) {
      binder.mentions.file((String) file, tree.spot(), path);
    }
    return file;
  }

  private Object text(String noun, int most, Function<String, @Nullable Fault> check) {
    if (!(tree instanceof Tree.Scalar scalar) || scalar.empty()) {
      return complaint.mismatch(noun, "");
    }
    String text = scalar.text();
    if (scalar.form() == Tree.Form.BARE && (scalar.flag() || NumberText.matches(text))) {
      String what = scalar.flag() ? "a word with a meaning of its own" : "a number";
      return complaint.mismatch(
          noun, "; put " + what + " in quotes to make it a text: \"" + text + "\"");
    }
    if (text.length() > most) {
      return complaint.problem(
          complaint.label() + " has " + text.length() + " characters; the limit is " + most,
          text.length() + " characters",
          "at most " + most);
    }
    Fault fault = check.apply(text);
    return fault == null
        ? text
        : complaint.problem(fault.sentence(), fault.found(), fault.expected());
  }

  @Override
  public Object word(Kind.Word kind) {
    if (!(tree instanceof Tree.Scalar scalar) || scalar.empty()) {
      return complaint.mismatch(Words.of(kind), "");
    }
    for (Keyed word : kind.words()) {
      if (word.key().equals(scalar.text())) {
        return word;
      }
    }
    return complaint.unknown(
        scalar.text(), Words.of(kind), Nearest.among(kind.keys(), scalar.text()));
  }

  @Override
  public Object mention(Kind.Mention kind) {
    return new NameBinder(binder, tree, path).mention(kind);
  }

  @Override
  public Object newName(Kind.NewName kind) {
    return new NameBinder(binder, tree, path).newName(kind);
  }

  @Override
  public Object table(Kind.Table kind) {
    return new NameBinder(binder, tree, path).table(kind);
  }

  @Override
  public Object changes(Kind.Changes kind) {
    return new NameBinder(binder, tree, path).changes(kind);
  }

  @Override
  public Object items(Kind.Items kind) {
    if (!(tree instanceof Tree.Listing listing)) {
      boolean empty = tree instanceof Tree.Scalar scalar && scalar.empty();
      return complaint.mismatch(Words.of(kind), empty ? "" : "; put it in brackets: [ … ]");
    }
    if (wrongCount(listing.members().size(), kind.noun(), kind.least(), kind.most())) {
      return Binder.FAILED;
    }
    List<Object> items = new ArrayList<>();
    for (int i = 0; i < listing.members().size(); i++) {
      items.add(binder.value(kind.item(), listing.members().get(i), path + "/#" + (i + 1)));
    }
    return items.contains(Binder.FAILED) ? Binder.FAILED : List.copyOf(items);
  }

  @Override
  public Object positions(Kind.Positions kind) {
    if (tree instanceof Tree.Scalar scalar && PointsText.meant(scalar)) {
      Tree.Listing listing = PointsText.listing(scalar, binder.problems, path);
      return listing == null
          ? Binder.FAILED
          : new ValueBinder(binder, listing, path).positions(kind);
    }
    if (!(tree instanceof Tree.Listing)) {
      return complaint.mismatch(Words.of(kind), "");
    }
    Kind row = new Kind.Nested(kind.row());
    return items(new Kind.Items(row, "point", kind.least(), kind.most()));
  }

  private boolean wrongCount(int count, String noun, int least, int most) {
    if (count >= least && count <= most) {
      return false;
    }
    String limit = count < least ? "it needs at least " + least : "the limit is " + most;
    complaint.problem(
        String.format(
            "%s has %d %s; %s", complaint.label(), count, count == 1 ? noun : noun + "s", limit),
        count + " " + (count == 1 ? noun : noun + "s"),
        count < least ? "at least " + least : "at most " + most);
    return true;
  }

  @Override
  public Object nested(Kind.Nested kind) {
    return binder.record(kind.shape().get(), tree, path);
  }

  @Override
  public Object tagged(Kind.Tagged kind) {
    return new TaggedBinder(binder, tree, path).bind(kind);
  }

  @Override
  public Object namedOr(Kind.NamedOr kind) {
    if (tree instanceof Tree.Mapping) {
      Object thing = binder.record(kind.shape().get(), tree, path);
      return thing == Binder.FAILED ? thing : kind.forms().written(thing);
    }
    if (tree instanceof Tree.Listing) {
      return complaint.mismatch(Words.of(kind), "; of several, make one: { any-of: [a, b] }");
    }
    Object name = mention(new Kind.Mention(kind.list()));
    return name == Binder.FAILED ? name : kind.forms().named((String) name);
  }

  @Override
  public Object inlined(Kind.Inlined kind) {
    throw new IllegalStateException("an inlined record has no value of its own");
  }

  @Override
  public Object extensions(Kind.Extensions kind) {
    throw new IllegalStateException("x- keys have no common value");
  }

  @Override
  public Object derived(Kind.Derived kind) {
    throw new IllegalStateException("a derived value is not written");
  }
}
