import type { GuidelineSet } from '../../engine/judging/guidelines';
import { isJudged } from '../../engine/judging/judged';
import type { RoomFigures } from '../../engine/judging/rooms';
import type { Home } from '../../home/home';
import { classText, notJudgedText } from '../../words/assessment';
import { edgeText } from '../../words/canvas';
import { fieldText, intervalText, shareText, unitName } from '../../words/numbers';
import { ROOM_USES, roomName } from '../../words/things';
import type { Table } from './table';

/** Sleeping rooms first, then high to low; grounds last. */
export function roomsTable(
  home: Home,
  figures: readonly RoomFigures[],
  { guideline, target }: { guideline: GuidelineSet; target: number },
): Table {
  const unit = home.settings.fieldUnit;
  const rank = (room: RoomFigures) => ({ sleeping: 0, grounds: 2 })[home.rooms[room.id]!.use as string] ?? 1;
  const right = true as const;
  return {
    heads: [
      { text: 'room', strong: true },
      { text: 'use' },
      { text: `middle, ${unitName(unit)}`, right },
      { text: '90\u2009% interval', right },
      { text: '95\u2009% below', right },
      { text: `over ${edgeText(target, unit)}`, right },
      { text: guideline.name },
    ],
    rows: figures
      .toSorted((a, b) => rank(a) - rank(b) || b.median - a.median)
      .map((room) => {
        const name = roomName(home, room.id);
        const { use } = home.rooms[room.id]!;
        if (!isJudged(room)) return [name, ROOM_USES[use], '—', '—', '—', '—', notJudgedText(room.supported)];
        return [
          name,
          ROOM_USES[use],
          fieldText(room.median, unit),
          intervalText(room.low, room.high, unit),
          `${fieldText(room.p95, unit)} (${intervalText(room.p95Low, room.p95High, unit)})`,
          shareText(room.overTarget, room.overTargetLow, room.overTargetHigh),
          classText(room),
        ];
      }),
  };
}
