package org.duskply.engine.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One element of a drawing, with those of its attributes that say where its outline lies. Built
 * once by {@link SvgReader}, then left alone.
 */
final class SvgElement {
  private final String name;
  private final Map<String, String> attributes;
  private final Map<String, String> styles;
  private final @Nullable SvgElement parent;
  private final List<SvgElement> children = new ArrayList<>();

  SvgElement(String name, Map<String, String> attributes, @Nullable SvgElement parent) {
    this.name = name;
    this.attributes = attributes;
    this.styles = SvgStyle.values(attributes.getOrDefault("style", ""));
    this.parent = parent;
    if (parent != null) {
      parent.children.add(this);
    }
  }

  /** Characters of all its attributes. */
  int length() {
    int length = 0;
    for (String value : attributes.values()) {
      length += value.length();
    }
    return length;
  }

  /** Its name without prefix. */
  String name() {
    return name;
  }

  boolean is(String... names) {
    for (String one : names) {
      if (name.equals(one)) {
        return true;
      }
    }
    return false;
  }

  @Nullable SvgElement parent() {
    return parent;
  }

  List<SvgElement> children() {
    return children;
  }

  /** Its id; empty without one. */
  String id() {
    return attributes.getOrDefault("id", "");
  }

  /** An attribute's value, absent where it is not given. */
  @Nullable String attribute(String attribute) {
    return attributes.get(attribute);
  }

  /**
   * A property as the element itself sets it, in its {@code style} or else by its attribute; absent
   * where it does not.
   */
  @Nullable String property(String property) {
    String styled = styles.get(property);
    String value = styled != null ? styled : attributes.get(property);
    return value == null || value.strip().equals("inherit") ? null : value.strip();
  }

  /** A property as its {@code style} sets it, absent where that does not. */
  @Nullable String styled(String property) {
    return styles.get(property);
  }

  /** What it is called in sentences. */
  String shown() {
    return id().isEmpty() ? "a `" + name + "` without id" : "`" + SvgWords.quoted(id()) + "`";
  }
}
