/** What one and several of each collection are called; pictures and samples are counted too. */
export const COLLECTION_NAMES: Record<string, readonly [one: string, many: string]> = {
  levels: ['level', 'levels'],
  rooms: ['room', 'rooms'],
  openings: ['opening', 'openings'],
  fixtures: ['fixture', 'fixtures'],
  pieces: ['piece', 'pieces'],
  sources: ['source', 'sources'],
  meters: ['meter', 'meters'],
  rounds: ['round', 'rounds'],
  walks: ['walk', 'walks'],
  readings: ['reading', 'readings'],
  recordings: ['recording', 'recordings'],
  comparisons: ['comparison', 'comparisons'],
  arrangements: ['arrangement', 'arrangements'],
  guidelines: ['guideline', 'guidelines'],
  samples: ['sample', 'samples'],
  images: ['picture', 'pictures'],
};

export const nameOf = (collection: string): string => COLLECTION_NAMES[collection]?.[0] ?? collection;

/** “1 room”, “12 readings”. */
export function countOf(collection: string, n: number): string {
  const [one, many] = COLLECTION_NAMES[collection] ?? [collection, collection];
  return `${n} ${n === 1 ? one : many}`;
}
