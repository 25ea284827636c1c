package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.imageio.IIOException;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.testing.Close;
import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Pictures from many sources: none hangs, none throws anything but a sentence, pairs that show the
 * same picture agree, and other readers agree with ours.
 */
class CorpusTest {
  /** A frame decoded whole, as linear values of its own space. */
  private record Decoded(FrameInfo info, float[][] planes) {
    float at(int plane, int x, int y) {
      return planes[plane][y * info.width() + x];
    }

    double mean() {
      double sum = 0;
      for (int p = 0; p < 3; p++) {
        for (float v : planes[p]) {
          sum += v;
        }
      }
      return sum / (3.0 * planes[0].length);
    }
  }

  private static Decoded decode(Path file, ColourSpace working) {
    FrameSource source = FrameSources.open(file);
    FrameInfo info = source.info();
    FrameColour colour = FrameColour.of(file.getFileName().toString(), info, null);
    Lineariser l = Lineariser.prepare(info, colour.space(), working, 0);
    float[][] planes = new float[4][info.width() * info.height()];
    try (FrameReader reader = source.reader()) {
      for (int u = 0; u < source.units(); u++) {
        Samples s = reader.read(u);
        for (int y = s.area().top(); y < s.area().bottom(); y++) {
          l.row(
              s, y, 0, info.width(), planes[0], planes[1], planes[2], planes[3], y * info.width());
        }
      }
    }
    return new Decoded(info, planes);
  }

  private static Decoded decode(String file) {
    return decode(Corpus.file(file), ColourSpace.of(NamedSpace.SRGB));
  }

  /** The bracket was made from the float truth: min(1, truth·2^ev), sRGB-encoded to 16 bits. */
  @ParameterizedTest
  @ValueSource(ints = {0, -2, -5})
  void theBracketIsTheTruthExposed(int ev) {
    Decoded truth = decode("scenes/derived_bracket/apartment_truth_linear_f32.tif");
    Decoded shot = decode("scenes/derived_bracket/apartment_ev" + ev + ".tif");
    double factor = Math.pow(2, ev);
    for (int p = 0; p < 3; p++) {
      for (int i = 0; i < shot.planes()[p].length; i++) {
        double wanted = Math.min(1, truth.planes()[p][i] * factor);
        double got = shot.planes()[p][i];
        // Its writer cut codes off instead of rounding them: one code, where the curve is
        // steepest, at white, is 2.4/1.055 codes of light (IEC 61966-2-1).
        if (Math.abs(got - wanted) > 2.4 / 1.055 / 65535) {
          Close.check(p + ":" + i, got, wanted, 2.4 / 1.055 / 65535);
        }
      }
    }
    assertThat(truth.at(0, 100, 50)).isCloseTo(0.508185f, within(1e-6f));
  }

  /** libtiff's own pictures: the same flower at every depth, chunky and in planes. */
  @Test
  void everyDepthHasTheSameMean() {
    double rgb = decode("tiff/depth/flower-rgb-contig-16.tif").mean();
    for (String depth : new String[] {"08", "10", "12", "14", "24", "32"}) {
      Decoded contig = decode("tiff/depth/flower-rgb-contig-" + depth + ".tif");
      Decoded planar = decode("tiff/depth/flower-rgb-planar-" + depth + ".tif");
      assertThat(contig.mean()).as(depth).isBetween(rgb * 0.985, rgb * 1.015);
      assertThat(planar.planes()).isDeepEqualTo(contig.planes());
    }
    double grey = decode("tiff/depth/flower-minisblack-16.tif").mean();
    for (String depth : new String[] {"08", "10", "12", "14", "24", "32"}) {
      assertThat(decode("tiff/depth/flower-minisblack-" + depth + ".tif").mean())
          .as(depth)
          .isBetween(grey * 0.985, grey * 1.015);
    }
  }

  @Test
  void theSamePictureInManyFilesIsTheSame() {
    float[][] plain = decode("tiff/shapes/shapes_uncompressed.tif").planes();
    for (String kind :
        new String[] {
          "deflate", "lzw", "lzw_planar", "lzw_tiled", "lzw_tiled_planar", "multi_size"
        }) {
      assertThat(decode("tiff/shapes/shapes_" + kind + ".tif").planes())
          .as(kind)
          .isDeepEqualTo(plain);
    }
    float[][] classic = decode("tiff/bigtiff/Classic.tif").planes();
    for (Path file : Corpus.below("tiff/bigtiff")) {
      assertThat(decode(file, ColourSpace.of(NamedSpace.SRGB)).planes()).isDeepEqualTo(classic);
    }
    assertThat(decode("tiff/rs/random-fp16-pred2.tiff").planes())
        .isDeepEqualTo(decode("tiff/rs/random-fp16.tiff").planes());
    assertThat(decode("tiff/oiio/quad-tile.tif").planes())
        .isDeepEqualTo(decode("tiff/oddities/quad-lzw.tif").planes());
  }

