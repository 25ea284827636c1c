package org.duskply.engine.deliver;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.util.List;
import java.util.function.BooleanSupplier;
import javax.imageio.IIOImage;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.event.IIOWriteProgressListener;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.spi.IIORegistry;
import javax.imageio.spi.ImageWriterSpi;

/**
 * The JDK's own JPEG encoder, asked for what a delivered picture needs: baseline, Y′CbCr by JFIF
 * with every sample of chroma kept (4:4:4) at any quality, the resolution in the JFIF segment, and
 * what else the file tells in {@link JpegSegments}. The codes it gets are written as they are: no
 * colour engine stands between.
 *
 * <p>Quality q, from 0 to 1, scales the quantisation tables K.1 and K.2 of ITU-T T.81, annex K: by
 * 2 − 2q from ½ on, by 0.5/q below (at q = 0 by 50), each step rounded and held to 1 … 255. So ½ is
 * the standard's own tables, 0.95 a tenth of them, and 1 divides by nothing but 1.
 */
final class JpegEncoder {
  private static final String SPI = "com.sun.imageio.plugins.jpeg.JPEGImageWriterSpi";
  private static final String TREE = "javax_imageio_jpeg_image_1.0";

  private JpegEncoder() {}

  /**
   * Writes the file.
   *
   * @param picture its codes, R, G, B of a pixel together
   * @return whether it was written to the end, rather than stopped
   */
  static boolean write(
      byte[] picture, SinkSpec spec, byte[] profile, SafeFile file, BooleanSupplier stop)
      throws IOException {
    BufferedImage image = image(picture, spec.width(), spec.height());
    ImageWriter writer = writer();
    try (SafeFileStream out = new SafeFileStream(file)) {
      ImageWriteParam quality = writer.getDefaultWriteParam();
      quality.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      quality.setCompressionQuality((float) spec.quality());
      quality.setProgressiveMode(ImageWriteParam.MODE_DISABLED);
      Stopper stopper = new Stopper(stop);
      writer.addIIOWriteProgressListener(stopper);
      writer.setOutput(out);
      writer.write(
          null,
          new IIOImage(image, null, metadata(writer, image, quality, spec, profile)),
          quality);
      return !stopper.stopped;
    } finally {
      writer.dispose();
    }
  }

  /** Bytes that the encoder holds beside the picture: rows of samples and of coefficients. */
  static long heldBytes(int width) {
    return 100L * width + (256L << 10);
  }

  /** Told by name, for a jar on the path may bring a writer that comes first in the search. */
  private static ImageWriter writer() throws IOException {
    try {
      Class<?> type = Class.forName(SPI);
      Object found = IIORegistry.getDefaultInstance().getServiceProviderByClass(type);
      if (found instanceof ImageWriterSpi spi) {
        return spi.createWriterInstance();
      }
    } catch (ClassNotFoundException e) {
      throw new IOException("this Java has no JPEG encoder", e);
    }
    throw new IOException("this Java has no JPEG encoder");
  }

  private static BufferedImage image(byte[] picture, int width, int height) {
    WritableRaster raster =
        Raster.createInterleavedRaster(
            new DataBufferByte(picture, picture.length),
            width,
            height,
            width * BandLayout.CHANNELS,
            BandLayout.CHANNELS,
            new int[] {0, 1, 2},
            null);
    // sRGB here only means "three channels that are R, G, B"; the profile says which.
    ComponentColorModel model =
        new ComponentColorModel(
            ColorSpace.getInstance(ColorSpace.CS_sRGB),
            false,
            false,
            Transparency.OPAQUE,
            DataBuffer.TYPE_BYTE);
    return new BufferedImage(model, raster, false, null);
  }

  private static IIOMetadata metadata(
      ImageWriter writer,
      BufferedImage image,
      ImageWriteParam quality,
      SinkSpec spec,
      byte[] profile)
      throws IOException {
    IIOMetadata metadata =
        writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(image), quality);
    IIOMetadataNode root = (IIOMetadataNode) metadata.getAsTree(TREE);
    resolution(root, spec.dotsPerInch());
    keepChroma(root);
    addSegments(root, JpegSegments.of(spec, profile));
    metadata.setFromTree(TREE, root);
    return metadata;
  }

  private static void resolution(IIOMetadataNode root, int dotsPerInch) {
    IIOMetadataNode jfif = node(root, "app0JFIF");
    jfif.setAttribute("resUnits", "1"); // dots an inch
    jfif.setAttribute("Xdensity", Integer.toString(dotsPerInch));
    jfif.setAttribute("Ydensity", Integer.toString(dotsPerInch));
  }

  private static void keepChroma(IIOMetadataNode root) {
    var components = root.getElementsByTagName("componentSpec");
    for (int i = 0; i < components.getLength(); i++) {
      IIOMetadataNode component = (IIOMetadataNode) components.item(i);
      component.setAttribute("HsamplingFactor", "1");
      component.setAttribute("VsamplingFactor", "1");
    }
  }

  private static void addSegments(IIOMetadataNode root, List<JpegSegments.Segment> segments) {
    IIOMetadataNode sequence = node(root, "markerSequence");
    var first = sequence.getFirstChild();
    for (JpegSegments.Segment segment : segments) {
      IIOMetadataNode node = new IIOMetadataNode("unknown");
      node.setAttribute("MarkerTag", Integer.toString(segment.marker()));
      node.setUserObject(segment.data());
      sequence.insertBefore(node, first);
    }
  }

  private static IIOMetadataNode node(IIOMetadataNode root, String name) {
    return (IIOMetadataNode) root.getElementsByTagName(name).item(0);
  }

  /** Ends the encoding between two rows. */
  private static final class Stopper implements IIOWriteProgressListener {
    private final BooleanSupplier stop;
    private boolean stopped;

    Stopper(BooleanSupplier stop) {
      this.stop = stop;
    }

    @Override
    public void imageProgress(ImageWriter source, float percent) {
      if (!stopped && stop.getAsBoolean()) {
        stopped = true;
        source.abort();
      }
    }

    @Override
    public void imageStarted(ImageWriter source, int index) {}

    @Override
    public void imageComplete(ImageWriter source) {}

    @Override
    public void thumbnailStarted(ImageWriter source, int index, int thumbnail) {}

    @Override
    public void thumbnailProgress(ImageWriter source, float percent) {}

    @Override
    public void thumbnailComplete(ImageWriter source) {}

    @Override
    public void writeAborted(ImageWriter source) {}
  }
}
