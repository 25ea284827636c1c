package org.duskply.recipe.shape;

import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * How a record looks in a recipe. Its fields are the record's components, all of them, in their
 * order; everything that handles recipes walks these and knows no record by name.
 *
 * <p>A record keeps its Shape in a public constant {@code SHAPE}.
 *
 * @param <T> the record
 */
public final class Shape<T extends Record> {
  /** How the fields are laid out. */
  public enum Layout {
    /** Keys and values; one value alone where there is a principal field. */
    MAPPING,
    /** Bare values in brackets, in the order of the fields: {@code [x, y]}. */
    ROW
  }

  /** Looked up once for each class, since large recipes ask for every record that they hold. */
  private static final ClassValue<Shape<?>> KEPT =
      new ClassValue<>() {
        @Override
        protected Shape<?> computeValue(Class<?> record) {
          try {
            return (Shape<?>) record.getField("SHAPE").get(null);
          } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(record.getSimpleName() + " has no public SHAPE", e);
          }
        }
      };

  private final Class<T> type;
  private final String key;
  private final String sentence;
  private final Layout layout;
  private final List<Field> fields;
  private final List<Rule> rules;
  private final Predicate<T> identity;
  private final String example;
  private final List<String> reserved;
  private final RecordAccess<T> access;
  private final Map<String, Field> byKey;

  private Shape(
      Class<T> type,
      String key,
      String sentence,
      Layout layout,
      List<Field> fields,
      List<Rule> rules,
      Predicate<T> identity,
      String example,
      List<String> reserved) {
    this.type = type;
    this.key = key;
    this.sentence = sentence;
    this.layout = layout;
    this.fields = List.copyOf(fields);
    this.rules = List.copyOf(rules);
    this.identity = identity;
    this.example = example;
    this.reserved = List.copyOf(reserved);
    this.access = new RecordAccess<>(type);
    this.byKey =
        fields.stream()
            .filter(Field::keyed)
            .collect(Collectors.toUnmodifiableMap(Field::key, Function.identity()));
  }

  /**
   * A Shape of keys and values.
   *
   * @param key what the record is called: for one of several alternatives, the key that tells it
   * @param sentence what the record is
   * @param fields one for each component, in order
   */
  public static <T extends Record> Shape<T> mapping(
      Class<T> type, String key, String sentence, Field... fields) {
    return checked(type, key, sentence, Layout.MAPPING, List.of(fields));
  }

  /** A Shape of bare values in brackets. */
  public static <T extends Record> Shape<T> row(
      Class<T> type, String key, String sentence, Field... fields) {
    return checked(type, key, sentence, Layout.ROW, List.of(fields));
  }

  private static <T extends Record> Shape<T> checked(
      Class<T> type, String key, String sentence, Layout layout, List<Field> fields) {
    RecordComponent[] components = type.getRecordComponents();
    for (int i = 0; i < Math.max(components.length, fields.size()); i++) {
      if (i >= Math.min(components.length, fields.size())
          || !components[i].getName().equals(fields.get(i).component())) {
        throw new IllegalArgumentException(
            type.getSimpleName() + ": fields must be the record's components, in their order");
      }
    }
    return new Shape<>(
        type, key, sentence, layout, fields, List.of(), record -> false, "", List.of());
  }

  /** The same with conditions between its values. */
  public Shape<T> rules(Rule... newRules) {
    return new Shape<>(
        type, key, sentence, layout, fields, List.of(newRules), identity, example, reserved);
  }

  /** The same, knowing which values change nothing. */
  public Shape<T> identity(Predicate<T> newIdentity) {
    return new Shape<>(type, key, sentence, layout, fields, rules, newIdentity, example, reserved);
  }

  /** The same with an example of the whole, as YAML text. */
  public Shape<T> example(String newExample) {
    return new Shape<>(type, key, sentence, layout, fields, rules, identity, newExample, reserved);
  }

  /** The same with keys that are kept for a later version. */
  public Shape<T> reserves(String... keys) {
    return new Shape<>(
        type, key, sentence, layout, fields, rules, identity, example, List.of(keys));
  }

  /** The Shape that a record class keeps. */
  public static Shape<?> of(Class<?> record) {
    return KEPT.get(record);
  }

  /** The Shape of a record's class. */
  @SuppressWarnings("unchecked") // a class's SHAPE is the Shape of that class: tested
  public static <T extends Record> Shape<T> of(T record) {
    return (Shape<T>) of(record.getClass());
  }

  /** The record's class. */
  public Class<T> type() {
    return type;
  }

  /** What the record is called in a recipe. */
  public String key() {
    return key;
  }

  /** What the record is. */
  public String sentence() {
    return sentence;
  }

  /** How its fields are laid out. */
  public Layout layout() {
    return layout;
  }

  /** One for each component, in order. */
  public List<Field> fields() {
    return fields;
  }

  /** Conditions between its values. */
  public List<Rule> rules() {
    return rules;
  }

  /** An example of the whole as YAML text; empty where the fields' own examples will do. */
  public String example() {
    return example;
  }

  /** Keys that are kept for a later version. */
  public List<String> reserved() {
    return reserved;
  }

  /** The field whose value alone stands for the record. */
  public Optional<Field> principal() {
    return fields.stream().filter(Field::isPrincipal).findFirst();
  }

  /** The field under that key. */
  public Optional<Field> field(String fieldKey) {
    return Optional.ofNullable(byKey.get(fieldKey));
  }

  /** The field that is one of several inlined records. */
  public Optional<Field> inlined() {
    return fields.stream().filter(f -> f.kind() instanceof Kind.Inlined).findFirst();
  }

  /** Whether the user's own {@code x-} keys may stand here. */
  public boolean extensible() {
    return fields.stream().anyMatch(f -> f.kind() instanceof Kind.Extensions);
  }

  /** The keys of fields that have one of their own. */
  public List<String> keys() {
    return fields.stream().filter(Field::keyed).map(Field::key).toList();
  }

  /** Whether the record's values change nothing in a picture. */
  public boolean isIdentity(T record) {
    return identity.test(record);
  }

  /** Whether a record, by its own Shape, changes nothing in a picture. */
  public static boolean isIdentityOf(Object record) {
    return record instanceof Record known && of(known).isIdentity(known);
  }

  /** The value of a component; null for an absent optional one. */
  public @Nullable Object get(T record, Field field) {
    return access.get(record, field.component());
  }

  /** The values of all components of a record. */
  public Values values(T record) {
    Values values = new Values();
    fields.forEach(field -> values.put(field.component(), get(record, field)));
    return values;
  }

  /** The record made from its components' values. */
  public T build(Values values) {
    @Nullable Object[] arguments = new @Nullable Object[fields.size()];
    for (int i = 0; i < arguments.length; i++) {
      arguments[i] = values.get(fields.get(i).component());
    }
    return access.build(arguments);
  }
}
