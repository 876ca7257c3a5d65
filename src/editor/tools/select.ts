import type { Ref } from '../../home/home';
import { duplicate } from '../../home/edits/duplicate';
import { remove } from '../../home/edits/remove';
import type { KeyInput, Mark } from '../editor';
import { thingsWithin } from '../input/hitTest';
import { MOVES } from '../stages';
import { copiesOf, sameRef } from '../things';
import { cornerEdit } from './corners';
import { createDrag } from './drag';
import { createHandleDrag } from './handleDrag';
import { handleAt, handleMarks } from './handles';
import { moved } from './moved';
import { nudge } from './nudge';
import type { Aim, Bench, Subject, Tool } from './tool';

type State =
  | { doing: 'nothing' }
  | { doing: 'press'; from: Aim; hit: Ref | null; wasSelected: boolean; subject: Subject }
  | { doing: 'drag'; subject: Subject; move(aim: Aim): void; marks(): Mark[] }
  | { doing: 'lasso'; from: Aim; to: Aim }
  | { doing: 'pan'; last: Aim };

/** Picks things, moves and shapes them. */
export function createSelectTool(bench: Bench): Tool {
  let state: State = { doing: 'nothing' };

  const isSelected = (ref: Ref) => bench.selection.some((each) => sameRef(each, ref));

  const movable = (ref: Ref) => MOVES[bench.view.stage].includes(ref.kind);

  const begin = (press: Extract<State, { doing: 'press' }>, aim: Aim) => {
    const { from, hit, subject } = press;
    const handle = bench.selection.length === 1 ? handleAt(bench, from) : null;
    if (handle)
      state = {
        doing: 'drag',
        subject,
        ...createHandleDrag(bench, subject, bench.selection[0]!, handle),
      };
    // A room lies under everything: one that is not yet selected gives way to the lasso, or plans would shift by accident.
    else if (hit && (movable(hit) || subject === bench.tried) && (hit.kind !== 'room' || press.wasSelected)) {
      if (!isSelected(hit)) bench.select([hit]);
      const moves =
        subject === bench ? movable : subject === bench.tried ? bench.tried.has : bench.answer.has;
      state = { doing: 'drag', subject, ...createDrag(bench, subject, bench.selection.filter(moves), from) };
    } else if (aim.type === 'touch' || MOVES[bench.view.stage].length === 0)
      state = { doing: 'pan', last: from };
    else state = { doing: 'lasso', from, to: aim };
    tool.move(aim);
  };

  const tap = ({ from, hit }: Extract<State, { doing: 'press' }>) => {
    const planned = bench.planned(from);
    if (planned) return bench.pickNext(planned.rank);
    // Suspects lie upon the walls of rooms, under whatever has been drawn or read.
    const suspect = hit && hit.kind !== 'room' ? null : bench.suspectAt(from);
    if (suspect) return bench.chooseSuspect(suspect);
    if (!from.shift) return bench.select(hit ? [hit] : []);
    if (!hit) return;
    bench.select(
      isSelected(hit) ? bench.selection.filter((each) => !sameRef(each, hit)) : [...bench.selection, hit],
    );
  };

  const tool: Tool = {
    cursor: 'default',
    down(aim) {
      const handle = bench.selection.length === 1 && handleAt(bench, aim);
      const piece = bench.answer.at(aim.at, aim.reach);
      const tried = handle || piece ? null : bench.tried.at(aim.at, aim.reach);
      const hit = handle ? bench.selection[0]! : (piece ?? tried ?? bench.hit(aim));
      const inAnswer = handle ? bench.answer.has(hit!) : piece !== null;
      const subject = inAnswer ? bench.answer : tried ? bench.tried : bench;
      state = { doing: 'press', from: aim, hit, wasSelected: hit !== null && isSelected(hit), subject };
    },
    move(aim) {
      switch (state.doing) {
        case 'nothing':
          return bench.hoverOver(
            bench.answer.at(aim.at, aim.reach) ?? bench.tried.at(aim.at, aim.reach) ?? bench.hit(aim),
          );
        case 'press':
          return moved(state.from, aim) ? begin(state, aim) : undefined;
        case 'drag':
          state.move(aim);
          break;
        case 'lasso':
          state = { ...state, to: aim };
          break;
        case 'pan':
          bench.panBy(aim.x - state.last.x, aim.y - state.last.y);
          state = { ...state, last: aim };
      }
      bench.redrawOverlay();
    },
    up() {
      const was = state;
      state = { doing: 'nothing' };
      if (was.doing === 'press') tap(was);
      if (was.doing === 'drag') was.subject.commit();
      if (was.doing === 'lasso') {
        const caught = thingsWithin(bench.home, bench.view, was.from.at, was.to.at);
        const kept = was.from.shift ? bench.selection : [];
        bench.select([...kept, ...caught.filter((ref) => !kept.some((each) => sameRef(each, ref)))]);
      }
      bench.redrawOverlay();
    },
    doubleClick(aim) {
      const edit = cornerEdit(bench, aim);
      if (edit) bench.run(edit);
    },
    key(input) {
      if (state.doing !== 'nothing') return false;
      return selectionKey(bench, input);
    },
    cancel() {
      const busy = state.doing !== 'nothing';
      if (state.doing === 'drag') state.subject.bail();
      state = { doing: 'nothing' };
      if (busy) bench.redrawOverlay();
      return busy;
    },
    marks() {
      if (state.doing === 'lasso') return [{ mark: 'lasso', from: state.from.at, to: state.to.at }];
      if (state.doing === 'drag') return state.marks();
      return handleMarks(bench);
    },
  };
  return tool;
}

function selectionKey(bench: Bench, input: KeyInput): boolean {
  const { selection } = bench;
  if (selection.length === 0) return false;
  if (input.key === 'Delete' || input.key === 'Backspace') return bench.run(remove(selection));
  if (input.command && input.key.toLowerCase() === 'd') {
    const before = bench.home;
    if (bench.run(duplicate(selection))) bench.select(copiesOf(selection, before, bench.home));
    return true;
  }
  return nudge(bench, input);
}
