package org.duskply.engine.render;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.plan.Key;
import org.jspecify.annotations.Nullable;

/**
 * Finished planes by their content keys. May forget at any time; never changes a bit. Thread-safe.
 */
public interface Store {
  /** Keeps nothing. */
  Store NONE =
      new Store() {
        @Override
        public @Nullable Planes get(Key key) {
          return null;
        }

        @Override
        public void put(Key key, Planes planes) {}
      };

  /** The planes of a key, or absent. */
  @Nullable Planes get(Key key);

  /** Offers planes that are never written again. */
  void put(Key key, Planes planes);
}
