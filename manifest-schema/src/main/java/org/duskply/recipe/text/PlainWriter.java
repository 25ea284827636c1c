package org.duskply.recipe.text;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Keyed;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Values;
import org.jspecify.annotations.Nullable;

/**
 * Turns records into plain maps, lists, texts and numbers by their Shapes: the way back from {@link
 * Binder}. What equals its default is left out.
 */
public class PlainWriter {
  /** What to do with what changes no picture. */
  public enum Form {
    /** All that a recipe says, short forms where they fit. */
    SHORT,
    /** Long forms alone, without words for people and the user's own keys. */
    CANONICAL
  }

  private final Form form;

  /** A writer of that form. */
  public PlainWriter(Form form) {
    this.form = form;
  }

  /** A record as the value of a key or the member of a list. */
  public final <T extends Record> Object record(T record) {
    Shape<T> shape = Shape.of(record);
    if (shape.layout() == Shape.Layout.ROW) {
      List<Object> row = new ArrayList<>();
      for (Field field : shape.fields()) {
        row.add(value(field.kind(), Objects.requireNonNull(shape.get(record, field))));
      }
      return row;
    }
    Map<String, Object> mapping = mapping(shape, record);
    String principal = shape.principal().map(Field::key).orElse("");
    boolean alone = mapping.size() == 1 && mapping.containsKey(principal);
    return form == Form.SHORT && alone ? Objects.requireNonNull(mapping.get(principal)) : mapping;
  }

  /** Some keys of a record with their values, those that equal their defaults too. */
  public final <T extends Record> Map<String, Object> keys(T record, Set<String> keys) {
    Map<String, Object> mapping = new LinkedHashMap<>();
    Shape<T> shape = Shape.of(record);
    for (Field field : shape.fields()) {
      Object value = shape.get(record, field);
      if (value == null || !kept(field)) {
        continue;
      }
      if (field.kind() instanceof Kind.Inlined) {
        mapping.putAll(keys((Record) value, keys));
      } else if (keys.contains(field.key())) {
        mapping.put(field.key(), value(field.kind(), value));
      }
    }
    return mapping;
  }

  private <T extends Record> Map<String, Object> mapping(Shape<T> shape, T record) {
    Map<String, Object> mapping = new LinkedHashMap<>();
    Values values = shape.values(record);
    for (Field field : inReadingOrder(shape)) {
      Object value = values.get(field.component());
      if (value != null && kept(field)) {
        add(mapping, field, value, field.fallback(values));
      }
    }
    return mapping;
  }

  /** A name first, then what is done, then how. */
  private static List<Field> inReadingOrder(Shape<?> shape) {
    List<Field> ordered = new ArrayList<>(shape.fields());
    ordered.removeIf(field -> field.kind() instanceof Kind.Inlined);
    int first = !ordered.isEmpty() && ordered.get(0).kind() instanceof Kind.NewName ? 1 : 0;
    shape.inlined().ifPresent(field -> ordered.add(first, field));
    return ordered;
  }

  /** Whether this form holds the field. */
  protected boolean kept(Field field) {
    boolean always = !field.isForPeople() && !(field.kind() instanceof Kind.Extensions);
    return field.written() && (form == Form.SHORT || always);
  }

  private void add(
      Map<String, Object> mapping, Field field, Object value, @Nullable Object fallback) {
    if (field.kind() instanceof Kind.Extensions) {
      ((Map<?, ?>) value).forEach((key, own) -> mapping.put((String) key, kept(own)));
    } else if (field.kind() instanceof Kind.Inlined) {
      mapping.putAll(mappingOf((Record) value));
    } else if (field.required() || !value.equals(fallback)) {
      Object plain = value(field.kind(), value);
      if (!saysNothing(field, plain)) {
        mapping.put(field.key(), plain);
      }
    }
  }

  /** The user's own values; a Double stays one, so it keeps its point: 12.0. */
  private static @Nullable Object kept(@Nullable Object own) {
    if (own instanceof Map<?, ?> map) {
      Map<Object, @Nullable Object> copy = new LinkedHashMap<>();
      map.forEach((key, value) -> copy.put(key, kept(value)));
      return copy;
    }
    if (own instanceof List<?> list) {
      List<@Nullable Object> copy = new ArrayList<>();
      list.forEach(value -> copy.add(kept(value)));
      return copy;
    }
    if (own instanceof Double number && number == Math.rint(number) && Double.isFinite(number)) {
      String text = Es6Number.text(number);
      return text.indexOf('e') < 0 ? new BigDecimal(text + ".0") : number;
    }
    return own;
  }

  /** Whether a value that differs from its default nevertheless says nothing. */
  protected boolean saysNothing(Field field, Object plain) {
    return false;
  }

  private <T extends Record> Map<String, Object> mappingOf(T record) {
    return mapping(Shape.of(record), record);
  }

  /** A value of some kind. */
  protected final Object value(Kind kind, Object value) {
    if (kind instanceof Kind.Items items) {
      return items(items, (List<?>) value);
    }
    if (kind instanceof Kind.Positions) {
      return positions((List<?>) value);
    }
    if (kind instanceof Kind.Table) {
      Map<String, Object> table = new LinkedHashMap<>();
      ((Map<?, ?>) value)
          .forEach((name, member) -> table.put((String) name, record((Record) member)));
      return table;
    }
    if (kind instanceof Kind.Changes) {
      return Objects.requireNonNull(kept(value));
    }
    if (kind instanceof Kind.Tagged) {
      return Map.of(Shape.of((Record) value).key(), record((Record) value));
    }
    if (kind instanceof Kind.NamedOr namedOr) {
      return namedOr(namedOr, value);
    }
    if (kind instanceof Kind.Mention mention) {
      return mention(mention, (String) value);
    }
    if (kind instanceof Kind.Nested) {
      return record((Record) value);
    }
    return value instanceof Keyed word ? word.key() : value;
  }

  private List<Object> items(Kind.Items kind, List<?> members) {
    List<Object> list = new ArrayList<>();
    for (Object member : members) {
      if (kind.item() instanceof Kind.NamedOr || keptMember(member)) {
        list.add(value(kind.item(), member));
      }
    }
    return list;
  }

  /** Whether this form holds a record in a list. */
  protected boolean keptMember(Object member) {
    return true;
  }

  private Object positions(List<?> points) {
    List<List<?>> rows = points.stream().<List<?>>map(p -> (List<?>) record((Record) p)).toList();
    if (form != Form.SHORT) {
      return rows;
    }
    List<String> words = new ArrayList<>();
    for (List<?> row : rows) {
      words.add(Words.number((Double) row.get(0)) + "," + Words.number((Double) row.get(1)));
    }
    return String.join(" ", words);
  }

  /** The use of a name. */
  protected Object mention(Kind.Mention kind, String name) {
    return name;
  }

  /** A name, or the thing written out. */
  protected Object namedOr(Kind.NamedOr kind, Object value) {
    String name = kind.forms().name(value);
    return name != null ? name : record(kind.forms().thing(value));
  }
}
