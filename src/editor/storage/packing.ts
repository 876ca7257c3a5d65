import { parseHome } from '../../home/file/parse';
import { serialiseHome } from '../../home/file/serialise';
import type { Home } from '../../home/home';
import type { Problem } from '../../home/problem';
import type { Asset, HomeRecord } from './database';

/** Stands in the text for a picture that is kept apart: the smallest picture there is, so that the text is a whole file. */
const BLANK = 'data:image/gif;base64,R0lGODlhAQABAAAAACH5BAEKAAEALAAAAAABAAEAAAICTAEAOw==';

/** The parts of a home that are kept apart from its text, by owner. A day's recording is 86,400 samples. */
export function assetsOf(home: Home): Record<string, unknown> {
  const assets: Record<string, unknown> = {};
  for (const level of Object.values(home.levels)) if (level.backdrop) assets[level.id] = level.backdrop.image;
  for (const recording of Object.values(home.recordings)) assets[recording.id] = recording.samples;
  return assets;
}

/** The text of a home with its assets taken out. */
export function pack(home: Home): string {
  const levels = Object.values(home.levels).map((level) => [
    level.id,
    level.backdrop ? { ...level, backdrop: { ...level.backdrop, image: BLANK } } : level,
  ]);
  const recordings = Object.values(home.recordings).map((recording) => [
    recording.id,
    { ...recording, samples: [] },
  ]);
  return serialiseHome({
    ...home,
    levels: Object.fromEntries(levels),
    recordings: Object.fromEntries(recordings),
  });
}

/** A kept home as it was. Its text passes through the file's own reader, so older versions are brought up to date. */
export function unpack(
  record: HomeRecord,
  assets: Asset[],
): { ok: true; home: Home } | { ok: false; problems: readonly Problem[] } {
  const parsed = parseHome(record.text);
  if (!parsed.ok) return parsed;
  const byOwner = new Map(assets.map((asset) => [asset.owner, asset.data]));
  const home: Home = {
    ...parsed.home,
    levels: { ...parsed.home.levels },
    recordings: { ...parsed.home.recordings },
  };
  for (const level of Object.values(home.levels)) {
    if (!level.backdrop) continue;
    const image = byOwner.get(level.id);
    const backdrop = typeof image === 'string' ? { ...level.backdrop, image } : null;
    home.levels[level.id] = { ...level, backdrop };
  }
  for (const recording of Object.values(home.recordings)) {
    const samples = byOwner.get(recording.id) as [number, number][] | undefined;
    home.recordings[recording.id] = { ...recording, samples: samples ?? [] };
  }
  home.lastIds = { ...home.lastIds };
  for (const [letter, last] of Object.entries(record.lastIds)) {
    home.lastIds[letter] = Math.max(last, home.lastIds[letter] ?? 0);
  }
  return { ok: true, home };
}
