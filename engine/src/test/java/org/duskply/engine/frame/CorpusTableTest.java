package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.IccException;
import org.duskply.engine.colour.IccReader;
import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/**
 * Every file that the corpus's index lists: read and right by another reader's numbers, or refused
 * with a sentence; none wrong. The table goes to {@code target/corpus-table.md}.
 */
class CorpusTableTest {
  /** Two decoders of lossy JPEG and two roundings of a mean: a code of 8 bits. */
  private static final double CLOSE = 1.0 / 255;

  private static final Pattern FOLDER = Pattern.compile("## (\\S+) \\(\\d+ files\\)");

  /** Right, refused and wrong in each folder; a change of these is a change of what is read. */
  private static final String TOTALS =
      """
      color: 9 right, 1 refused, 0 wrong
      color/icc: 51 right, 3 refused, 0 wrong
      exif/orientation: 3 right, 0 refused, 0 wrong
      exif/rotation: 9 right, 0 refused, 0 wrong
      jpeg/broken: 5 right, 16 refused, 0 wrong
      jpeg/lossless: 3 right, 0 refused, 0 wrong
      jpeg/odd: 21 right, 5 refused, 0 wrong
      jpeg/turbo: 4 right, 1 refused, 0 wrong
      misc/pil: 11 right, 2 refused, 0 wrong
      misc/sharp: 14 right, 4 refused, 0 wrong
      misc/skimage: 4 right, 0 refused, 0 wrong
      png/libpng: 49 right, 0 refused, 0 wrong
      png/suite: 161 right, 14 refused, 0 wrong
      scenes/derived_bracket: 4 right, 0 refused, 0 wrong
      scenes/figurine: 6 right, 0 refused, 0 wrong
      scenes/hdri: 0 right, 3 refused, 0 wrong
      scenes/kitchen25: 52 right, 0 refused, 0 wrong
      scenes/kitchen25_half: 25 right, 0 refused, 0 wrong
      scenes/night_buildings: 5 right, 0 refused, 0 wrong
      scenes/sky: 1 right, 0 refused, 0 wrong
      tiff/bigtiff: 9 right, 0 refused, 0 wrong
      tiff/broken: 3 right, 1 refused, 0 wrong
      tiff/depth: 32 right, 4 refused, 0 wrong
      tiff/oddities: 17 right, 5 refused, 0 wrong
      tiff/oiio: 6 right, 5 refused, 0 wrong
      tiff/pil: 19 right, 5 refused, 0 wrong
      tiff/rs: 18 right, 7 refused, 0 wrong
      tiff/seq: 48 right, 7 refused, 0 wrong
      tiff/shapes: 20 right, 1 refused, 0 wrong
      """;

  /** What became of a file. */
  private record Row(String file, String status, String how) {}

  private final Map<String, double[]> means = new HashMap<>();

  @Test
  void everyRowIsRightOrRefused() throws IOException {
    Map<String, String> expected = expected();
    List<Row> rows = new ArrayList<>();
    for (String file : index()) {
      rows.add(row(file, expected.get(file)));
    }
    Map<String, int[]> counts = new TreeMap<>();
    for (Row row : rows) {
      String folder = row.file.substring(0, row.file.lastIndexOf('/'));
      int[] count = counts.computeIfAbsent(folder, f -> new int[3]);
      count[row.status.equals("right") ? 0 : row.status.equals("refused") ? 1 : 2]++;
    }
    StringBuilder totals = new StringBuilder();
    counts.forEach(
        (f, n) ->
            totals.append(f + ": " + n[0] + " right, " + n[1] + " refused, " + n[2] + " wrong\n"));
    write(rows, totals.toString());
    assertThat(rows.stream().filter(r -> r.status.equals("wrong"))).isEmpty();
    assertThat(totals.toString()).isEqualTo(TOTALS);
  }

  private static void write(List<Row> rows, String totals) throws IOException {
    StringBuilder text = new StringBuilder(totals);
    text.append("\n| file | status | how |\n|---|---|---|\n");
    for (Row r : rows) {
      text.append("| " + r.file + " | " + r.status + " | " + r.how.replace('|', '/') + " |\n");
    }
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target", "corpus-table.md"), text);
  }

  private static List<String> index() throws IOException {
    List<String> files = new ArrayList<>();
    String folder = "";
    for (String line : Files.readAllLines(Corpus.file("INDEX.md"))) {
      Matcher heading = FOLDER.matcher(line);
      if (heading.lookingAt()) {
        folder = heading.group(1);
      } else if (!folder.isEmpty() && line.startsWith("| ") && !line.startsWith("| file ")) {
        files.add(folder + "/" + line.substring(2, line.indexOf(" | ")));
      }
    }
    assertThat(files).hasSizeGreaterThan(600);
    return files;
  }

