package org.duskply.engine.deliver;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * A program that is killed while it writes: one file over and over, each time filled with another
 * byte. Says {@code ready} once it is in the middle of the second; with {@code stall} it stays
 * there.
 */
final class KilledWriter {
  static final int SIZE = 1 << 20;
  private static final int PIECES = 16;

  private KilledWriter() {}

  public static void main(String[] args) throws IOException {
    Path target = Path.of(args[0]);
    boolean stall = args[1].equals("stall");
    for (int n = 1; ; n++) {
      byte[] piece = new byte[SIZE / PIECES];
      Arrays.fill(piece, (byte) n);
      try (SafeFile file = SafeFile.open(target)) {
        for (int i = 0; i < PIECES; i++) {
          file.append(piece);
          if (n == 2 && i == PIECES / 2) {
            System.out.println("ready");
            int forEver = stall ? System.in.read() : 0;
            System.out.println(forEver);
          }
        }
        file.commit();
      }
    }
  }
}
