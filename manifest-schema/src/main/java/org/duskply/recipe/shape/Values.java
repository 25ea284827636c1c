package org.duskply.recipe.shape;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The values of a record under construction, by the names of its components. */
public final class Values {
  private final Map<String, @Nullable Object> byComponent = new HashMap<>();
  private final Set<String> filled = new HashSet<>();

  /** None yet. */
  public Values() {}

  /** Sets the value of a component; null for an optional one that is absent. */
  public void put(String component, @Nullable Object value) {
    byComponent.put(component, value);
  }

  /** Sets a value that the recipe does not write. */
  public void fill(String component, @Nullable Object value) {
    byComponent.put(component, value);
    filled.add(component);
  }

  /** Whether the recipe itself gives the component's value. */
  public boolean written(String component) {
    return has(component) && !filled.contains(component);
  }

  /** Whether the component has been read, be it as absent; false when it was read with a fault. */
  public boolean has(String component) {
    return byComponent.containsKey(component);
  }

  /** The value of a component, null when it is absent. */
  public @Nullable Object get(String component) {
    return byComponent.get(component);
  }

  /** The value of a component that is known to be there. */
  public <V> V get(String component, Class<V> type) {
    return type.cast(Objects.requireNonNull(byComponent.get(component), component));
  }
}
