package org.duskply.benchmarks.kernels;

import java.io.IOException;
import java.nio.file.Path;
import org.duskply.engine.pixel.Planes;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.TearDown;

/**
 * A picture in linear light to a whole file, band by band, by one thread; the file is written but
 * not forced to the disk. Samples of 8 bits are dithered, but for JPEG.
 */
@OperationsPerInvocation(CodedPicture.PIXELS)
public class Encoding extends Megapixels {
  @Param({
    "TIFF16",
    "TIFF16_DEFLATE",
    "TIFF16_LZW",
    "TIFF8",
    "TIFF8_DEFLATE",
    "TIFF8_LZW",
    "PNG16",
    "PNG8",
    "JPEG"
  })
  public FileKind kind = FileKind.TIFF16;

  private final Path folder = CodedPicture.folder();
  private CodedPicture picture = new CodedPicture(16);
  private Planes[] bands = new Planes[0];

  @Setup
  public void prepare() throws IOException {
    picture = new CodedPicture(kind.depth());
    bands = picture.bands();
    Path file = folder.resolve("checked");
    kind.write(picture, file);
    kind.check(picture, file);
  }

  @Benchmark
  public void encode() {
    CodedPicture.write(picture.spec(folder.resolve("timed"), kind), bands, false);
  }

  @TearDown(Level.Trial)
  public void delete() throws IOException {
    CodedPicture.delete(folder);
  }
}
