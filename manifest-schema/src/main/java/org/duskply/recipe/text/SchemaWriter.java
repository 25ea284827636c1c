package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Keyed;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Names;
import org.duskply.recipe.shape.Shape;

/**
 * JSON Schema 2020-12 of Shapes. Alternatives are told apart by {@code if} on the key that tells
 * them apart, one after the other, never by {@code oneOf}: an editor then shows one message for one
 * mistake. What a schema cannot see (names that nobody gave, rings, rules between values) is left
 * to the reader.
 */
public final class SchemaWriter implements Kind.Visitor<Map<String, Object>> {
  private static final String NUMBER = "[-+]?(0|[1-9][0-9]*)(\\.[0-9]+)?([eE][-+]?[0-9]+)?";
  private static final String ENDINGS = "\\.([tT][iI][fF][fF]?|[pP][nN][gG]|[jJ][pP][eE]?[gG])$";

  private final Map<String, Object> definitions = new LinkedHashMap<>();

  private SchemaWriter() {}

  /** The schema of a document that holds {@code root}. */
  public static Map<String, Object> schema(Shape<?> root, String id, String title) {
    SchemaWriter writer = new SchemaWriter();
    Map<String, Object> body = writer.mapping(root, List.of());
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    schema.put("$id", id);
    schema.put("title", title);
    schema.putAll(body);
    schema.put("$defs", writer.definitions);
    return schema;
  }

  /** A reference to a record's definition, which is written the first time. */
  private Map<String, Object> reference(Shape<?> shape) {
    if (!definitions.containsKey(shape.key())) {
      definitions.put(shape.key(), Map.of()); // A group holds steps that hold groups.
      definitions.put(shape.key(), definition(shape));
    }
    return map("$ref", "#/$defs/" + shape.key());
  }

  private Map<String, Object> definition(Shape<?> shape) {
    if (shape.layout() == Shape.Layout.ROW) {
      return row(shape);
    }
    Map<String, Object> mapping = mapping(shape, List.of());
    if (shape.principal().isEmpty()) {
      return mapping;
    }
    Map<String, Object> either = new LinkedHashMap<>();
    either.put("description", mapping.remove("description"));
    either.put("if", map("type", "object"));
    either.put("then", mapping);
    either.put("else", shape.principal().get().kind().accept(this));
    return either;
  }

  private Map<String, Object> row(Shape<?> shape) {
    List<Object> prefix = new ArrayList<>();
    shape.fields().forEach(field -> prefix.add(field(field)));
    Map<String, Object> row = map("description", shape.sentence());
    row.put("type", "array");
    row.put("prefixItems", prefix);
    row.put("items", false);
    row.put("minItems", prefix.size());
    return row;
  }

  private Map<String, Object> mapping(Shape<?> shape, List<String> alsoRequired) {
    Map<String, Object> properties = new LinkedHashMap<>();
    List<String> required = new ArrayList<>(alsoRequired);
    for (Field field : shape.fields()) {
      if (field.keyed()) {
        properties.put(field.key(), field(field));
      }
      if (field.keyed() && field.required()) {
        required.add(field.key());
      }
    }
    Map<String, Object> mapping = map("description", shape.sentence());
    mapping.put("type", "object");
    mapping.put("properties", properties);
    if (!required.isEmpty()) {
      mapping.put("required", required);
    }
    if (shape.extensible()) {
      mapping.put("patternProperties", map("^" + Kind.Extensions.PREFIX, true));
    }
    mapping.put("additionalProperties", false);
    shape
        .inlined()
        .map(Atlas::alternatives)
        .ifPresent(alternatives -> inline(alternatives, properties, mapping));
    return mapping;
  }

  /** The keys of all alternatives, and a chain of conditions that forbids those of the others. */
  private void inline(
      Alternatives<?> alternatives, Map<String, Object> properties, Map<String, Object> mapping) {
    for (Shape<?> shape : alternatives.shapes()) {
      for (Field field : shape.fields()) {
        Object known = properties.put(field.key(), field(field));
        if (known != null && !known.equals(properties.get(field.key()))) {
          throw new IllegalStateException("two different keys are called " + field.key());
        }
      }
    }
    Map<String, Object> link = mapping;
    for (Shape<?> shape : alternatives.shapes()) {
      Map<String, Object> next = new LinkedHashMap<>();
      link.put("if", map("required", List.of(shape.key())));
      link.put("then", only(shape, alternatives));
      link.put("else", next);
      link = next;
    }
    none(alternatives, link);
  }

