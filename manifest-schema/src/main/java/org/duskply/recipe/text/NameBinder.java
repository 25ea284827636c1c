package org.duskply.recipe.text;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Names;
import org.jspecify.annotations.Nullable;

/** Reads names: where they are given, alone or as the keys of a table, and where they are used. */
final class NameBinder {
  private final Binder binder;
  private final Tree tree;
  private final String path;
  private final Complaint complaint;

  NameBinder(Binder binder, Tree tree, String path) {
    this.binder = binder;
    this.tree = tree;
    this.path = path;
    this.complaint = new Complaint(binder.problems, tree, path);
  }

  /** The use of a name. */
  Object mention(Kind.Mention kind) {
    String name = name(kind, kind.list()::fault);
    if (name == null) {
      return Binder.FAILED;
    }
    binder.mentions.use(kind.list(), name, tree.spot(), path);
    return name;
  }

  /** A name given. */
  Object newName(Kind.NewName kind) {
    String name = name(kind, Names::fault);
    return name != null && give(kind.list(), name, tree.spot(), path) ? name : Binder.FAILED;
  }

  /** Named members. */
  Object table(Kind.Table kind) {
    if (!(tree instanceof Tree.Mapping mapping)) {
      binder.mentions.lose(kind.list());
      return complaint.mismatch(Words.of(kind), "");
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

  /** Names with changes; what becomes of the records that they name is looked at later. */
  Object changes(Kind.Changes kind) {
    if (!(tree instanceof Tree.Mapping mapping)) {
      return complaint.mismatch(Words.of(kind), "");
    }
    Map<String, Object> changes = new LinkedHashMap<>();
    for (Tree.Entry entry : mapping.entries()) {
      changes.put(entry.key(), change(kind, entry));
    }
    return changes.containsValue(Binder.FAILED)
        ? Binder.FAILED
        : Collections.unmodifiableMap(changes);
  }

  private Object change(Kind.Changes kind, Tree.Entry entry) {
    String name = entry.key();
    String below = path + "/" + name;
    String fault = kind.list().fault(name);
    if (fault != null) {
      binder.problems.add(
          entry.spot(), below, Words.quoted(name) + " " + fault, name, "a " + kind.list().noun());
      return Binder.FAILED;
    }
    binder.mentions.use(kind.list(), name, entry.spot(), below);
    String expected = "keys of the " + kind.list().noun() + " with their new values, in { }";
    Complaint about = new Complaint(binder.problems, entry.value(), below);
    if (!(entry.value() instanceof Tree.Mapping keys)) {
      return about.mismatch(expected, "");
    }
    if (keys.entries().isEmpty()) {
      return about.problem(
          Words.quoted(name) + " changes nothing; write " + expected, "{ }", expected);
    }
    binder.mentions.change(name, below, keys, kind);
    return Objects.requireNonNull(new PlainReader(binder.problems).plain(keys, below));
  }

  /** A well-formed name, or null after a problem. */
  private @Nullable String name(Kind kind, Function<String, @Nullable String> check) {
    if (!(tree instanceof Tree.Scalar scalar) || scalar.empty()) {
      complaint.mismatch(Words.of(kind), "");
      return null;
    }
    String text = scalar.text();
    if (scalar.form() == Tree.Form.BARE && scalar.flag()) {
      complaint.mismatch(Words.of(kind), "; put it in quotes if it is a name: \"" + text + "\"");
      return null;
    }
    String fault = check.apply(text);
    if (fault != null) {
      complaint.problem(
          complaint.label() + ": " + Words.quoted(text) + " " + fault, text, Words.of(kind));
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
}
