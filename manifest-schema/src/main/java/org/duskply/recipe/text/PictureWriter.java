package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.Predicate;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.jspecify.annotations.Nullable;

/**
 * Writes what a picture depends on and nothing else. Names are resolved: each use of one, and each
 * mask written out, becomes the number of its content in a list of different contents, in the order
 * of first use; the use of a step becomes its place. Members of lists that change nothing are left
 * out.
 */
public final class PictureWriter extends PlainWriter {
  /** In place of the number of a mask without any key. */
  private static final String EVERYWHERE = "everywhere";

  private final Map<NameList, Map<String, ? extends Record>> named;
  private final Map<NameList, Map<String, Object>> contents = new HashMap<>();
  private final Map<NameList, Map<String, String>> numbers = new HashMap<>();
  private final Map<NameList, Map<String, String>> numberByName = new HashMap<>();
  private final Predicate<Object> kept;
  private final Function<String, @Nullable String> stepPlace;
  private int depth;

  /**
   * Starts with empty lists.
   *
   * @param named what stands under each name
   * @param kept which records of a list the picture depends on
   * @param stepPlace the place, among those kept, of the step that goes by some name; null for one
   *     that is left out
   */
  public PictureWriter(
      Map<NameList, Map<String, ? extends Record>> named,
      Predicate<Object> kept,
      Function<String, @Nullable String> stepPlace) {
    super(Form.CANONICAL);
    this.named = named;
    this.kept = kept;
    this.stepPlace = stepPlace;
  }

  /** The different contents met so far, in the order of first use. */
  public List<Object> contents(NameList list) {
    return new ArrayList<>(contents.getOrDefault(list, Map.of()).values());
  }

  /** The steps, or another list of records, as values. */
  public List<Object> list(List<? extends Record> records) {
    List<Object> list = new ArrayList<>();
    for (Record record : records) {
      if (kept.test(record)) {
        list.add(record(record));
      }
    }
    return list;
  }

  /** The number of what stands under a name. */
  public String number(NameList list, String name) {
    Map<String, String> known = numberByName.computeIfAbsent(list, l -> new HashMap<>());
    String number = known.get(name);
    if (number == null) {
      Record record = named.getOrDefault(list, Map.of()).get(name);
      if (record == null) {
        throw new IllegalArgumentException("there is no " + list.noun() + " called " + name);
      }
      number = number(list, record);
      known.put(name, number);
    }
    return number;
  }

  private String number(NameList list, Record record) {
    if (++depth > Limits.MASK_DEPTH + Limits.DEPTH) {
      throw new IllegalArgumentException("masks use each other in a ring, or in too long a chain");
    }
    Object content = record(record);
    depth--;
    if (content.equals(Map.of())) {
      return EVERYWHERE;
    }
    String key = CanonicalJson.text(content);
    Map<String, Object> all = contents.computeIfAbsent(list, l -> new LinkedHashMap<>());
    all.putIfAbsent(key, content);
    return numbers
        .computeIfAbsent(list, l -> new HashMap<>())
        .computeIfAbsent(key, k -> "#" + all.size());
  }

  @Override
  protected boolean kept(Field field) {
    return super.kept(field) && !(field.kind() instanceof Kind.NewName);
  }

  /** Neither what changes nothing, nor the name of a step that is left out. */
  @Override
  protected boolean keptMember(Kind item, Object member) {
    boolean step = item instanceof Kind.Mention mention && mention.list() == NameList.STEPS;
    return step ? stepPlace.apply((String) member) != null : kept.test(member);
  }

  /** A mask that is everywhere says as much as none; a list that was emptied as much as none. */
  @Override
  protected boolean saysNothing(Field field, Object plain) {
    if (plain instanceof List<?> list) {
      return list.isEmpty() && !field.required();
    }
    return plain.equals(EVERYWHERE) && !field.required();
  }

  @Override
  protected Object mention(Kind.Mention kind, String name) {
    if (kind.list() == NameList.STEPS) {
      return Objects.requireNonNull(stepPlace.apply(name), name);
    }
    return number(kind.list(), name);
  }

  @Override
  protected Object namedOr(Kind.NamedOr kind, Object value) {
    String name = kind.forms().name(value);
    return name != null
        ? number(kind.list(), name)
        : number(kind.list(), kind.forms().thing(value));
  }
}
