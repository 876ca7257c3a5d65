/** One state of the sampler: which sources there are, where and how strong, and how much physics leaves unexplained. */
export interface Sample {
  /** Its share among all samples. */
  weight: number;
  /** ln of the likelihood of the readings it was drawn from. */
  logLikelihood: number;
  /** Index into the remainders' grid of (s, ρ). */
  remainder: number;
  /** Standard normal, of the ambient floor. */
  floor: number;
  sources: SampledSource[];
}

/** A source that is present, by the key of its slot and its latents, all standard normal a priori. */
interface SampledSource {
  slot: string;
  latents: number[];
}

/** What source sampling gives: plain data that crosses to and from a worker. */
export interface SourceSamples {
  samples: Sample[];
  /** Keys of all the sources there might have been. */
  slots: string[];
}
