package org.duskply.benchmarks.kernels;

import java.io.IOException;
import java.nio.file.Path;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.infra.Blackhole;

/**
 * A frame's file to its samples, from the top down, by one thread. Deflated and LZW-packed TIFFs
 * hold differences.
 */
@OperationsPerInvocation(CodedPicture.PIXELS)
public class Decoding extends Megapixels {
  @Param public FileKind kind = FileKind.TIFF16;

  private final Path folder = CodedPicture.folder();
  private final Path file = folder.resolve("frame");

  @Setup
  public void prepare() throws IOException {
    CodedPicture picture = new CodedPicture(kind.depth());
    kind.write(picture, file);
    kind.check(picture, file);
  }

  @Benchmark
  public void decode(Blackhole hole) {
    FrameSource source = FrameSources.open(file);
    try (FrameReader reader = source.reader()) {
      for (int unit = 0; unit < source.units(); unit++) {
        hole.consume(reader.read(unit));
      }
    }
  }

  @TearDown(Level.Trial)
  public void delete() throws IOException {
    CodedPicture.delete(folder);
  }
}
