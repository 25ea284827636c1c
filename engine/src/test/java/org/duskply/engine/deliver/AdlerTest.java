package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.zip.Adler32;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class AdlerTest {
  private static int sum(byte[]... pieces) {
    Adler32 adler = new Adler32();
    for (byte[] piece : pieces) {
      adler.update(piece);
    }
    return (int) adler.getValue();
  }

  @Property
  void sumsOfPiecesMakeTheSumOfAll(@ForAll byte[] a, @ForAll byte[] b) {
    assertThat(Adler.combine(sum(a), sum(b), b.length)).isEqualTo(sum(a, b));
    assertThat(Adler.combine(Adler.EMPTY, sum(b), b.length)).isEqualTo(sum(b));
  }

  /** Long enough for every modulus to turn over many times. */
  @Test
  void longPieces() {
    byte[] a = new byte[70_000];
    byte[] b = new byte[1_000_003];
    Arrays.fill(a, (byte) 0xFF);
    Arrays.fill(b, (byte) 0xFE);
    assertThat(Adler.combine(sum(a), sum(b), b.length)).isEqualTo(sum(a, b));
    assertThat(Adler.combine(sum(b), sum(a), a.length)).isEqualTo(sum(b, a));
  }
}