  @Test
  void oneKnownValue() {
    Decoded one = decode("tiff/pil/uint16_1_4660.tif");
    ColourSpace srgb = ColourSpace.of(NamedSpace.SRGB);
    assertThat(one.at(0, 3, 3)).isEqualTo((float) srgb.curve(0).toLinear(4660 / 65535.0));
  }

  /** libvips 8.14 gives the fax page a mean of 251.595 of 255: paper is white. */
  @Test
  void aFaxIsBlackOnWhite() {
    assertThat(decode("tiff/oddities/packbits-fillorder-2.tif").mean())
        .isCloseTo(251.595155 / 255, within(1e-6));
  }

  /** Each JPEG of the set shows the same picture once it is upright, at one of two sizes. */
  @Test
  void theEightOrientationsAgree() {
    double[] first = ninths(decode("exif/rotation/1.jpg"));
    for (int o = 2; o <= 8; o++) {
      Decoded other = decode("exif/rotation/" + o + ".jpg");
      assertThat(other.info().height()).isGreaterThan(other.info().width());
      // They are coded apart and scaled apart; a picture that lies wrong differs by 0.1 and more.
      assertThat(ninths(other)).as("orientation " + o).containsExactly(first, within(0.02));
    }
  }

  /** The mean of red in each of nine fields. */
  private static double[] ninths(Decoded decoded) {
    double[] sums = new double[9];
    int w = decoded.info().width() / 3;
    int h = decoded.info().height() / 3;
    for (int y = 0; y < 3 * h; y++) {
      for (int x = 0; x < 3 * w; x++) {
        sums[y / h * 3 + x / w] += decoded.at(0, x, y) / ((double) w * h);
      }
    }
    return sums;
  }

  /** libpng's own 16-bit pictures: (16, 16) is 4401, linear or encoded as the chunk says. */
  @Test
  void pngGammaIsFollowed() {
    Decoded linear = decode("png/libpng/rgb-16-linear.png");
    Close.check("linear", linear.at(0, 16, 16), 4401 / 65535.0, 1e-4);
    Decoded encoded = decode("png/libpng/rgb-16-sRGB.png");
    ColourSpace srgb = ColourSpace.of(NamedSpace.SRGB);
    Close.check("sRGB", encoded.at(0, 16, 16), srgb.curve(0).toLinear(4401 / 65535.0), 1e-6);
  }

  /** The suite's g-series encodes one picture with different gammas. */
  @Test
  void theSameLightWithDifferentGammas() {
    for (String gamma : new String[] {"03", "04", "05", "07", "10", "25"}) {
      Decoded decoded = decode("png/suite/g" + gamma + "n2c08.png");
      // One 8-bit code at a gamma of 2.86 (g03) about 0.5 is 0.5·2.86/200 = 0.0072.
      assertThat(decoded.at(1, 20, 20)).as(gamma).isCloseTo(0.5f, within(0.0072f));
    }
  }

  /** One picture exported in four spaces is the same light, as the median pixel shows. */
  @Test
  void theSamePictureInWideSpaces() {
    float[][] srgb = decode("color/pizza-rgb8-srgb.jpg").planes();
    for (String space : new String[] {"adobergb", "displayp3", "prophotorgb"}) {
      float[][] other = decode("color/pizza-rgb8-" + space + ".jpg").planes();
      for (int p = 0; p < 3; p++) {
        double[] apart = new double[srgb[p].length];
        for (int i = 0; i < apart.length; i++) {
          apart[i] = Math.abs(srgb[p][i] - other[p][i]);
        }
        Arrays.sort(apart);
        assertThat(apart[apart.length / 2]).as(space).isLessThan(0.01);
      }
    }
  }

  /**
   * Two profiles of look-up tables, as libvips 8.14 with LittleCMS converts them to 16-bit sRGB at
   * the intent they have; within the 1.3e-3 of light that its tables are coarser (see
   * LookUpTablesTest).
   */
  @Test
  void lookUpTablesAreFollowed() {
    lookedUp("color/sample-xyb.jpg", 100, 100, 18586, 19446, 29997);
    lookedUp("misc/pil/icc_profile_big.jpg", 30, 30, 0, 12646, 29117);
    lookedUp("misc/sharp/fogra-0-100-100-0.tif", 500, 500, 228 * 257, 31 * 257, 37 * 257);
  }