  private static Map<String, Object> only(Shape<?> shape, Alternatives<?> alternatives) {
    Map<String, Object> forbidden = new LinkedHashMap<>();
    for (Shape<?> other : alternatives.shapes()) {
      for (String key : other.keys()) {
        if (shape.field(key).isEmpty()) {
          forbidden.put(key, false);
        }
      }
    }
    return map("properties", forbidden);
  }

  private static void none(Alternatives<?> alternatives, Map<String, Object> link) {
    if (!alternatives.optional()) {
      link.put("description", "One of " + Words.list(alternatives.keys(), "or") + " is needed.");
      link.put("required", List.of(alternatives.keys().get(0)));
      return;
    }
    Map<String, Object> forbidden = new LinkedHashMap<>();
    alternatives.shapes().forEach(shape -> shape.keys().forEach(key -> forbidden.put(key, false)));
    link.put("properties", forbidden);
  }

  private Map<String, Object> field(Field field) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("description", description(field));
    schema.putAll(field.kind().accept(this));
    Object fallback = field.fallback();
    if (fallback instanceof Keyed word) {
      schema.put("default", word.key());
    } else if (fallback != null) {
      schema.put("default", fallback);
    }
    if (!field.example().isEmpty()) {
      schema.put("examples", List.of(Examples.value(field.example())));
    }
    return schema;
  }

  private static String description(Field field) {
    String unit = field.unit().symbol();
    return field.sentence()
        + (unit.isEmpty() ? "" : " In " + unit + ".")
        + (field.fallbackWords().isEmpty() ? "" : " Left out: " + field.fallbackWords() + ".");
  }

  @Override
  public Map<String, Object> decimal(Kind.Decimal kind) {
    Map<String, Object> number = map("type", "number");
    if (kind.least() > -Double.MAX_VALUE) {
      number.put(kind.exclusive() ? "exclusiveMinimum" : "minimum", kind.least());
    }
    if (kind.most() < Double.MAX_VALUE) {
      number.put("maximum", kind.most());
    }
    return number;
  }

  @Override
  public Map<String, Object> whole(Kind.Whole kind) {
    Map<String, Object> whole = map("type", "integer");
    whole.put("minimum", kind.least());
    whole.put("maximum", kind.most());
    if (kind.every() > 1) {
      whole.put("multipleOf", kind.every());
    }
    return whole;
  }

  @Override
  public Map<String, Object> flag(Kind.Flag kind) {
    return map("type", "boolean");
  }

  @Override
  public Map<String, Object> text(Kind.Text kind) {
    Map<String, Object> text = map("type", "string");
    text.put("maxLength", kind.most());
    return text;
  }

  @Override
  public Map<String, Object> file(Kind.File kind) {
    Map<String, Object> file = map("type", "string");
    file.put("minLength", 1);
    file.put("maxLength", Limits.FILE_PATH);
    if (!kind.read()) {
      file.put("pattern", ENDINGS);
    }
    return file;
  }

  @Override
  public Map<String, Object> word(Kind.Word kind) {
    return map("enum", kind.keys());
  }

  @Override
  public Map<String, Object> mention(Kind.Mention kind) {
    return use(kind.list());
  }

  /** The use of a name. */
  private static Map<String, Object> use(NameList list) {
    String pattern = list == NameList.STEPS ? Names.STEP_PATTERN : Names.PATTERN;
    List<String> reserved = new ArrayList<>(Names.RESERVED);
    reserved.removeAll(list.always());
    return name(reserved, "(" + pattern + ")");
  }

  @Override
  public Map<String, Object> newName(Kind.NewName kind) {
    return name();
  }

  private static Map<String, Object> name() {
    return name(Names.RESERVED, Names.PATTERN);
  }

  private static Map<String, Object> name(List<String> reserved, String pattern) {
    Map<String, Object> name = map("type", "string");
    name.put("pattern", "^(?!(" + String.join("|", reserved) + ")$)" + pattern + "$");
    return name;
  }

  @Override
  public Map<String, Object> items(Kind.Items kind) {
    Map<String, Object> items = map("type", "array");
    items.put("items", kind.item().accept(this));
    if (kind.least() > 0) {
      items.put("minItems", kind.least());
    }
    items.put("maxItems", kind.most());
    return items;
  }

  @Override
  public Map<String, Object> positions(Kind.Positions kind) {
    String point = NUMBER + "," + NUMBER;
    Map<String, Object> text = map("type", "string");
    text.put("pattern", "^\\s*" + point + "(\\s+" + point + "){" + (kind.least() - 1) + ",}\\s*$");
    Map<String, Object> rows =
        items(new Kind.Items(new Kind.Nested(kind.row()), "point", kind.least(), kind.most()));
    Map<String, Object> either = map("if", map("type", "string"));
    either.put("then", text);
    either.put("else", rows);
    return either;
  }

  @Override
  public Map<String, Object> table(Kind.Table kind) {
    Map<String, Object> table = map("type", "object");
    table.put("propertyNames", name());
    table.put("additionalProperties", reference(kind.shape().get()));
    return table;
  }

  /** Any keys of the record, of whichever of its alternatives. */
  @Override
  public Map<String, Object> changes(Kind.Changes kind) {
    Shape<?> shape = kind.shape().get();
    Map<String, Object> properties = new LinkedHashMap<>();
    keyed(shape, properties);
    shape
        .inlined()
        .map(Atlas::alternatives)
        .ifPresent(all -> all.shapes().forEach(part -> keyed(part, properties)));
    properties.keySet().removeAll(kind.fixed().keySet());
    Map<String, Object> keys = map("type", "object");
    keys.put("properties", properties);
    keys.put("patternProperties", map("^" + Kind.Extensions.PREFIX, true));
    keys.put("additionalProperties", false);
    keys.put("minProperties", 1);
    Map<String, Object> changes = map("type", "object");
    changes.put("propertyNames", use(kind.list()));
    changes.put("additionalProperties", keys);
    return changes;
  }

  private void keyed(Shape<?> shape, Map<String, Object> properties) {
    shape.fields().stream()
        .filter(Field::keyed)
        .forEach(field -> properties.put(field.key(), field(field)));
  }

  @Override
  public Map<String, Object> nested(Kind.Nested kind) {
    return reference(kind.shape().get());
  }

  @Override
  public Map<String, Object> tagged(Kind.Tagged kind) {
    String key = kind.alternatives().noun();
    if (!definitions.containsKey(key)) {
      definitions.put(key, Map.of());
      Map<String, Object> properties = new LinkedHashMap<>();
      kind.alternatives().shapes().forEach(s -> properties.put(s.key(), reference(s)));
      String noun = "One " + key + ": one key and its value.";
      Map<String, Object> tagged = map("description", noun);
      tagged.put("type", "object");
      tagged.put("properties", properties);
      tagged.put("additionalProperties", false);
      tagged.put("minProperties", 1);
      tagged.put("maxProperties", 1);
      definitions.put(key, tagged);
    }
    return map("$ref", "#/$defs/" + key);
  }

  @Override
  public Map<String, Object> inlined(Kind.Inlined kind) {
    throw new IllegalStateException("an inlined record has no key of its own");
  }

  @Override
  public Map<String, Object> namedOr(Kind.NamedOr kind) {
    Map<String, Object> either = map("if", map("type", "string"));
    either.put("then", name());
    either.put("else", reference(kind.shape().get()));
    return either;
  }

  @Override
  public Map<String, Object> extensions(Kind.Extensions kind) {
    throw new IllegalStateException("x- keys have no common value");
  }

  @Override
  public Map<String, Object> derived(Kind.Derived kind) {
    throw new IllegalStateException("a derived value is not written");
  }

  private static Map<String, Object> map(String key, Object value) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put(key, value);
    return map;
  }
}
