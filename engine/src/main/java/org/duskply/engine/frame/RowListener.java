package org.duskply.engine.frame;

import java.awt.image.BufferedImage;
import javax.imageio.ImageReader;
import javax.imageio.event.IIOReadUpdateListener;

/** Knows how far down the last pass of an image reader has come. */
class RowListener implements IIOReadUpdateListener {
  private int next;

  /** The first row that has not been delivered. */
  int next() {
    return next;
  }

  @Override
  public void imageUpdate(
      ImageReader source,
      BufferedImage image,
      int minX,
      int minY,
      int width,
      int height,
      int periodX,
      int periodY,
      int[] bands) {
    next = minY + (height - 1) * Math.max(1, periodY) + 1;
  }

  @Override
  public void passStarted(
      ImageReader source,
      BufferedImage image,
      int pass,
      int minPass,
      int maxPass,
      int minX,
      int minY,
      int periodX,
      int periodY,
      int[] bands) {}

  @Override
  public void passComplete(ImageReader source, BufferedImage image) {}

  @Override
  public void thumbnailPassStarted(
      ImageReader source,
      BufferedImage thumbnail,
      int pass,
      int minPass,
      int maxPass,
      int minX,
      int minY,
      int periodX,
      int periodY,
      int[] bands) {}

  @Override
  public void thumbnailUpdate(
      ImageReader source,
      BufferedImage thumbnail,
      int minX,
      int minY,
      int width,
      int height,
      int periodX,
      int periodY,
      int[] bands) {}

  @Override
  public void thumbnailPassComplete(ImageReader source, BufferedImage thumbnail) {}
}