  private static void lookedUp(String file, int x, int y, int... codes) {
    Decoded decoded = decode(file);
    for (int c = 0; c < 3; c++) {
      double wanted = ColourSpace.of(NamedSpace.SRGB).curve(0).toLinear(codes[c] / 65535.0);
      double got = Math.max(0, decoded.at(c, x, y));
      // The press's red is given in 8 bits: half a code more, at the curve's slope there.
      double bound = file.contains("fogra") ? 5e-3 : 1.3e-3;
      assertThat(got).as("%s %d", file, c).isCloseTo(wanted, within(bound));
    }
  }

  @Test
  void truncatedJpegsNameTheFirstBadRow() {
    Corpus.file("jpeg/broken/truncated.jpg"); // skips where there is no corpus
    assertThatThrownBy(() -> decode("jpeg/broken/truncated.jpg"))
        .hasMessage(
            "truncated.jpg is cut short or damaged: its rows from 174 down are not all there.");
  }

  @Test
  void aRingOfDirectoriesIsNoTrap() {
    Decoded ring = decode("tiff/pil/multipage_multiple_frame_loop.tiff");
    assertThat(ring.info().notices())
        .containsExactly("The file holds more than one picture; the first is used.");
  }

  /** The general-purpose reader, on the files that our own takes. */
  @Test
  void anotherReaderReadsTheSameSamples() throws IOException {
    int compared = 0;
    for (Path file : Corpus.below("tiff")) {
      FrameSource source = tryOpen(file);
      if (source instanceof TiffSource own && comparable(own.picture())) {
        compared += compare(file, own) ? 1 : 0;
      }
    }
    assertThat(compared).isGreaterThan(120);
  }

  private static @Nullable FrameSource tryOpen(Path file) {
    try {
      return FrameSources.open(file);
    } catch (FrameException e) {
      return null;
    }
  }

  /** What means the same in both: no palette, no Lab, no rounding to 16 bits. */
  private static boolean comparable(TiffPicture p) {
    boolean colours =
        p.photometric() == TiffPicture.MIN_IS_BLACK
            || p.photometric() == TiffPicture.RGB
            || p.photometric() == TiffPicture.SEPARATED;
    return colours && (p.format() == TiffPicture.FLOATS ? p.bits() != 24 : p.bits() <= 16);
  }

  /** Whether the other reader takes the file at all. */
  static boolean compare(Path file, TiffSource own) throws IOException {
    ImageReader reader = ImageReaders.tiff();
    try (FileImageInputStream in = new FileImageInputStream(file.toFile())) {
      reader.setInput(in, true, true);
      Raster raster;
      try {
        raster = reader.readRaster(0, null);
      } catch (IIOException e) {
        return false;
      }
      List<String> wrong = new ArrayList<>();
      own.readAll(
          FrameFile.open(file, new ReadCounters(), false),
          Region.EVERYWHERE,
          s -> {
            for (int y = s.area().top(); y < s.area().bottom(); y++) {
              for (int x = 0; x < s.area().right(); x++) {
                for (int c = 0; c < own.picture().colours(); c++) {
                  double other = (float) raster.getSampleDouble(x, y, c);
                  if (Double.compare(SamplesText.value(s, x, y, c), other) != 0) {
                    wrong.add(x + "," + y + "," + c);
                  }
                }
              }
            }
          },
          new ArrayList<>());
      assertThat(wrong).as(file.toString()).isEmpty();
      return true;
    } finally {
      reader.dispose();
    }
  }

  /** metadata-extractor is the other opinion on exposure, aperture and sensitivity. */
  @Test
  void theCameraRecordIsWhatAnotherReaderFinds() throws Exception {
    int compared = 0;
    for (String folder :
        new String[] {"jpeg/broken", "jpeg/odd", "scenes/sky", "scenes/figurine"}) {
      for (Path file : Corpus.below(folder)) {
        ExifSubIFDDirectory other = other(file);
        FrameSource source = tryOpen(file);
        if (other == null || source == null) {
          continue;
        }
        Exif exif = source.info().exif();
        Double time = other.getDoubleObject(ExifSubIFDDirectory.TAG_EXPOSURE_TIME);
        if (time != null && time > 0) {
          assertThat(exif.exposureSeconds()).as(file.toString()).isEqualTo(time);
          compared++;
        }
        Double aperture = other.getDoubleObject(ExifSubIFDDirectory.TAG_FNUMBER);
        if (aperture != null && aperture > 0) {
          assertThat(exif.fNumber()).as(file.toString()).isEqualTo(aperture);
        }
      }
    }
    assertThat(compared).isGreaterThan(4);
  }

  private static @Nullable ExifSubIFDDirectory other(Path file) {
    try {
      Metadata metadata = ImageMetadataReader.readMetadata(file.toFile());
      return metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
    } catch (Exception e) {
      return null;
    }
  }
}
