package org.duskply.engine.frame;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import org.duskply.engine.colour.DecodeTable;
import org.duskply.engine.colour.TransferCurve;

/**
 * The tables of all codes that were asked for last, so that the frames of one recipe, which come
 * from one camera, share one. At most {@value #KEPT} are kept, a quarter of a megabyte each. A
 * table depends on its curve alone; whether it was kept changes nothing but time.
 */
final class CodeTables {
  private static final int KEPT = 16;

  private static final Map<Key, float[]> TABLES =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, float[]> eldest) {
          return size() > KEPT;
        }
      };

  private record Key(TransferCurve curve, int codes, int room) {}

  private CodeTables() {}

  /**
   * The linear values of all codes: {@code curve(code / (codes − 1))}, and from there on the last,
   * for every code that the array can be asked for.
   *
   * @param codes how many codes stand for something, 2 to 65,536
   * @param room length of the table: 256 or 65,536
   * @return shared, never to be written to
   */
  static synchronized float[] of(TransferCurve curve, int codes, int room) {
    return TABLES.computeIfAbsent(
        new Key(curve, codes, room), key -> padded(DecodeTable.of(curve, codes), room));
  }

  /** Above full scale is full scale. */
  private static float[] padded(float[] table, int room) {
    float[] padded = Arrays.copyOf(table, room);
    Arrays.fill(padded, Math.min(table.length, room), room, table[table.length - 1]);
    return padded;
  }
}
