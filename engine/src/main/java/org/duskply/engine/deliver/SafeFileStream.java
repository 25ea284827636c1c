package org.duskply.engine.deliver;

import java.io.IOException;
import java.util.Arrays;
import javax.imageio.stream.ImageOutputStreamImpl;

/** A {@link SafeFile} as an encoder of the JDK wants it: written at its end, never read. */
final class SafeFileStream extends ImageOutputStreamImpl {
  private final SafeFile file;

  SafeFileStream(SafeFile file) {
    this.file = file;
  }

  @Override
  public void write(int b) throws IOException {
    write(new byte[] {(byte) b}, 0, 1);
  }

  @Override
  public void write(byte[] b, int off, int len) throws IOException {
    flushBits();
    file.append(Arrays.copyOfRange(b, off, off + len));
    streamPos += len;
  }

  @Override
  public int read() {
    throw new UnsupportedOperationException();
  }

  @Override
  public int read(byte[] b, int off, int len) {
    throw new UnsupportedOperationException();
  }
}
