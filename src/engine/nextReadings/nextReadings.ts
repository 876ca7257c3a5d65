import { effectOf, isOpen, partsOf, varianceSaid } from './aims';
import { fieldsOf } from '../dose/fieldAt';
import { siteOf, type Site } from './site';
import type { Aim, NextReading, NextReadings, NextRequest } from './request';
import type { FieldAt } from '../dose/fieldAt';

/** A narrowing worth a reading, as a share of an interval's width; and floor that is worth one, m². The project's choice. */
const WORTH = 0.1;
const WORTH_DRAWN = 1;

/**
 * Where to read next so that what is asked becomes surest: each place in turn is the one that takes most variance from the
 * floor asked, or from the aims, with those before it taken as read (greedy, which for variances brought down so comes near
 * the best set: Nemhauser, Wolsey & Fisher 1978; Krause, Singh & Guestrin 2008). The list ends, `enough`, where no place left
 * narrows an aim that is open by a tenth of its width, or has floor drawn. `progress` is told the share done, 0…1.
 */
export function nextReadings(
  request: NextRequest,
  progress: (share: number) => void = () => {},
  fieldAt: FieldAt = fieldsOf(request.fitted),
): NextReadings {
  const aims = request.aims.map((aim) => ({ aim, parts: partsOf(aim, request, fieldAt) }));
  const asked = [
    ...aims.flatMap(({ parts }) => parts.map(({ level }) => level)),
    ...request.rooms.filter(({ id }) => request.floor.includes(id)).map(({ level }) => level),
  ];
  const levels = [...new Set(asked)];
  const sites = levels.map((level, i) => {
    progress(i / levels.length);
    return siteOf(
      request,
      level,
      aims.map(({ parts }) => parts),
      fieldAt,
    );
  });
  const variances = () => aims.map((_, k) => sites.reduce((sum, site) => sum + site.variance(k), 0));
  const today = variances();
  const readings: NextReading[] = [];
  for (;;) {
    const before = variances();
    const best = bestOf(request.aims, sites, today, before);
    if (!best || readings.length >= request.count) return { readings, enough: best === null };
    const { site, spot, most } = best;
    const drawn = site.drawn(spot);
    site.read(spot);
    const after = variances();
    const share = (variances: readonly number[]) => Math.sqrt(variances[most!] / today[most!]);
    readings.push({
      level: site.level,
      at: site.spots[spot],
      height: request.height,
      effect: most === null ? null : effectOf(request.aims[most], share(before), share(after)),
      drawn,
    });
  }
}

interface Best {
  site: Site;
  spot: number;
  /** Index of the aim that gains most of those that still matter; null where none gains. */
  most: number | null;
}

/** The spot that gains most of those that are worth a reading. */
function bestOf(
  aims: readonly Aim[],
  sites: readonly Site[],
  today: readonly number[],
  now: readonly number[],
): Best | null {
  const ratios = now.map((variance, k) => Math.sqrt(variance / today[k]));
  const open = aims.map((aim, k) => now[k] > 0 && isOpen(aim, ratios[k]));
  const said = aims.map((aim, k) => varianceSaid(aim, ratios[k]));
  let best: Best | null = null;
  let most = 0;
  for (const site of sites)
    for (let spot = 0; spot < site.spots.length; spot++) {
      if (!site.free(spot)) continue;
      const lowers = aims.map((_, k) => site.lowers(spot, k));
      // What is known as well as a meter could read it is known well enough.
      const shares = lowers.map((lower, k) => (open[k] && said[k] > site.noise[spot] ? lower / now[k] : 0));
      const largest = Math.max(0, ...shares);
      if (Math.sqrt(1 - largest) >= 1 - WORTH && site.drawn(spot) < WORTH_DRAWN) continue;
      const gain =
        site.gain(spot) ?? lowers.reduce((sum, lower, k) => sum + (open[k] ? lower / today[k] : 0), 0);
      if (gain > most) {
        most = gain;
        best = { site, spot, most: largest > 0 ? shares.indexOf(largest) : null };
      }
    }
  return best;
}
