package org.duskply.recipe.shape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * One component of a record as a recipe writes it. A field is built in one chain: the kind of
 * value, its range, what happens when it is left out, a sentence, an example.
 */
public final class Field {
  private static final double ANY = Double.MAX_VALUE;

  private final String component;
  private String key;
  private Kind kind;
  private boolean required = true;
  private @Nullable Object fallback;
  private @Nullable Function<Values, Object> fallbackFrom;
  private String fallbackWords = "";
  private String sentence = "";
  private String example = "";
  private boolean principal;
  private boolean forPeople;

  private Field(String component, Kind kind) {
    this.component = component;
    this.kind = kind;
    this.key = hyphenated(component);
  }

  private Field(Field other) {
    this.component = other.component;
    this.key = other.key;
    this.kind = other.kind;
    this.required = other.required;
    this.fallback = other.fallback;
    this.fallbackFrom = other.fallbackFrom;
    this.fallbackWords = other.fallbackWords;
    this.sentence = other.sentence;
    this.example = other.example;
    this.principal = other.principal;
    this.forPeople = other.forPeople;
  }

  /** A number without bounds until {@link #from}, {@link #above} and {@link #to} set them. */
  public static Field number(String component) {
    return new Field(component, new Kind.Decimal(-ANY, false, ANY, Unit.NONE));
  }

  /** A whole number between two bounds. */
  public static Field whole(String component, int least, int most) {
    return new Field(component, new Kind.Whole(least, most, 1, Unit.NONE));
  }

  /** True or false, false where it is left out. */
  public static Field flag(String component) {
    return new Field(component, new Kind.Flag()).byDefault(false);
  }

  /** Free text of limited length. */
  public static Field text(String component, int most) {
    return text(component, "text", most, text -> null);
  }

  /** Text that must pass a check. */
  public static Field text(
      String component, String noun, int most, Function<String, @Nullable Fault> check) {
    return new Field(component, new Kind.Text(noun, most, check));
  }

  /** One of these words. */
  public static Field word(String component, Keyed... words) {
    return new Field(component, new Kind.Word(Arrays.asList(words)));
  }

  /** A value of the given kind. */
  public static Field of(String component, Kind kind) {
    return new Field(component, kind);
  }

  /** A list of records. */
  public static Field list(
      String component, String noun, int least, int most, Supplier<Shape<?>> shape) {
    return new Field(component, new Kind.Items(new Kind.Nested(shape), noun, least, most));
  }

  /** The user's own {@code x-} keys. */
  public static Field extensions() {
    return new Field("extensions", new Kind.Extensions());
  }

  /** A component that no key sets: it follows from others. */
  public static Field derived(
      String component, List<String> needs, Function<Values, Object> value) {
    return new Field(component, new Kind.Derived(needs, value));
  }

  /** The same under another key than the component's own name. */
  public Field key(String newKey) {
    Field copy = new Field(this);
    copy.key = newKey;
    return copy;
  }

  /** The same with a smallest value. */
  public Field from(double least) {
    Kind.Decimal number = (Kind.Decimal) kind;
    return with(new Kind.Decimal(least, false, number.most(), number.unit()));
  }

  /** The same with a bound that the value must exceed. */
  public Field above(double bound) {
    Kind.Decimal number = (Kind.Decimal) kind;
    return with(new Kind.Decimal(bound, true, number.most(), number.unit()));
  }

  /** The same with a greatest value. */
  public Field to(double most) {
    Kind.Decimal number = (Kind.Decimal) kind;
    return with(new Kind.Decimal(number.least(), number.exclusive(), most, number.unit()));
  }

  /** The same for multiples of a whole number alone. */
  public Field every(int multiple) {
    Kind.Whole whole = (Kind.Whole) kind;
    return with(new Kind.Whole(whole.least(), whole.most(), multiple, whole.unit()));
  }

  /** The same for each of red, green and blue, a {@link PerChannel}. */
  public Field perChannel() {
    return with(new Kind.Channels((Kind.Decimal) kind));
  }

