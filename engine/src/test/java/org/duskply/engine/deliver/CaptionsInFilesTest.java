package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.adobe.internal.xmp.XMPMeta;
import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.iptc.IptcDirectory;
import com.drew.metadata.xmp.XmpDirectory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/**
 * Captions in delivered files, read back by metadata-extractor and by exiftool: writers are
 * reported to lose them, the profile and the resolution.
 */
class CaptionsInFilesTest {
  private static final String TITLE = "Bootshaus am Weiher – Dämmerung";
  private static final String CREATOR = "A. Müller-Ñandú, 写真";
  private static final String COPYRIGHT = "© 2026 A. Keeper";
  private static final String CAPTION =
      "Cour intérieure, \"heure bleue\" <& später>\nZweite Zeile: 夕暮れの茶屋 🛶🌆";
  private static final List<String> KEYWORDS =
      List.of("architecture", "crépuscule", "夕暮れ", "🛶", "a, b; c");
  private static final String CREDIT = "A. Keeper / Tarn Pictures";
  private static final String USAGE = "Café's own menus & website, ½ year";
  private static final String LOCATION = "North pontoon, Alder Tarn";
  private static final String ALT = "A lit café on stilts over still water.";

  private static final Captions ALL =
      new Captions("Duskply", LocalDateTime.of(2026, 3, 9, 18, 5, 7), Map.of())
          .with(CaptionField.TITLE, TITLE)
          .with(CaptionField.CREATOR, CREATOR)
          .with(CaptionField.COPYRIGHT, COPYRIGHT)
          .with(CaptionField.CAPTION, CAPTION)
          .with(CaptionField.KEYWORDS, KEYWORDS)
          .with(CaptionField.CREDIT, CREDIT)
          .with(CaptionField.RIGHTS_USAGE, USAGE)
          .with(CaptionField.LOCATION, LOCATION)
          .with(CaptionField.ALT_TEXT, ALT);

  private static final NamedSpace SPACE = NamedSpace.SRGB;

  @TempDir Path folder;

  private SinkSpec spec(Format format, Captions captions) {
    return Specs.with(Specs.of(folder, format, Compress.LZW, picture(format)), captions);
  }

  private static TestPicture picture(Format format) {
    int depth = format == Format.JPEG ? 8 : 16;
    return TestPicture.noisy(31, 17, depth, NamedSpace.SRGB, 3);
  }

  private Path deliver(Format format, Captions captions) {
    SinkSpec spec = spec(format, captions);
    picture(format).deliver(spec);
    return spec.target();
  }

  private static Metadata read(Path file) throws Exception {
    Metadata metadata = ImageMetadataReader.readMetadata(file.toFile());
    for (Directory directory : metadata.getDirectories()) {
      assertThat(directory.getErrors()).as("%s", directory.getName()).isEmpty();
    }
    return metadata;
  }

  private static XMPMeta xmp(Metadata metadata) {
    return metadata.getFirstDirectoryOfType(XmpDirectory.class).getXMPMeta();
  }

  /** The tags of files by exiftool, {@code GROUP:TAG} each. */
  private static JsonNode exiftool(List<Path> files) throws Exception {
    List<Object> command = new ArrayList<>(List.of("exiftool", "-q", "-j", "-n", "-G1", "-struct"));
    command.addAll(files);
    return new ObjectMapper().readTree(Tool.run(command.toArray()));
  }

  private static List<String> texts(JsonNode node) {
    List<String> texts = new ArrayList<>();
    node.forEach(item -> texts.add(item.asString()));
    return texts;
  }

