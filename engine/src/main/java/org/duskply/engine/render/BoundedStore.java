package org.duskply.engine.render;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.plan.Key;
import org.jspecify.annotations.Nullable;

/** A store that holds as many bytes as it was given and forgets first what was used longest ago. */
public final class BoundedStore implements Store {
  private final long limit;
  private final Map<Key, Planes> kept = new LinkedHashMap<>(64, 0.75f, true);
  private long bytes;

  /** An empty store for at most {@code limit} bytes of samples. */
  public BoundedStore(long limit) {
    this.limit = limit;
  }

  @Override
  public synchronized @Nullable Planes get(Key key) {
    return kept.get(key);
  }

  @Override
  public synchronized void put(Key key, Planes planes) {
    long size = bytes(planes);
    if (size > limit || kept.containsKey(key)) {
      return;
    }
    kept.put(key, planes);
    bytes += size;
    Iterator<Planes> oldest = kept.values().iterator();
    while (bytes > limit) {
      bytes -= bytes(oldest.next());
      oldest.remove();
    }
  }

  /** Bytes of samples held now. */
  public synchronized long bytes() {
    return bytes;
  }

  private static long bytes(Planes planes) {
    return Planes.bytes(planes.area(), planes.count());
  }
}
