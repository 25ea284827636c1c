package org.duskply.engine.render;

import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Key;
import org.jspecify.annotations.Nullable;

/**
 * Finished work by its content keys, for jobs to come. May forget at any time what no job holds;
 * never changes a bit. Thread-safe.
 */
public interface Store {
  /** Keeps nothing. */
  Store NONE = () -> Use.NONE;

  /** Begins the use of the store by a job, or by whoever else makes pictures. */
  Use begin();

  /** What one job takes from a store and gives to it. Thread-safe. */
  interface Use {
    /** Of a store that keeps nothing. */
    Use NONE =
        new Use() {
          @Override
          public void claim(Key key) {}

          @Override
          public @Nullable Kept find(Key key, Region part) {
            return null;
          }

          @Override
          public void offer(Key key, Kept kept) {}

          @Override
          public void release() {}
        };

    /**
     * Says that the job's pictures are made of this, whether or not it will be looked up: what
     * stands below a finished band is worth keeping for the next edit.
     */
    void claim(Key key);

    /**
     * What is kept under a key if it has all of {@code part}. It is counted in the store, and stays
     * there until it is released.
     */
    @Nullable Kept find(Key key, Region part);

    /** Offers what was made. */
    void offer(Key key, Kept kept);

    /** Lets go of all that was found so far; to be called when the job has ended. */
    void release();
  }
}
