package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.jspecify.annotations.Nullable;

/** The names that a recipe gives and those that it uses, each with its place. */
public final class Mentions {
  private final Map<NameList, Map<String, Mention>> given = new EnumMap<>(NameList.class);
  private final List<Mention> used = new ArrayList<>();

  private final List<FileUse> files = new ArrayList<>();
  private final List<Change> changes = new ArrayList<>();
  private final Set<NameList> lost = EnumSet.noneOf(NameList.class);

  /**
   * A file that is read.
   *
   * @param file its path as the recipe writes it
   * @param spot where it stands
   * @param path the part of the recipe that it stands in
   */
  public record FileUse(String file, Spot spot, String path) {}

  /**
   * A name at a place.
   *
   * @param list the list of names it belongs to
   * @param name the name
   * @param spot where it stands
   * @param path the part of the recipe that it stands in, or names
   */
  public record Mention(NameList list, String name, Spot spot, String path) {}

  /**
   * Changes of a record that stands elsewhere.
   *
   * @param name the record's name
   * @param path the part of the recipe that holds the changes
   * @param keys its keys with their new values
   * @param kind what may be changed
   */
  record Change(String name, String path, Tree.Mapping keys, Kind.Changes kind) {}

  /** Notes changes of a record. */
  void change(String name, String path, Tree.Mapping keys, Kind.Changes kind) {
    changes.add(new Change(name, path, keys, kind));
  }

  /** All changes of records, in the order of the text. */
  List<Change> changes() {
    return List.copyOf(changes);
  }

  /** Notes a name that is given; where it was given before, or null. */
  @Nullable Mention give(NameList list, String name, Spot spot, String path) {
    Mention mention = new Mention(list, name, spot, path);
    return given.computeIfAbsent(list, l -> new LinkedHashMap<>()).putIfAbsent(name, mention);
  }

  /** Notes that a list of names could not be read at all. */
  void lose(NameList list) {
    lost.add(list);
  }

  /** Whether a list of names could not be read, so that nothing can be said about uses of them. */
  public boolean lost(NameList list) {
    return lost.contains(list);
  }

  /** Notes a file that is read. */
  void file(String file, Spot spot, String path) {
    files.add(new FileUse(file, spot, path));
  }

  /** The files that are read, in the order of the text. */
  public List<FileUse> files() {
    return List.copyOf(files);
  }

  /** Notes a name that is used. */
  void use(NameList list, String name, Spot spot, String path) {
    used.add(new Mention(list, name, spot, path));
  }

  /** Takes over the uses of another collection about the same text. */
  void addUses(Mentions others) {
    used.addAll(others.used);
    files.addAll(others.files);
  }

  /** The names given in a list, in the order of the text. */
  public Map<String, Mention> given(NameList list) {
    return given.getOrDefault(list, Map.of());
  }

  /** All uses of names, in the order in which they were read. */
  public List<Mention> used() {
    return List.copyOf(used);
  }
}