  @ParameterizedTest
  @EnumSource(Format.class)
  void xmpHoldsAllByMetadataExtractor(Format format) throws Exception {
    XMPMeta xmp = xmp(read(deliver(format, ALL)));
    String dc = "http://purl.org/dc/elements/1.1/";
    String core = "http://iptc.org/std/Iptc4xmpCore/1.0/xmlns/";
    String rights = "http://ns.adobe.com/xap/1.0/rights/";
    String news = "http://ns.adobe.com/photoshop/1.0/";
    assertThat(xmp.getLocalizedText(dc, "title", null, "x-default").getValue()).isEqualTo(TITLE);
    assertThat(xmp.getLocalizedText(dc, "rights", null, "x-default").getValue())
        .isEqualTo(COPYRIGHT);
    assertThat(xmp.getLocalizedText(dc, "description", null, "x-default").getValue())
        .isEqualTo(CAPTION);
    assertThat(xmp.countArrayItems(dc, "creator")).isEqualTo(1);
    assertThat(xmp.getArrayItem(dc, "creator", 1).getValue()).isEqualTo(CREATOR);
    assertThat(xmp.countArrayItems(dc, "subject")).isEqualTo(KEYWORDS.size());
    for (int i = 0; i < KEYWORDS.size(); i++) {
      assertThat(xmp.getArrayItem(dc, "subject", i + 1).getValue()).isEqualTo(KEYWORDS.get(i));
    }
    assertThat(xmp.getPropertyString(news, "Credit")).isEqualTo(CREDIT);
    assertThat(xmp.getPropertyString(news, "DateCreated")).isEqualTo("2026-03-09T18:05:07");
    assertThat(xmp.getLocalizedText(rights, "UsageTerms", null, "x-default").getValue())
        .isEqualTo(USAGE);
    assertThat(xmp.getPropertyString(core, "Location")).isEqualTo(LOCATION);
    assertThat(xmp.getLocalizedText(core, "AltTextAccessibility", null, "x-default").getValue())
        .isEqualTo(ALT);
    assertThat(xmp.getPropertyString("http://ns.adobe.com/xap/1.0/", "CreatorTool"))
        .isEqualTo("Duskply");
  }

  @ParameterizedTest
  @EnumSource(Format.class)
  void exifHoldsWhatItHasAPlaceForByMetadataExtractor(Format format) throws Exception {
    Metadata metadata = read(deliver(format, ALL));
    ExifIFD0Directory first = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
    assertThat(first.getString(ExifIFD0Directory.TAG_IMAGE_DESCRIPTION)).isEqualTo(CAPTION);
    assertThat(first.getString(ExifIFD0Directory.TAG_ARTIST)).isEqualTo(CREATOR);
    assertThat(first.getString(ExifIFD0Directory.TAG_COPYRIGHT)).isEqualTo(COPYRIGHT);
    assertThat(first.getString(ExifIFD0Directory.TAG_SOFTWARE)).isEqualTo("Duskply");
    assertThat(first.getInt(ExifIFD0Directory.TAG_ORIENTATION)).isEqualTo(1);
    assertThat(first.getInt(ExifIFD0Directory.TAG_X_RESOLUTION)).isEqualTo(300);
    ExifSubIFDDirectory camera = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
    assertThat(camera.getString(ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL))
        .isEqualTo("2026:03:09 18:05:07");
    assertThat(camera.getInt(ExifSubIFDDirectory.TAG_COLOR_SPACE)).isEqualTo(1);
    if (format != Format.TIFF) { // whose own tags say it
      assertThat(camera.getInt(ExifSubIFDDirectory.TAG_EXIF_IMAGE_WIDTH)).isEqualTo(31);
      assertThat(camera.getInt(ExifSubIFDDirectory.TAG_EXIF_IMAGE_HEIGHT)).isEqualTo(17);
    }
  }

  @ParameterizedTest
  @EnumSource(Format.class)
  void iptcHoldsWhatItHasAPlaceForByMetadataExtractor(Format format) throws Exception {
    IptcDirectory iptc = read(deliver(format, ALL)).getFirstDirectoryOfType(IptcDirectory.class);
    if (format == Format.PNG) { // has no place for it
      assertThat(iptc).isNull();
      return;
    }
    assertThat(iptc.getString(IptcDirectory.TAG_OBJECT_NAME)).isEqualTo(TITLE);
    assertThat(iptc.getKeywords()).isEqualTo(KEYWORDS);
    assertThat(iptc.getString(IptcDirectory.TAG_BY_LINE)).isEqualTo(CREATOR);
    assertThat(iptc.getString(IptcDirectory.TAG_SUB_LOCATION)).isEqualTo(LOCATION);
    assertThat(iptc.getString(IptcDirectory.TAG_CREDIT)).isEqualTo(CREDIT);
    assertThat(iptc.getString(IptcDirectory.TAG_COPYRIGHT_NOTICE)).isEqualTo(COPYRIGHT);
    assertThat(iptc.getString(IptcDirectory.TAG_CAPTION)).isEqualTo(CAPTION);
    assertThat(iptc.getString(IptcDirectory.TAG_DATE_CREATED)).isEqualTo("20260309");
  }

