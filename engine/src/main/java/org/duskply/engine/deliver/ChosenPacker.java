package org.duskply.engine.deliver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.zip.Deflater;
import org.jspecify.annotations.Nullable;

/**
 * Deflates strips in the quickest of some ways that makes them about as small as any: a piece of
 * the first strip is packed in each, and the quickest whose result is within 1 % of the smallest
 * packs all that come. The choice depends on the bytes of that strip alone.
 *
 * <p>Which way suits is a matter of the picture. Samples of 16 bits with a camera's noise are
 * smallest, by 2 to 3 % against zlib's defaults, where no match is looked for: the short ones that
 * are found cost more than the bytes they stand for. Smooth pictures repeat themselves. For one
 * thread.
 */
final class ChosenPacker implements StripPacker {
  /** Most bytes of the piece: half a window. */
  static final int PIECE = 1 << 14;

  /** Bytes that it holds, on the heap and off it. */
  static final long BYTES = Deflate.NATIVE_BYTES + LiteralPacker.BYTES + 4 * PIECE;

  private static final double ABOUT = 1.01;

  /** The quickest first. */
  private static final List<Supplier<StripPacker>> WAYS =
      List.of(
          LiteralPacker::new,
          () -> new Deflated(1, Deflater.FILTERED),
          () -> new Deflated(4, Deflater.FILTERED),
          () -> new Deflated(6, Deflater.DEFAULT_STRATEGY));

  private @Nullable StripPacker chosen;

  @Override
  public void pack(byte[] raw, int count, Growing out) {
    StripPacker packer = chosen;
    if (packer == null) {
      int from = Math.max(0, (count - PIECE) / 2);
      packer = best(Arrays.copyOfRange(raw, from, Math.min(count, from + PIECE)));
      chosen = packer;
    }
    packer.pack(raw, count, out);
  }

  private static StripPacker best(byte[] piece) {
    List<Integer> sizes = new ArrayList<>();
    for (Supplier<StripPacker> way : WAYS) {
      try (StripPacker packer = way.get()) {
        Growing out = new Growing(Deflate.room(piece.length));
        packer.pack(piece, piece.length, out);
        sizes.add(out.count());
      }
    }
    double most = ABOUT * sizes.stream().mapToInt(Integer::intValue).min().orElse(0);
    int first = 0;
    while (sizes.get(first) > most) {
      first++;
    }
    return WAYS.get(first).get();
  }

  @Override
  public void close() {
    StripPacker packer = chosen;
    if (packer != null) {
      packer.close();
    }
  }
}
