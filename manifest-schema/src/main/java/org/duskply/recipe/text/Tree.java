package org.duskply.recipe.text;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a recipe's text holds before anything is known of its meaning. */
public sealed interface Tree {
  /** Where it begins. */
  Spot spot();

  /** How a scalar was written. */
  enum Form {
    /** Text without doubt: quotes or a block of lines. */
    TEXT,
    /** Bare: text, number, true, false or nothing, by its characters. */
    BARE
  }

  /**
   * One value.
   *
   * @param spot where it begins
   * @param text its characters, without quotes
   * @param form how it was written
   */
  record Scalar(Spot spot, String text, Form form) implements Tree {
    /** Whether it is a value that says nothing. */
    public boolean empty() {
      return form == Form.BARE
          && (text.isEmpty() || text.equals("~") || text.equalsIgnoreCase("null"));
    }

    /** Whether it is the word true or false. */
    public boolean flag() {
      return form == Form.BARE && (text.equals("true") || text.equals("false"));
    }
  }

  /**
   * A list.
   *
   * @param spot where it begins
   * @param members in order
   */
  record Listing(Spot spot, List<Tree> members) implements Tree {}

  /**
   * Keys and values.
   *
   * @param spot where it begins
   * @param entries in order; no key twice
   */
  record Mapping(Spot spot, List<Entry> entries) implements Tree {
    /** The entry with that key; null when there is none. */
    public @Nullable Entry entry(String key) {
      for (Entry entry : entries) {
        if (entry.key().equals(key)) {
          return entry;
        }
      }
      return null;
    }
  }

  /**
   * A key and its value.
   *
   * @param key the key
   * @param spot where the key begins
   * @param value the value
   */
  record Entry(String key, Spot spot, Tree value) {}

  /**
   * A part that has been reported already; whoever meets it says nothing.
   *
   * @param spot where it begins
   */
  record Broken(Spot spot) implements Tree {}
}