  @Test
  void exiftoolReadsAllOfIt() throws Exception {
    List<Path> files = new ArrayList<>();
    for (Format format : Format.values()) {
      files.add(deliver(format, ALL));
    }
    JsonNode tags = exiftool(files);
    List<String> warnings = Tool.exifWarnings(files);
    for (Format format : Format.values()) {
      exiftoolReadsAllOf(tags.get(format.ordinal()), format);
      // The type UNDEFINED is the tag's, but so many writers take LONG that this reader expects it.
      assertThat(warnings.get(format.ordinal()))
          .containsPattern(
              format == Format.TIFF
                  ? "Validate *: 1 Warning\\RWarning *: Non-standard format \\(undef\\) for IFD0"
                      + " 0x83bb"
                  : "Validate *: OK");
    }
  }

  private static void exiftoolReadsAllOf(JsonNode tags, Format format) {
    String[][] expected = {
      {"XMP-dc:Title", TITLE},
      {"XMP-dc:Rights", COPYRIGHT},
      {"XMP-dc:Description", CAPTION},
      {"XMP-photoshop:Credit", CREDIT},
      {"XMP-photoshop:DateCreated", "2026:03:09 18:05:07"},
      {"XMP-xmpRights:UsageTerms", USAGE},
      {"XMP-iptcCore:Location", LOCATION},
      {"XMP-iptcCore:AltTextAccessibility", ALT},
      {"XMP-xmp:CreatorTool", "Duskply"},
      {"IFD0:ImageDescription", CAPTION},
      {"IFD0:Artist", CREATOR},
      {"IFD0:Copyright", COPYRIGHT},
      {"IFD0:Software", "Duskply"},
      {"IFD0:Orientation", "1"},
      {"IFD0:XResolution", "300"},
      {"ExifIFD:DateTimeOriginal", "2026:03:09 18:05:07"},
      {"ICC_Profile:ProfileDescription", "Duskply sRGB"},
    };
    for (String[] pair : expected) {
      assertThat(tags.path(pair[0]).asString("absent")).as(pair[0]).isEqualTo(pair[1]);
    }
    assertThat(texts(tags.get("XMP-dc:Creator"))).containsExactly(CREATOR);
    assertThat(texts(tags.get("XMP-dc:Subject"))).isEqualTo(KEYWORDS);
    assertThat(tags.get("XMP-iptcExt:LocationCreated").get(0).get("LocationName").asString())
        .isEqualTo(LOCATION);
    if (format != Format.PNG) {
      assertThat(tags.get("IPTC:CodedCharacterSet").asString()).isEqualTo("\u001B%G");
      assertThat(texts(tags.get("IPTC:Keywords"))).isEqualTo(KEYWORDS);
      assertThat(tags.get("IPTC:ObjectName").asString()).isEqualTo(TITLE);
      assertThat(tags.get("IPTC:By-line").asString()).isEqualTo(CREATOR);
      assertThat(tags.get("IPTC:Sub-location").asString()).isEqualTo(LOCATION);
      assertThat(tags.get("IPTC:Credit").asString()).isEqualTo(CREDIT);
      assertThat(tags.get("IPTC:CopyrightNotice").asString()).isEqualTo(COPYRIGHT);
      assertThat(tags.get("IPTC:Caption-Abstract").asString()).isEqualTo(CAPTION);
      assertThat(tags.get("IPTC:DateCreated").asString()).isEqualTo("2026:03:09");
    }
  }

