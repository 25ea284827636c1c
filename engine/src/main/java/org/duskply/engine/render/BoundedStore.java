package org.duskply.engine.render;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Key;
import org.jspecify.annotations.Nullable;

/**
 * A store of so many bytes. Each job begins a new generation; an entry that the last job or the one
 * before it claimed, found or offered is <em>live</em>, all others are stale. Room for something
 * new is made of stale entries, the least worth and the longest unused first, then of live ones
 * that are worth less than the new; where that is not enough the new is declined. Hence a picture
 * larger than the store keeps the part of it that fits, however often it is passed from end to end,
 * where forgetting the longest unused would keep nothing that is met again.
 *
 * <p>What a running job has found is not forgotten before the job has ended, so that it is counted
 * here all the while and nowhere else.
 */
public final class BoundedStore implements Store {
  /** Bytes of an entry beside what it holds: key, links and its place in the tables, at most. */
  static final long ENTRY_BYTES = 256;

  private final long limit;
  private final Map<Key, Entry> entries = new HashMap<>();

  /** Entries that no job holds, of each worth, the longest unused first. */
  private final Map<Kept.Worth, Map<Key, Entry>> free = new EnumMap<>(Kept.Worth.class);

  private long bytes;
  private long generation;

  /**
   * An empty store.
   *
   * @param limit the most bytes that it holds, its own included
   */
  public BoundedStore(long limit) {
    this.limit = limit;
  }

  /** Bytes held now. */
  public synchronized long bytes() {
    return bytes;
  }

  @Override
  public synchronized Use begin() {
    generation++;
    return new Holding();
  }

  /** Something kept, when it was last used, and how many jobs hold it. */
  private static final class Entry {
    final Key key;
    final Kept kept;
    long generation;
    int holders;

    Entry(Key key, Kept kept) {
      this.key = key;
      this.kept = kept;
    }

    long bytes() {
      return kept.heldBytes() + ENTRY_BYTES;
    }
  }

  private Map<Key, Entry> freeOf(Kept.Worth worth) {
    return free.computeIfAbsent(worth, w -> new LinkedHashMap<>());
  }

  /** The entry has been used now. */
  private void use(Entry entry) {
    entry.generation = generation;
    if (entry.holders == 0) {
      Map<Key, Entry> alike = freeOf(entry.kept.worth());
      alike.remove(entry.key);
      alike.put(entry.key, entry);
    }
  }

  /** Keeps something new, in place of what its key stands for if that has less. */
  private void offer(Entry offered) {
    Entry known = entries.get(offered.key);
    if (known != null) {
      use(known);
      if (known.holders > 0 || known.kept.area().contains(offered.kept.area())) {
        return;
      }
      forget(known);
    }
    if (makeRoom(bytes + offered.bytes() - limit, offered.kept.worth())) {
      keep(offered);
    } else if (known != null) {
      keep(known);
    }
  }

  private void keep(Entry entry) {
    entries.put(entry.key, entry);
    bytes += entry.bytes();
    use(entry);
  }

  /** Forgets so many bytes in favour of something of a worth; or nothing, where that cannot be. */
  private boolean makeRoom(long wanted, Kept.Worth worth) {
    List<Entry> forgotten = new ArrayList<>();
    long left = wanted;
    for (boolean stale : new boolean[] {true, false}) {
      for (Kept.Worth other : Kept.Worth.values()) {
        for (Entry entry : freeOf(other).values()) {
          boolean goes = stale ? isStale(entry) : !isStale(entry) && other.compareTo(worth) < 0;
          if (left <= 0 || (stale && !goes)) {
            break;
          }
          if (goes) {
            forgotten.add(entry);
            left -= entry.bytes();
          }
        }
      }
    }
    if (left > 0) {
      return false;
    }
    forgotten.forEach(this::forget);
    return true;
  }

  private boolean isStale(Entry entry) {
    return entry.generation < generation - 1;
  }

  private void forget(Entry entry) {
    entries.remove(entry.key);
    freeOf(entry.kept.worth()).remove(entry.key);
    bytes -= entry.bytes();
  }

  /** One job's use, and what it holds. */
  private final class Holding implements Use {
    private final List<Entry> held = new ArrayList<>();

    @Override
    public void claim(Key key) {
      synchronized (BoundedStore.this) {
        Entry entry = entries.get(key);
        if (entry != null) {
          use(entry);
        }
      }
    }

    @Override
    public @Nullable Kept find(Key key, Region part) {
      synchronized (BoundedStore.this) {
        Entry entry = entries.get(key);
        if (entry == null || !entry.kept.area().contains(part)) {
          return null;
        }
        use(entry);
        freeOf(entry.kept.worth()).remove(key);
        entry.holders++;
        held.add(entry);
        return entry.kept;
      }
    }

    @Override
    public void offer(Key key, Kept kept) {
      synchronized (BoundedStore.this) {
        BoundedStore.this.offer(new Entry(key, kept));
      }
    }

    @Override
    public void release() {
      synchronized (BoundedStore.this) {
        for (Entry entry : held) {
          entry.holders--;
          use(entry);
        }
        held.clear();
      }
    }
  }
}
