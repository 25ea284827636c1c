package org.duskply.engine.colour;

/** The curve of a linear file: encoded is linear. */
enum IdentityCurve implements TransferCurve {
  IDENTITY;

  @Override
  public double toLinear(double encoded) {
    return encoded;
  }

  @Override
  public double toEncoded(double linear) {
    return linear;
  }
}