  /** Reported of other writers: no resolution but 72, no profile in a JPEG, an orientation kept. */
  @Test
  void everyFileHasItsProfileAndItsResolution() throws Exception {
    NamedSpace[] spaces = {NamedSpace.SRGB, NamedSpace.A98_RGB, NamedSpace.PROPHOTO_RGB};
    int[] densities = {72, 240, 1};
    List<SinkSpec> specs = new ArrayList<>();
    for (Format format : Format.values()) {
      for (int i = 0; i < 3; i++) {
        TestPicture picture =
            TestPicture.noisy(31, 17, format == Format.JPEG ? 8 : 16, spaces[i], 3);
        Path here = folder.resolve("" + i);
        SinkSpec spec = Specs.with(Specs.of(here, format, Compress.DEFLATE, picture), spaces[i]);
        specs.add(Specs.with(spec, densities[i]));
        picture.deliver(specs.get(specs.size() - 1));
      }
    }
    List<Path> files = specs.stream().map(SinkSpec::target).toList();
    JsonNode tags = exiftool(files);
    List<Object> command = new ArrayList<>(List.of("vipsheader", "-a"));
    command.addAll(files);
    String vips = Tool.run(command.toArray());
    for (int i = 0; i < specs.size(); i++) {
      checkProfileAndResolution(specs.get(i), tags.get(i));
      checkByVips(specs.get(i), vips);
    }
  }

  private static void checkProfileAndResolution(SinkSpec spec, JsonNode tags) {
    NamedSpace space = spec.profile();
    int density = spec.dotsPerInch();
    assertThat(tags.get("ICC_Profile:ProfileDescription").asString())
        .isEqualTo("Duskply " + (space == NamedSpace.SRGB ? "sRGB" : space.key()));
    assertThat(tags.get("IFD0:XResolution").asInt()).isEqualTo(density);
    assertThat(tags.get("IFD0:YResolution").asInt()).isEqualTo(density);
    assertThat(tags.get("IFD0:ResolutionUnit").asInt()).as("inch").isEqualTo(2);
    assertThat(tags.get("IFD0:Orientation").asInt()).isEqualTo(1);
    if (spec.format() == Format.JPEG) {
      assertThat(tags.get("JFIF:XResolution").asInt()).isEqualTo(density);
    }
    if (spec.format() == Format.PNG) { // dots a metre
      assertThat(tags.get("PNG-pHYs:PixelsPerUnitY").asInt())
          .isEqualTo((int) Math.round(density / 0.0254));
    }
  }

  /** Each line of the header begins with the file's name. */
  private static void checkByVips(SinkSpec spec, String vips) {
    int density = spec.dotsPerInch();
    String name = spec.target() + ": ";
    Matcher perMillimetre = Pattern.compile(Pattern.quote(name) + "xres: ([0-9.]+)").matcher(vips);
    assertThat(perMillimetre.find()).isTrue();
    assertThat(Double.parseDouble(perMillimetre.group(1)) * 25.4)
        .as("by libvips")
        .isBetween(density - 0.01, density + 0.01);
    assertThat(vips).contains(name + "icc-profile-data: ");
  }

  @ParameterizedTest
  @EnumSource(Format.class)
  void withoutCaptionsThereIsSoftwareAlone(Format format) throws Exception {
    Metadata metadata = read(deliver(format, Captions.NONE));
    assertThat(metadata.getFirstDirectoryOfType(XmpDirectory.class)).isNull();
    assertThat(metadata.getFirstDirectoryOfType(IptcDirectory.class)).isNull();
    ExifIFD0Directory first = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
    assertThat(first.getString(ExifIFD0Directory.TAG_SOFTWARE)).isEqualTo("Duskply");
    assertThat(first.containsTag(ExifIFD0Directory.TAG_ARTIST)).isFalse();
    assertThat(first.containsTag(ExifIFD0Directory.TAG_DATETIME)).as("there is no clock").isFalse();
    ExifSubIFDDirectory camera = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
    assertThat(camera == null || !camera.containsTag(ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL))
        .isTrue();
  }

  @ParameterizedTest
  @EnumSource(Format.class)
  void theSameCaptionsAreTheSameBytes(Format format) throws Exception {
    byte[] once = Files.readAllBytes(deliver(format, ALL));
    assertThat(Files.readAllBytes(deliver(format, ALL))).isEqualTo(once);
  }

