package org.duskply.engine.deliver;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.Deflater;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.jspecify.annotations.Nullable;

/**
 * What stands before the pixels of a PNG (third edition, section 11): signature, IHDR, cICP where
 * the space has numbers there, iCCP, pHYs, what made the file as tEXt, its captions as XMP in iTXt,
 * and eXIf. A PNG has no place for IIM. There is no sRGB chunk, which must not stand beside iCCP,
 * and no gAMA or cHRM, which could only say the same with fewer digits.
 */
final class PngHead {
  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
  private static final double METRES_PER_INCH = 0.0254;

  private PngHead() {}

  static byte[] of(SinkSpec spec, byte[] profile) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(SIGNATURE);
    out.writeBytes(PngChunk.of("IHDR", header(spec)));
    byte[] numbers = codePoints(spec.profile());
    if (numbers != null) {
      out.writeBytes(PngChunk.of("cICP", numbers));
    }
    out.writeBytes(PngChunk.of("iCCP", profile(spec.profile(), profile)));
    out.writeBytes(PngChunk.of("pHYs", resolution(spec.dotsPerInch())));
    out.writeBytes(PngChunk.of("tEXt", latin("Software\0" + spec.captions().software())));
    if (!spec.captions().texts().isEmpty()) {
      out.writeBytes(PngChunk.of("iTXt", xmp(spec.captions())));
    }
    out.writeBytes(PngChunk.of("eXIf", ExifBlock.of(spec)));
    return out.toByteArray();
  }

  private static byte[] header(SinkSpec spec) {
    return ByteBuffer.allocate(13)
        .putInt(spec.width())
        .putInt(spec.height())
        .put((byte) spec.depth())
        .put((byte) 2) // truecolour
        .array(); // deflate, the five filters, not interlaced: zeros
  }

  /**
   * Primaries, transfer, matrix, full range by the numbers of ITU-T H.273: 1 and 12 are the
   * primaries of BT.709 and P3 with D65, 13 the sRGB curve, matrix 0 is RGB. The camera curve of
   * BT.2020 has a number too, 14, but viewers answer it with a display's curve, so that space is
   * left to its profile.
   */
  private static byte @Nullable [] codePoints(NamedSpace space) {
    return switch (space) {
      case SRGB -> new byte[] {1, 13, 0, 1};
      case DISPLAY_P3 -> new byte[] {12, 13, 0, 1};
      case A98_RGB, PROPHOTO_RGB, REC2020 -> null;
    };
  }

  /** Name, end of the name, method 0 and the profile deflated. */
  private static byte[] profile(NamedSpace space, byte[] profile) {
    Growing out = new Growing(profile.length + 64);
    byte[] name = latin(space.key() + "\0\0");
    out.add(name, 0, name.length);
    try (StripPacker packer = StripPacker.of(Compress.DEFLATE, Deflater.BEST_COMPRESSION)) {
      packer.pack(profile, profile.length, out);
    }
    return out.toBytes();
  }

  /** Keyword, not compressed, no language, no translated keyword, and the packet: ISO 16684-3. */
  private static byte[] xmp(Captions captions) {
    byte[] head = latin("XML:com.adobe.xmp\0\0\0\0\0");
    byte[] packet = XmpPacket.of(captions);
    return ByteBuffer.allocate(head.length + packet.length).put(head).put(packet).array();
  }

  /** Bytes that it takes, with room for what making it takes. */
  static long bytes(SinkSpec spec, byte[] profile) {
    return 4L * (ExifBlock.of(spec).length + XmpPacket.of(spec.captions()).length + profile.length)
        + Deflate.NATIVE_BYTES
        + 4096;
  }

  /** Dots a metre, rounded: 300 an inch are 11811. */
  private static byte[] resolution(int dotsPerInch) {
    int dots = (int) Math.round(dotsPerInch / METRES_PER_INCH);
    return ByteBuffer.allocate(9).putInt(dots).putInt(dots).put((byte) 1).array();
  }

  private static byte[] latin(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }
}
