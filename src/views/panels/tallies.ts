import type { Assessment } from '../../engine/assess';
import { againstTarget, type AgainstTarget } from '../../engine/judging/againstTarget';
import { isJudged } from '../../engine/judging/judged';
import type { Stage } from '../../editor/editor';
import { area } from '../../engine/geometry/polygon';
import type { Home } from '../../home/home';
import { percentText } from '../../words/numbers';
import { dateText } from '../../words/dates';
import type { RoomCounts } from '../../words/judge';
import { tally } from '../../words/panels';

/** Share of the floor inside the walls where the map deserves to be drawn; null without a map or rooms. */
export function drawnShare(home: Home, assessment: Assessment | null): number | null {
  let whole = 0;
  let drawn = 0;
  for (const figures of assessment?.rooms ?? []) {
    const room = home.rooms[figures.id];
    if (!room || room.use === 'grounds') continue;
    const floor = area(room.outline);
    whole += floor;
    drawn += floor * figures.supported;
  }
  return whole > 0 ? drawn / whole : null;
}

/** Judged rooms inside the walls, and how they lie to the target. */
export function roomCounts(home: Home, assessment: Assessment | null): RoomCounts {
  const judged = (assessment?.rooms ?? []).filter((figures) => {
    const room = home.rooms[figures.id];
    return room && room.use !== 'grounds' && isJudged(figures);
  });
  const are = (standing: AgainstTarget) =>
    judged.filter((figures) => againstTarget(figures, home.settings.target) === standing);
  const over = are('over');
  return {
    judged: judged.length,
    over: over.length,
    untold: are('untold').length,
    sleeping: over.filter(({ id }) => home.rooms[id]!.use === 'sleeping').length,
  };
}

/** What is done in each stage, as a word under its name; empty where nothing is to be said yet. */
export function tallies(home: Home, round: string, assessment: Assessment | null): Record<Stage, string> {
  const rooms = Object.keys(home.rooms).length;
  const first = Object.keys(home.rounds)[0];
  const readings = Object.values(home.readings).filter(
    (reading) => (reading.round ?? first) === round,
  ).length;
  const pieces = Object.keys(home.pieces).length;
  const drawn = drawnShare(home, assessment);
  const { over, untold } = roomCounts(home, assessment);
  const begun = rooms > 0 || readings > 0;
  return {
    sketch: rooms > 0 ? tally.rooms(rooms) : tally.startHere,
    survey: readings > 0 ? tally.readings(readings) : tally.noReadings,
    map: drawn === null ? '' : tally.drawn(percentText(drawn)),
    judge: assessment && assessment.rooms.length > 0 ? tally.over(over, untold) : '',
    arrange: pieces > 0 ? tally.pieces(pieces) : begun ? tally.noPieces : '',
    report: home.report.date ? dateText(home.report.date) : begun ? tally.notDated : '',
  };
}
