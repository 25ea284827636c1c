package org.duskply.engine.deliver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.zip.Deflater;
import org.jspecify.annotations.Nullable;

/**
 * Deflates in the quickest of some ways that makes them about as small as any: a part of the first
 * piece is packed in each, and the quickest whose result is within 1 % of the smallest packs all
 * that come. The choice depends on the bytes of that piece alone.
 *
 * <p>Which way suits is a matter of the picture. Samples of 16 bits with a camera's noise are
 * smallest, by 2 to 3 % against zlib's defaults, where no match is looked for: the short ones that
 * are found cost more than the bytes they stand for. Smooth pictures repeat themselves. For one
 * thread.
 */
final class ChosenPacker implements BlockPacker {
  /** Most bytes of the part: half a window. */
  static final int PART = 1 << 14;

  /** Bytes that it holds, on the heap and off it. */
  static final long BYTES = Deflate.NATIVE_BYTES + LiteralPacker.BYTES + 4 * PART;

  private static final double ABOUT = 1.01;

  /** The quickest first. */
  private static final List<Supplier<BlockPacker>> WAYS =
      List.of(
          LiteralPacker::new,
          () -> new ZlibPacker(1, Deflater.FILTERED),
          () -> new ZlibPacker(4, Deflater.FILTERED),
          () -> new ZlibPacker(6, Deflater.DEFAULT_STRATEGY));

  private @Nullable BlockPacker chosen;

  @Override
  public void pack(byte[] raw, int count, boolean last, Growing out) {
    BlockPacker packer = chosen;
    if (packer == null) {
      int from = Math.max(0, (count - PART) / 2);
      packer = best(Arrays.copyOfRange(raw, from, Math.min(count, from + PART)));
      chosen = packer;
    }
    packer.pack(raw, count, last, out);
  }

  private static BlockPacker best(byte[] part) {
    List<Integer> sizes = new ArrayList<>();
    for (Supplier<BlockPacker> way : WAYS) {
      try (BlockPacker packer = way.get()) {
        Growing out = new Growing(Deflate.room(part.length));
        packer.pack(part, part.length, true, out);
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
    BlockPacker packer = chosen;
    if (packer != null) {
      packer.close();
    }
  }
}
