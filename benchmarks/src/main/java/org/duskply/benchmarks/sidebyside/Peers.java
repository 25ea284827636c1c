package org.duskply.benchmarks.sidebyside;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Programs that do the work of a plan with a general-purpose library each: {@code peer_vips} of
 * {@code peer_vips.c}, built by {@code make}, and {@code peer_cv.py}.
 *
 * @param folder where they are
 */
record Peers(Path folder) {
  /** The system's own, which has the packages. */
  private static final String PYTHON = "/usr/bin/python3";

  private static final String VERSIONS =
      "import cv2, numpy; print('OpenCV', cv2.__version__ + ', numpy', numpy.__version__)";

  /**
   * Builds what is not built.
   *
   * @throws Refusal if that cannot be done
   */
  void build() {
    if (!Files.isExecutable(vipsProgram())) {
      Processes.run(List.of("make"), folder);
    }
  }

  /** A plan's work by libvips. */
  Program vips(Path workload) {
    return program(Program.VIPS, List.of(vipsProgram().toString()), workload);
  }

  /**
   * A plan's work by OpenCV and numpy.
   *
   * @throws Refusal if Python cannot load them
   */
  Program openCv(Path workload) {
    if (openCvVersions().isEmpty()) {
      throw new Refusal(
          PYTHON + " has no OpenCV or no numpy; install python3-opencv and python3-numpy.");
    }
    String script = folder.resolve("peer_cv.py").toString();
    return program(Program.OPENCV, List.of(PYTHON, script), workload);
  }

  /** The libraries with their versions. */
  List<String> versions() {
    return List.of(
        "libvips " + Processes.answer("pkg-config", "--modversion", "vips"), openCvVersions());
  }

  private static String openCvVersions() {
    return Processes.answer(PYTHON, "-c", VERSIONS);
  }

  private Path vipsProgram() {
    return folder.resolve("peer_vips");
  }

  private static Program program(String name, List<String> command, Path workload) {
    List<String> whole = new java.util.ArrayList<>(command);
    whole.add("plan.tsv");
    return new Program(name, whole, workload, workload.resolve("peer.tif"));
  }
}
