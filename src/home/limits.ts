/** What a home may hold at most, so that a damaged or hostile file cannot stop the page. */
export const LIMITS = {
  /** Bytes of the file: 20 MB. */
  file: 20 * 1024 * 1024,
  /** Bytes of one picture: 1 MB. */
  image: 1024 * 1024,
  images: 10,
  readings: 2000,
  rooms: 200,
  pieces: 500,
  levels: 10,
  /** Samples of all recordings together. */
  samples: 200_000,
  /** Largest |x| and |y|, metres. */
  coordinate: 1000,
  corners: 100,
  /** Characters. */
  text: 2000,
} as const;
