package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Keyed;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Names;
import org.duskply.recipe.shape.Shape;
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

  ValueBinder(Binder binder, Tree tree, String path) {
    this.binder = binder;
    this.tree = tree;
    this.path = path;
  }

  @Override
  public Object number(Kind.Number kind) {
    Double value = numeral(Words.of(kind));
    if (value == null) {
      return Binder.FAILED;
    }
    boolean low = kind.exclusive() ? value <= kind.least() : value < kind.least();
    return low || value > kind.most() ? mismatch(Words.of(kind), "") : value;
  }

  @Override
  public Object whole(Kind.Whole kind) {
    Double value = numeral(Words.of(kind));
    if (value == null) {
      return Binder.FAILED;
    }
    return kind.holds(value) ? (Object) (int) (double) value : mismatch(Words.of(kind), "");
  }

  /** A finite number, or null after a problem. */
  private @Nullable Double numeral(String expected) {
    if (!(tree instanceof Tree.Scalar scalar) || scalar.empty()) {
      mismatch(expected, "");
      return null;
    }
    boolean number = NumberText.matches(scalar.text());
    if (scalar.form() == Tree.Form.TEXT) {
      mismatch(expected, number ? "; delete the quotes, which make it a text" : "");
      return null;
    }
    if (!number) {
      String advice = NumberText.advice(scalar.text());
      mismatch(expected, advice == null ? "" : "; " + advice);
      return null;
    }
    double value = NumberText.value(scalar.text());
    if (!Double.isFinite(value)) {
      mismatch(expected, "; it is too large");
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
        return mismatch(Words.of(kind), "; write " + word + quotes);
      }
    }
    return mismatch(Words.of(kind), "");
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
      return mismatch(noun, "");
    }
    String text = scalar.text();
    if (scalar.form() == Tree.Form.BARE && (scalar.flag() || NumberText.matches(text))) {
      String what = scalar.flag() ? "a word with a meaning of its own" : "a number";
      return mismatch(noun, "; put " + what + " in quotes to make it a text: \"" + text + "\"");
    }
    if (text.length() > most) {
      return problem(
          label() + " has " + text.length() + " characters; the limit is " + most,
          text.length() + " characters",
          "at most " + most);
    }
    Fault fault = check.apply(text);
    return fault == null ? text : problem(fault.sentence(), fault.found(), fault.expected());
  }

  @Override
  public Object word(Kind.Word kind) {
    if (!(tree instanceof Tree.Scalar scalar) || scalar.empty()) {
      return mismatch(Words.of(kind), "");
    }
    for (Keyed word : kind.words()) {
      if (word.key().equals(scalar.text())) {
        return word;
      }
    }
    return unknown(scalar.text(), Words.of(kind), Nearest.among(kind.keys(), scalar.text()));
  }

  @Override
  public Object mention(Kind.Mention kind) {
    String name = name(Words.of(kind));
    if (name == null) {
      return Binder.FAILED;
    }
    binder.mentions.use(kind.list(), name, tree.spot(), path);
    return name;
  }

  @Override
  public Object newName(Kind.NewName kind) {
    String name = name(Words.of(kind));
    return name != null && give(kind.list(), name, tree.spot(), path) ? name : Binder.FAILED;
  }

  /** A well-formed name, or null after a problem. */
  private @Nullable String name(String expected) {
    if (!(tree instanceof Tree.Scalar scalar) || scalar.empty()) {
      mismatch(expected, "");
      return null;
    }
    String text = scalar.text();
    if (scalar.form() == Tree.Form.BARE && scalar.flag()) {
      mismatch(expected, "; put it in quotes if it is a name: \"" + text + "\"");
      return null;
    }
    String fault = Names.fault(text);
    if (fault != null) {
      problem(label() + ": " + Words.quoted(text) + " " + fault, text, expected);
      return null;
    }
    return text;
  }

  private boolean give(NameList list, String name, Spot spot, String where) {
    Mentions.Mention first = binder.mentions.give(list, name, spot, where);
    if (first == null) {
      return true;
    }
    binder.problems.add(
        spot,
        where,
        String.format(
            "two %ss are called %s; the other stands in line %d, and names must differ",
            list.noun(), Words.quoted(name), first.spot().line()),
        name,
        "another name");
    return false;
  }

  @Override
  public Object items(Kind.Items kind) {
    if (!(tree instanceof Tree.Listing listing)) {
      boolean empty = tree instanceof Tree.Scalar scalar && scalar.empty();
      return mismatch(Words.of(kind), empty ? "" : "; put it in brackets: [ … ]");
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
    if (tree instanceof Tree.Scalar scalar && scalar.form() == Tree.Form.TEXT
        || tree instanceof Tree.Scalar bare && !bare.empty() && bare.text().indexOf(',') > 0) {
      Tree.Listing listing = PointsText.listing((Tree.Scalar) tree, binder.problems, path);
      return listing == null
          ? Binder.FAILED
          : new ValueBinder(binder, listing, path).positions(kind);
    }
    if (!(tree instanceof Tree.Listing listing)) {
      return mismatch(Words.of(kind), "");
    }
    Kind row = new Kind.Nested(kind.row());
    return items(new Kind.Items(row, "point", kind.least(), kind.most()));
  }

  private boolean wrongCount(int count, String noun, int least, int most) {
    if (count >= least && count <= most) {
      return false;
    }
    String limit = count < least ? "it needs at least " + least : "the limit is " + most;
    problem(
        String.format("%s has %d %s; %s", label(), count, count == 1 ? noun : noun + "s", limit),
        count + " " + (count == 1 ? noun : noun + "s"),
        count < least ? "at least " + least : "at most " + most);
    return true;
  }

  @Override
  public Object table(Kind.Table kind) {
    if (!(tree instanceof Tree.Mapping mapping)) {
      binder.mentions.lose(kind.list());
      return mismatch(Words.of(kind), "");
    }
    Map<String, Object> members = new LinkedHashMap<>();
    for (Tree.Entry entry : mapping.entries()) {
      String name = entry.key();
      String below = path + "/" + name;
      String fault = Names.fault(name);
      if (fault != null) {
        String sentence = Words.quoted(name) + " " + fault;
        binder.problems.add(entry.spot(), below, sentence, name, Names.RULE);
      }
      give(kind.list(), name, entry.spot(), below);
      Object member =
          entry.value() instanceof Tree.Broken
              ? Binder.FAILED
              : binder.record(kind.shape().get(), entry.value(), below);
      members.put(name, member);
    }
    boolean failed = members.values().removeIf(member -> member == Binder.FAILED);
    List<Fault> faults = kind.check().apply(members);
    faults.forEach(fault -> binder.fault(fault, path));
    return failed || !faults.isEmpty() ? Binder.FAILED : Collections.unmodifiableMap(members);
  }

  @Override
  public Object nested(Kind.Nested kind) {
    return binder.record(kind.shape().get(), tree, path);
  }

  @Override
  public Object tagged(Kind.Tagged kind) {
    Alternatives<?> alternatives = kind.alternatives();
    if (!(tree instanceof Tree.Mapping mapping) || mapping.entries().isEmpty()) {
      return mismatch(Words.of(kind), valueAdvice(alternatives));
    }
    if (mapping.entries().size() > 1) {
      Spot second = mapping.entries().get(1).spot();
      List<String> keys = mapping.entries().stream().map(e -> Words.quoted(e.key())).toList();
      binder.problems.add(
          second,
          path,
          String.format(
              "one %s at a time: %s stand together; %s",
              alternatives.noun(), Words.list(keys, "and"), alternatives.advice()),
          Words.list(mapping.entries().stream().map(Tree.Entry::key).toList(), "and"),
          "one " + alternatives.noun());
    }
    Object first = Binder.FAILED;
    for (Tree.Entry entry : mapping.entries()) {
      Object made = alternative(alternatives, entry);
      first = entry == mapping.entries().get(0) ? made : first;
    }
    return mapping.entries().size() == 1 ? first : Binder.FAILED;
  }

  private Object alternative(Alternatives<?> alternatives, Tree.Entry entry) {
    Optional<Shape<?>> shape = alternatives.withKey(entry.key());
    String below = path + "/" + entry.key();
    if (shape.isPresent()) {
      return entry.value() instanceof Tree.Broken
          ? Binder.FAILED
          : binder.record(shape.get(), entry.value(), below);
    }
    String nearest = Nearest.among(alternatives.keys(), entry.key());
    binder.problems.add(
        entry.spot(),
        below,
        String.format(
            "this version has no %s %s%s known ones are %s",
            alternatives.noun(),
            Words.quoted(entry.key()),
            nearest == null ? ";" : "; did you mean " + Words.quoted(nearest) + "? The",
            Words.list(alternatives.keys(), "and")),
        entry.key(),
        Words.list(alternatives.keys(), "and"),
        nearest);
    return Binder.FAILED;
  }

  private String valueAdvice(Alternatives<?> alternatives) {
    return tree instanceof Tree.Scalar scalar && alternatives.withKey(scalar.text()).isPresent()
        ? "; write { " + scalar.text() + ": … }"
        : "";
  }

  @Override
  public Object namedOr(Kind.NamedOr kind) {
    if (tree instanceof Tree.Mapping) {
      Object thing = binder.record(kind.shape().get(), tree, path);
      return thing == Binder.FAILED ? thing : kind.forms().written(thing);
    }
    if (tree instanceof Tree.Listing) {
      return mismatch(Words.of(kind), "; of several, make one: { any-of: [a, b] }");
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

  /** Reports that something else was wanted. */
  Object mismatch(String expected, String advice) {
    if (tree instanceof Tree.Broken) {
      return Binder.FAILED;
    }
    if (tree instanceof Tree.Scalar scalar && scalar.empty()) {
      return problem(
          label() + " has no value; give it " + expected + ", or delete the key",
          "nothing",
          expected);
    }
    String found = found();
    String shown = tree instanceof Tree.Scalar ? Words.quoted(found) : found;
    return problem(label() + " is " + shown + "; it takes " + expected + advice, found, expected);
  }

  private String found() {
    if (tree instanceof Tree.Scalar scalar) {
      return scalar.text();
    }
    if (tree instanceof Tree.Listing listing) {
      int size = listing.members().size();
      return size == 0 ? "an empty list" : "a list of " + size;
    }
    return "keys and values";
  }

  private Object unknown(String text, String expected, @Nullable String nearest) {
    String guess = nearest == null ? "" : "; did you mean " + Words.quoted(nearest) + "?";
    binder.problems.add(
        tree.spot(),
        path,
        label() + " is " + Words.quoted(text) + "; it takes " + expected + guess,
        text,
        expected,
        nearest);
    return Binder.FAILED;
  }

  private Object problem(String sentence, String found, String expected) {
    binder.problems.add(tree.spot(), path, sentence, found, expected);
    return Binder.FAILED;
  }

  /** What the value is called: its key, or its number in its list. */
  private String label() {
    if (path.isEmpty()) {
      return "the recipe";
    }
    int slash = path.lastIndexOf('/');
    String last = path.substring(slash + 1);
    if (!last.startsWith("#") || slash < 0) {
      return Words.quoted(last);
    }
    String list = path.substring(path.lastIndexOf('/', slash - 1) + 1, slash);
    return last + " of " + Words.quoted(list);
  }
}
