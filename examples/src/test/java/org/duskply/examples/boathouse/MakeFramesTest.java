package org.duskply.examples.boathouse;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.Raster;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.IccReader;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class MakeFramesTest {
  @TempDir Path folder = Path.of("");

  private final StringWriter said = new StringWriter();

  private int make(String size) {
    return new CommandLine(new MakeFrames())
        .setOut(new PrintWriter(said))
        .setErr(new PrintWriter(said))
        .execute("--size", size, "--out", folder.toString(), "--threads", "2");
  }

  @Test
  void writesTheEveningOnceAndLeavesItAlone() throws IOException {
    assertThat(make("60x70")).isZero();
    Path dusk = folder.resolve("bh-0003.tif");
    byte[] first = Files.readAllBytes(dusk);
    for (Shot shot : Evening.shots()) {
      assertThat(folder.resolve(shot.file())).isNotEmptyFile();
    }
    Files.write(dusk, new byte[] {1});
    assertThat(make("60x70")).isZero();
    assertThat(said.toString()).contains("holds these frames already; nothing to do");
    assertThat(Files.size(dusk)).as("not written again").isEqualTo(1);
    Files.delete(dusk);
    assertThat(make("60x70")).isZero();
    assertThat(Files.readAllBytes(dusk)).as("written anew, same bytes").isEqualTo(first);
  }

  @Test
  void refusesSizesThatMakeNoSense() {
    assertThat(make("60")).isEqualTo(2);
    assertThat(said.toString()).contains("--size is 60; it should be WIDTHxHEIGHT");
    assertThat(make("0x40")).isEqualTo(2);
    assertThat(make("99999x40")).isEqualTo(2);
  }

  /** Read back by TwelveMonkeys' TIFF reader (an implementation of its own), sample for sample. */
  @Test
  void samplesAreThoseOfTheCamera() throws IOException {
    make("60x70");
    Buffers buffers = BoathouseScene.empty().render(60, 70, 2);
    Shot shot = Evening.shots().get(2);
    char[] codes = ShotFrame.expose(shot, buffers, null).codes();
    Raster raster = raster(folder.resolve(shot.file()));
    assertThat(raster.getNumBands()).isEqualTo(3);
    for (int i = 0; i < codes.length; i++) {
      int pixel = i / 3;
      assertThat(raster.getSample(pixel % 60, pixel / 60, i % 3)).isEqualTo(codes[i]);
    }
  }

  private static Raster raster(Path file) throws IOException {
    try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
      ImageReader reader = ImageIO.getImageReaders(in).next();
      reader.setInput(in);
      try {
        return reader.readRaster(0, null);
      } catch (UnsupportedOperationException e) {
        return reader.read(0).getRaster();
      } finally {
        reader.dispose();
      }
    }
  }

  @Test
  void recordAndProfileAreReadByTheEngine() {
    make("60x70");
    Shot pop = Evening.shots().get(8);
    FrameSource source = FrameSources.open(folder.resolve(pop.file()));
    FrameInfo info = source.info();
    assertThat(info.width()).isEqualTo(60);
    assertThat(info.height()).isEqualTo(70);
    for (Shot shot : Evening.shots()) {
      FrameInfo taken = FrameSources.open(folder.resolve(shot.file())).info();
      assertThat(taken.exif().exposureSeconds()).as(shot.name()).isEqualTo(shot.seconds());
    }
    assertThat(info.exif().fNumber()).isEqualTo(pop.aperture());
    assertThat(info.exif().iso()).isEqualTo(pop.iso());
    assertThat(info.exif().taken()).isEqualTo(Evening.time(pop));
    byte[] profile = info.profile();
    assertThat(profile).isNotNull();
    ColourSpace space = IccReader.read(profile == null ? new byte[0] : profile);
    assertThat(space.named()).isEqualTo(Sensor.PROFILE);
  }
}