  private static Map<String, String> expected() throws IOException {
    Map<String, String> expected = new HashMap<>();
    try (var in = CorpusTableTest.class.getResourceAsStream("/corpus-expected.txt")) {
      if (in == null) {
        throw new IOException("no expectations");
      }
      for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
        if (!line.startsWith("#")) {
          expected.put(
              line.substring(0, line.indexOf('\t')), line.substring(line.indexOf('\t') + 1));
        }
      }
    }
    return expected;
  }

  private Row row(String file, @Nullable String expected) {
    Path path = Corpus.file(file);
    if (file.endsWith(".icc") || file.endsWith(".icm")) {
      return profile(file, path);
    }
    try {
      double[] mean =
          Assertions.assertTimeoutPreemptively(Duration.ofSeconds(60), () -> mean(file), file);
      if (expected == null) {
        return new Row(file, "wrong", "read, and nothing to hold it against");
      }
      String fault = fault(file, mean, expected);
      return new Row(file, fault == null ? "right" : "wrong", fault == null ? expected : fault);
    } catch (FrameException e) {
      String message = e.getMessage();
      boolean sentence =
          message != null
              && message.startsWith(path.getFileName().toString())
              && message.endsWith(".");
      boolean lost = expected != null;
      return new Row(file, sentence && !lost ? "refused" : "wrong", String.valueOf(message));
    }
  }

  /** Profiles lie there as files of their own; they are checked by the tests of the reader. */
  private static Row profile(String file, Path path) {
    try {
      ColourSpace space = IccReader.read(Files.readAllBytes(path));
      return new Row(file, "right", "profile of " + space.name());
    } catch (IccException e) {
      return new Row(file, "refused", String.valueOf(e.getMessage()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private double[] mean(String file) {
    double[] known = means.get(file);
    if (known == null) {
      known = decode(Corpus.file(file));
      means.put(file, known);
    }
    return known;
  }

  /** Mean of each channel over full scale; no number counts as 0. */
  private static double[] decode(Path path) {
    FrameSource source = FrameSources.open(path);
    FrameInfo info = source.info();
    FrameColour colour = FrameColour.of(path.getFileName().toString(), info, null);
    ColourSpace srgb = ColourSpace.of(NamedSpace.SRGB);
    Lineariser lineariser = Lineariser.prepare(info, colour.space(), srgb, 0);
    float[][] light = new float[4][info.width()];
    double[] sums = new double[info.channels()];
    try (FrameReader reader = source.reader()) {
      for (int u = 0; u < source.units(); u++) {
        Samples s = reader.read(u);
        for (int c = 0; c < sums.length; c++) {
          sums[c] += sum(s, c);
        }
        for (int y = s.area().top(); y < s.area().bottom(); y++) {
          lineariser.row(s, y, 0, info.width(), light[0], light[1], light[2], light[3], 0);
          checkFinite(path, light);
        }
      }
    }
    for (int c = 0; c < sums.length; c++) {
      sums[c] /= (double) info.width() * info.height() * info.fullScale();
    }
    return sums;
  }

  private static void checkFinite(Path path, float[][] light) {
    for (float[] plane : light) {
      for (float v : plane) {
        if (!(Math.abs(v) <= 4 * Lineariser.MOST)) {
          throw new AssertionError(v + " in " + path);
        }
      }
    }
  }

  private static double sum(Samples s, int channel) {
    int count = Math.toIntExact(s.area().count()) * s.channels();
    double sum = 0;
    for (int i = channel; i < count; i += s.channels()) {
      double v =
          switch (s.kind()) {
            case BYTES -> s.bytes()[i] & 0xff;
            case SHORTS -> s.shorts()[i] & 0xffff;
            case FLOATS -> s.floats()[i];
          };
      sum += v == v ? v : 0;
    }
    return sum;
  }

  /** How a reading differs from what was expected, or null. */
  private @Nullable String fault(String file, double[] mean, String expected) {
    String[] words = expected.split(" ");
    switch (words[0]) {
      case "general-reader":
        return null;
      case "samples":
        try {
          FrameSource source = FrameSources.open(Corpus.file(file));
          boolean same =
              source instanceof TiffSource own && CorpusTest.compare(Corpus.file(file), own);
          return same ? null : "not compared";
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
      case "as":
        return apart(mean, mean(words[1]), Double.parseDouble(words[2]) + 1e-12);
      default:
        double[] wanted = new double[words.length - 1];
        for (int c = 0; c < wanted.length; c++) {
          wanted[c] = Double.parseDouble(words[c + 1]);
        }
        return apart(mean, wanted, words[0].equals("light") ? 5e-4 : CLOSE);
    }
  }

  private static @Nullable String apart(double[] mean, double[] wanted, double bound) {
    for (int c = 0; c < Math.min(mean.length, wanted.length); c++) {
      if (!(Math.abs(mean[c] - wanted[c]) <= bound)) {
        return "channel " + c + " has a mean of " + mean[c] + " in place of " + wanted[c];
      }
    }
    return null;
  }
}