  /** The same, counting {@code unit}. */
  public Field in(Unit unit) {
    if (kind instanceof Kind.Whole whole) {
      return with(new Kind.Whole(whole.least(), whole.most(), whole.every(), unit));
    }
    Kind.Decimal number = (Kind.Decimal) kind;
    return with(new Kind.Decimal(number.least(), number.exclusive(), number.most(), unit));
  }

  /** The same, absent (null) where it is left out. */
  public Field optional() {
    Field copy = new Field(this);
    copy.required = false;
    return copy;
  }

  /** The same, absent where it is left out, which means what {@code words} say. */
  public Field optional(String words) {
    Field copy = optional();
    copy.fallbackWords = words;
    return copy;
  }

  /** The same with a value for where it is left out. */
  public Field byDefault(Object value) {
    Field copy = optional();
    copy.fallback = value;
    return copy;
  }

  /** The same with a value for where it is left out that follows from others. */
  public Field byDefault(String words, Function<Values, Object> value) {
    Field copy = optional();
    copy.fallbackFrom = value;
    copy.fallbackWords = words;
    return copy;
  }

  /** The same with a sentence that says what it means. */
  public Field says(String newSentence) {
    Field copy = new Field(this);
    copy.sentence = newSentence;
    return copy;
  }

  /** The same with an example of its value as YAML flow text. */
  public Field example(String newExample) {
    Field copy = new Field(this);
    copy.example = newExample;
    return copy;
  }

  /** The same as the record's principal field: its value alone stands for the record. */
  public Field principal() {
    Field copy = new Field(this);
    copy.principal = true;
    return copy;
  }

  /** The same as words for people, which change nothing in a picture. */
  public Field forPeople() {
    Field copy = new Field(this);
    copy.forPeople = true;
    return copy;
  }

  /** The record component's name. */
  public String component() {
    return component;
  }

  /** The key in a recipe. */
  public String key() {
    return key;
  }

  /** What sort of value it takes. */
  public Kind kind() {
    return kind;
  }

  /** What its number counts; {@link Unit#NONE} for anything but a number. */
  public Unit unit() {
    if (kind instanceof Kind.Decimal number) {
      return number.unit();
    }
    return kind instanceof Kind.Whole whole ? whole.unit() : Unit.NONE;
  }

  /** Whether it must be written. */
  public boolean required() {
    return required && written() && !(kind instanceof Kind.Extensions);
  }

  /** Whether a key of the recipe sets it. */
  public boolean written() {
    return !(kind instanceof Kind.Derived);
  }

  /** Whether one key of its own holds it: not so for inlined records and {@code x-} keys. */
  public boolean keyed() {
    return written() && !(kind instanceof Kind.Inlined) && !(kind instanceof Kind.Extensions);
  }

  /** The fixed value for where it is left out; null when there is none or it depends. */
  public @Nullable Object fallback() {
    return fallback;
  }

  /** The value for where it is left out, given the others; null when it is then absent. */
  public @Nullable Object fallback(Values values) {
    return fallbackFrom == null ? fallback : fallbackFrom.apply(values);
  }

  /** What being left out means, in words; empty when the fixed value says it. */
  public String fallbackWords() {
    return fallbackWords;
  }

  /** What it means. */
  public String sentence() {
    return sentence;
  }

  /** An example of its value, as YAML flow text. */
  public String example() {
    return example;
  }

  /** Whether its value alone stands for the record. */
  public boolean isPrincipal() {
    return principal;
  }

  /** Whether it is words for people, left out of the canonical form. */
  public boolean isForPeople() {
    return forPeople;
  }

  private Field with(Kind newKind) {
    Field copy = new Field(this);
    copy.kind = newKind;
    return copy;
  }

  private static String hyphenated(String component) {
    List<String> words = new ArrayList<>();
    int start = 0;
    for (int i = 1; i <= component.length(); i++) {
      if (i == component.length() || Character.isUpperCase(component.charAt(i))) {
        words.add(component.substring(start, i).toLowerCase(Locale.ROOT));
        start = i;
      }
    }
    return String.join("-", words);
  }
}
