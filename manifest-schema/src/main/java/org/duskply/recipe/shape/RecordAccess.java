package org.duskply.recipe.shape;

import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Takes records of a class apart and puts them together, by the components that the language itself
 * lists; looked up once.
 *
 * @param <T> the record
 */
final class RecordAccess<T extends Record> {
  private final Class<T> type;
  private final Map<String, Method> accessors = new LinkedHashMap<>();
  private final Constructor<T> constructor;

  RecordAccess(Class<T> type) {
    this.type = type;
    RecordComponent[] components = type.getRecordComponents();
    Class<?>[] types = new Class<?>[components.length];
    for (int i = 0; i < components.length; i++) {
      types[i] = components[i].getType();
      accessors.put(components[i].getName(), components[i].getAccessor());
    }
    try {
      constructor = type.getConstructor(types);
    } catch (NoSuchMethodException e) {
      throw new IllegalStateException(type.getSimpleName() + " must be public", e);
    }
  }

  @Nullable Object get(T record, String component) {
    Method accessor = accessors.get(component);
    if (accessor == null) {
      throw new IllegalArgumentException(type.getSimpleName() + " has no " + component);
    }
    try {
      return accessor.invoke(record);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(component + " cannot be read", e);
    }
  }

  T build(@Nullable Object[] values) {
    try {
      return constructor.newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(type.getSimpleName() + " cannot be built", e);
    }
  }
}
