package org.duskply.recipe.shape;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** What sort of value a field takes. */
public sealed interface Kind {
  /** Does what {@code visitor} does for this kind. */
  <R> R accept(Visitor<R> visitor);

  /**
   * A number.
   *
   * @param least smallest value, or the bound that it must exceed
   * @param exclusive whether {@code least} itself is refused
   * @param most greatest value
   * @param unit what it counts
   */
  record Decimal(double least, boolean exclusive, double most, Unit unit) implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.decimal(this);
    }
  }

  /**
   * A whole number.
   *
   * @param least smallest value
   * @param most greatest value
   * @param every only multiples of this; 1 for all
   * @param unit what it counts
   */
  record Whole(int least, int most, int every, Unit unit) implements Kind {
    /** Whether a number is one of them. */
    public boolean holds(double value) {
      return value == Math.rint(value)
          && value >= least
          && value <= most
          && (int) value % every == 0;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.whole(this);
    }
  }

  /** True or false. */
  record Flag() implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.flag(this);
    }
  }

  /**
   * Free text.
   *
   * @param noun what it is: "text", "a file's path"
   * @param most greatest length in characters
   * @param check the sentence of what is wrong with a text, a fault with path ""; null when fine
   */
  record Text(String noun, int most, Function<String, @Nullable Fault> check) implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.text(this);
    }
  }

  /**
   * A file by its path, with {@code /} between folders.
   *
   * @param read whether it is read, not written
   * @param check the sentence of what is wrong with a path, a fault with path ""; null when fine
   */
  record File(boolean read, Function<String, @Nullable Fault> check) implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.file(this);
    }
  }

  /**
   * One of several words.
   *
   * @param words the constants they stand for
   */
  record Word(List<? extends Keyed> words) implements Kind {
    /** Copies the list. */
    public Word {
      words = List.copyOf(words);
    }

    /** The words as a recipe writes them. */
    public List<String> keys() {
      return words.stream().map(Keyed::key).toList();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.word(this);
    }
  }

  /**
   * The name of something that stands elsewhere in the recipe.
   *
   * @param list where it stands
   */
  record Mention(NameList list) implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.mention(this);
    }
  }

  /**
   * A name given here, unique in its list.
   *
   * @param list the list it joins
   */
  record NewName(NameList list) implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.newName(this);
    }
  }

  /**
   * A list.
   *
   * @param item kind of its members
   * @param noun what one member is called
   * @param least fewest members
   * @param most most members
   */
  record Items(Kind item, String noun, int least, int most) implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.items(this);
    }
  }

  /**
   * A list of positions, as {@code [[x, y], …]} or in the short form {@code "x,y x,y"}.
   *
   * @param row shape of one position, a row of two numbers
   * @param least fewest positions
   * @param most most positions
   */
  record Positions(Supplier<Shape<?>> row, int least, int most) implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.positions(this);
    }
  }

  /**
   * Named members, in the order of the file.
   *
   * @param list the list of names that its keys make up
   * @param shape of one member
   * @param check lists what is wrong between members, given those without faults of their own;
   *     paths of its faults begin with a member's name
   */
  record Table(
      NameList list, Supplier<Shape<?>> shape, Function<Map<String, Object>, List<Fault>> check)
      implements Kind {
    /** Members that have nothing to do with each other. */
    public Table(NameList list, Supplier<Shape<?>> shape) {
      this(list, shape, members -> List.of());
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.table(this);
    }
  }

  /**
   * Changes of records that stand elsewhere: names, each with keys of its record and their new
   * values, which are kept as text, numbers, truth values, lists and maps.
   *
   * @param list where the names stand
   * @param shape of the records
   * @param fixed keys that cannot be changed, each with what to do instead, a clause
   */
  record Changes(NameList list, Supplier<Shape<?>> shape, Map<String, String> fixed)
      implements Kind {
    /** Copies the map. */
    public Changes {
      fixed = Map.copyOf(fixed);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.changes(this);
    }
  }

  /**
   * A record of its own.
   *
   * @param shape of the record
   */
  record Nested(Supplier<Shape<?>> shape) implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.nested(this);
    }
  }

  /**
   * A mapping with one key that says which of several records its value is: {@code {exposure: 1}}.
   *
   * @param alternatives the records
   */
  record Tagged(Alternatives<?> alternatives) implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.tagged(this);
    }
  }

  /**
   * One of several records whose keys stand among those of the record around it: the verb of a
   * step. The key of its principal field says which it is.
   *
   * @param alternatives the records
   */
  record Inlined(Alternatives<?> alternatives) implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.inlined(this);
    }
  }

  /**
   * A name, or in its place the thing itself written out.
   *
   * @param list where the name stands
   * @param shape of the thing written out
   * @param forms the sealed interface's two records: one holds a name, the other the thing
   */
  record NamedOr(NameList list, Supplier<Shape<?>> shape, NameOrThing forms) implements Kind {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.namedOr(this);
    }
  }

  /** The user's own keys, which begin with {@code x-}. */
  record Extensions() implements Kind {
    /** How such a key begins. */
    public static final String PREFIX = "x-";

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.extensions(this);
    }
  }

  /**
   * Not written in the recipe: follows from other values.
   *
   * @param needs components that it follows from
   * @param value the value
   */
  record Derived(List<String> needs, Function<Values, Object> value) implements Kind {
    /** Copies the list. */
    public Derived {
      needs = List.copyOf(needs);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.derived(this);
    }
  }

  /** Makes and takes apart the two forms of a {@link NamedOr} value. */
  interface NameOrThing {
    /** The form that holds a name. */
    Object named(String name);

    /** The form that holds the thing. */
    Object written(Object thing);

    /** The name, or null when {@code form} holds the thing. */
    @Nullable String name(Object form);

    /** The thing, when {@code form} holds it. */
    Record thing(Object form);
  }

  /** One answer for each kind. */
  interface Visitor<R> {
    R decimal(Decimal kind);

    R whole(Whole kind);

    R flag(Flag kind);

    R text(Text kind);

    R file(File kind);

    R word(Word kind);

    R mention(Mention kind);

    R newName(NewName kind);

    R items(Items kind);

    R positions(Positions kind);

    R table(Table kind);

    R changes(Changes kind);

    R nested(Nested kind);

    R tagged(Tagged kind);

    R inlined(Inlined kind);

    R namedOr(NamedOr kind);

    R extensions(Extensions kind);

    R derived(Derived kind);
  }
}