  /**
   * A whole file, pinned: its packing is our own, so no library can change a byte of it. A change
   * here is a change of what photographers get; make it on purpose.
   */
  @Tag("bits")
  @Test
  void aWholeFileIsPinned() throws Exception {
    SinkSpec s =
        Specs.of(folder, Format.TIFF, Compress.LZW, TestPicture.noisy(90, 70, 8, SPACE, 3));
    SinkSpec spec = Specs.dithered(Specs.with(s, ALL), 64);
    TestPicture.noisy(90, 70, 16, SPACE, 3).deliver(spec);
    byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(spec.target()));
    assertThat(HexFormat.of().formatHex(digest))
        .isEqualTo("78449236fc8ae9f2fb0deb5624f85b867e9de8bb2df6f8d7044e40c26f582271");
  }

  /** Texts longer than the IIM allows are cut there, and whole in XMP. */
  @Test
  void longTextsAreCutInIptcAlone() throws Exception {
    String caption = "ä夕🛶 ".repeat(500); // 10 bytes each
    String creator = "x" + "é".repeat(40);
    Captions captions =
        Captions.NONE.with(CaptionField.CAPTION, caption).with(CaptionField.CREATOR, creator);
    Metadata metadata = read(deliver(Format.JPEG, captions));
    IptcDirectory iptc = metadata.getFirstDirectoryOfType(IptcDirectory.class);
    assertThat(iptc.getString(IptcDirectory.TAG_CAPTION)).isEqualTo("ä夕🛶 ".repeat(200));
    assertThat(iptc.getString(IptcDirectory.TAG_BY_LINE)).isEqualTo("x" + "é".repeat(15));
    String dc = "http://purl.org/dc/elements/1.1/";
    assertThat(xmp(metadata).getArrayItem(dc, "creator", 1).getValue()).isEqualTo(creator);
    assertThat(xmp(metadata).getLocalizedText(dc, "description", null, "x-default").getValue())
        .isEqualTo(caption);
  }

  /** A JPEG's segment is full at 65502 bytes of XMP (ISO 16684-3); to the byte. */
  @Test
  void aJpegTakesWhatItsSegmentHoldsAndSaysWhatIsTooLong() throws Exception {
    int frame = XmpPacket.of(Captions.NONE.with(CaptionField.CAPTION, "x")).length - 1;
    String fits = "x".repeat(65_502 - frame);
    Captions full = Captions.NONE.with(CaptionField.CAPTION, fits);
    assertThat(
            xmp(read(deliver(Format.JPEG, full)))
                .getLocalizedText(
                    "http://purl.org/dc/elements/1.1/", "description", null, "x-default")
                .getValue())
        .isEqualTo(fits);
    SinkSpec over = spec(Format.JPEG, full.with(CaptionField.CAPTION, fits + "x"));
    Files.delete(over.target());
    String sentence =
        over.target()
            + " cannot be written: the metadata takes 65503 bytes and a JPEG holds 65502; shorten"
            + " the caption.";
    assertThatThrownBy(() -> Sinks.open(over))
        .isInstanceOf(DeliverException.class)
        .hasMessage(sentence);
    assertThatThrownBy(() -> Sinks.cost(over)).hasMessage(sentence);
    assertThat(over.target()).doesNotExist();
  }

  /** The longest caption that a recipe may hold and more: TIFF and PNG have room. */
  @ParameterizedTest
  @EnumSource(names = {"TIFF", "PNG"})
  void otherFormatsTakeTwoMegabytes(Format format) throws Exception {
    String caption = "夕暮れ <".repeat(2_000_000 / 11);
    Captions captions = Captions.NONE.with(CaptionField.CAPTION, caption);
    Path file = deliver(format, captions);
    assertThat(
            read(file)
                .getFirstDirectoryOfType(ExifIFD0Directory.class)
                .getString(ExifIFD0Directory.TAG_IMAGE_DESCRIPTION))
        .isEqualTo(caption);
    assertThat(Sinks.cost(spec(format, captions)).heldBytes())
        .isGreaterThan(2L * caption.getBytes(StandardCharsets.UTF_8).length);
  }
}
