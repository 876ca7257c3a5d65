import { area } from '../../../engine/geometry/polygon';
import type { Home, Point, Ref } from '../../../home/home';
import { lengthText } from '../../../words/numbers';
import { areaText, sizeText, sketch } from '../../../words/sketch';
import { isRectangle } from './fixtureSides';
import { wallLength } from './wallLength';
import { PIECE_WORDS, ROOM_USES, SOURCE_WORDS, thingName } from '../../../words/things';

export interface RowText {
  name: string;
  note: string;
  value: string;
}

function pathLength(path: readonly Point[]): number {
  let length = 0;
  for (let i = 1; i < path.length; i++)
    length += Math.hypot(path[i]![0] - path[i - 1]![0], path[i]![1] - path[i - 1]![1]);
  return length;
}

/** What a thing's row says before it is opened. */
export function rowText(home: Home, ref: Ref): RowText {
  const name = thingName(home, ref);
  const unit = home.settings.lengthUnit;
  switch (ref.kind) {
    case 'room': {
      const room = home.rooms[ref.id]!;
      return { name, note: ROOM_USES[room.use], value: areaText(area(room.outline), unit) };
    }
    case 'opening': {
      const opening = home.openings[ref.id]!;
      const room = thingName(home, { kind: 'room', id: opening.room });
      return { name, note: sketch.inRoom(room), value: lengthText(opening.width, unit) };
    }
    case 'fixture': {
      const { outline } = home.fixtures[ref.id]!;
      const [a, b] = [wallLength(outline, 0), wallLength(outline, 1)];
      const size = [Math.max(a, b), Math.min(a, b)] as const;
      return { name, note: '', value: isRectangle(outline) ? sizeText(size, unit) : '' };
    }
    case 'piece': {
      const piece = home.pieces[ref.id]!;
      const kind = PIECE_WORDS[piece.kind].toLowerCase();
      const hours = piece.uses.map((use) => `${use.who} ${use.hours} h`).join(', ');
      return { name, note: [kind, hours].filter(Boolean).join(' · '), value: sizeText(piece.size, unit) };
    }
    case 'source': {
      const source = home.sources[ref.id]!;
      const origin = sketch.origins[source.origin];
      return { name, note: `${SOURCE_WORDS[source.kind].toLowerCase()} · ${origin}`, value: '' };
    }
    case 'walk':
      return { name, note: '', value: lengthText(pathLength(home.walks[ref.id]!.path), unit, 1) };
    case 'reading':
      return { name, note: '', value: '' };
  }
}
