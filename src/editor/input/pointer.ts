import type { Editor, PointerInput, ToolName } from '../editor';
import { isTap } from '../tools/moved';
import { pinchBetween } from './pinch';

/** Where pointer events go once it is clear what they are. */
export interface PointerSink {
  readonly tool: ToolName;
  /** The tool in hand only takes taps: what a finger drags meanwhile is the paper. */
  readonly taps: boolean;
  down(input: PointerInput): void;
  move(input: PointerInput, pressed: boolean): void;
  up(input: PointerInput): void;
  doubleClick(input: PointerInput): void;
  /** Two taps of a finger on one spot; the tool has had both. */
  doubleTap(input: PointerInput): void;
  /** The gesture under way is given up. */
  bail(): void;
  panBy(dx: number, dy: number): void;
  zoomBy(factor: number, x: number, y: number): void;
  /** The pointer rests over the plan, or has left it. */
  rests(input: PointerInput | null): void;
}

type Mode = 'idle' | 'tool' | 'pan' | 'pinch' | 'spent';

/** How far one notch of a wheel zooms: six notches double. */
const NOTCH = 0.00115;

/** Two taps within so many milliseconds and CSS pixels are one double tap. */
const DOUBLE = { time: 350, apart: 30 };

export interface Pointer extends Pick<Editor, 'pointer'> {
  /** While the space bar is down the pointer moves the paper. */
  holdPan(held: boolean): void;
  readonly panning: boolean;
  /** The pointer is down for the tool. */
  readonly pressed: boolean;
  /** The press counts no more: what follows until the pointer is lifted is nobody's. */
  abandon(): void;
}

/** Sorts raw pointer events: one finger or button is the tool's, two fingers and the middle button are the camera's. */
export function createPointer(sink: PointerSink): Pointer {
  const downs = new Map<number, PointerInput>();
  let mode: Mode = 'idle';
  let owner = -1;
  let spaceHeld = false;
  /** Where the press under way began, and the tap before it. */
  let pressed: PointerInput | null = null;
  let tapped: PointerInput | null = null;

  const finish = (input: PointerInput) => {
    downs.delete(input.id);
    // After a pinch the finger that stays moves nothing: lifting two fingers is never one movement.
    if (mode === 'pinch' && downs.size > 0) mode = 'spent';
    if (downs.size === 0) mode = 'idle';
  };

  const tap = (input: PointerInput) => {
    const isDouble =
      tapped !== null &&
      input.time - tapped.time <= DOUBLE.time &&
      Math.hypot(input.x - tapped.x, input.y - tapped.y) <= DOUBLE.apart;
    const isOne = pressed !== null && isTap(pressed, input);
    if (isOne && isDouble) sink.doubleTap(input);
    tapped = isOne && !isDouble ? input : null;
  };

  return {
    holdPan(held) {
      spaceHeld = held;
    },
    get panning() {
      return spaceHeld || mode === 'pan';
    },
    get pressed() {
      return mode === 'tool';
    },
    abandon() {
      if (mode !== 'idle') mode = 'spent';
    },
    pointer: {
      down(input) {
        downs.set(input.id, input);
        if (downs.size > 1) {
          if (mode === 'tool') sink.bail();
          mode = input.type === 'touch' ? 'pinch' : 'spent';
          return;
        }
        owner = input.id;
        pressed = input;
        if (input.button === 1 || spaceHeld || sink.tool === 'pan') mode = 'pan';
        else if (input.button === 0) {
          mode = 'tool';
          sink.down(input);
        } else mode = 'spent';
      },
      move(input) {
        const before = downs.get(input.id);
        if (!before) {
          if (mode === 'idle') {
            sink.rests(input);
            sink.move(input, false);
          }
          return;
        }
        if (mode === 'pinch') {
          const other = [...downs.values()].find((each) => each.id !== input.id);
          if (other) {
            const { dx, dy, factor, x, y } = pinchBetween(before, input, other);
            sink.panBy(dx, dy);
            sink.zoomBy(factor, x, y);
          }
        } else if (
          mode === 'tool' &&
          sink.taps &&
          input.type === 'touch' &&
          pressed &&
          !isTap(pressed, input)
        ) {
          sink.bail();
          mode = 'pan';
          sink.panBy(input.x - pressed.x, input.y - pressed.y);
        } else if (mode === 'pan') sink.panBy(input.x - before.x, input.y - before.y);
        else if (mode === 'tool' && input.id === owner) {
          sink.rests(input);
          sink.move(input, true);
        }
        downs.set(input.id, input);
      },
      up(input) {
        if (!downs.has(input.id)) return;
        const was = mode;
        finish(input);
        if (was === 'tool' && input.id === owner) {
          sink.up(input);
          if (input.type === 'touch') tap(input);
        }
        if (input.type === 'touch' && downs.size === 0) sink.rests(null);
      },
      cancel(input) {
        if (!downs.has(input.id)) return;
        if (mode === 'tool') sink.bail();
        finish(input);
      },
      leave() {
        if (downs.size === 0) sink.rests(null);
      },
      wheel(input) {
        if (input.shift && !input.pinch) sink.panBy(-(input.dx || input.dy), 0);
        // A pinch on a touch pad comes as small steps of a wheel and wants a firmer hand.
        else sink.zoomBy(Math.exp(-input.dy * (input.pinch ? 8 * NOTCH : NOTCH)), input.x, input.y);
      },
      doubleClick(input) {
        if (mode === 'idle') sink.doubleClick(input);
      },
    },
  };
}
