import type { Sheet } from './sheet';

const FAMILY = "'Rosario', system-ui, sans-serif";

export interface Hand {
  size: number;
  weight: number;
  italic?: boolean;
  /** Letter-spacing, em. */
  spaced?: number;
}

/** Sets the type; lining figures come from the canvas element's own style. */
export function setHand(context: CanvasRenderingContext2D, { size, weight, italic, spaced = 0 }: Hand): void {
  context.font = `${italic ? 'italic ' : ''}${weight} ${size}px ${FAMILY}`;
  context.letterSpacing = `${spaced * size}px`;
}

export function widthOf(context: CanvasRenderingContext2D, text: string, hand: Hand): number {
  setHand(context, hand);
  return context.measureText(text).width;
}

export interface Writing {
  text: string;
  x: number;
  y: number;
  hand: Hand;
  fill: string;
  align?: 'left' | 'center' | 'right';
  halo?: { colour: string; width: number; alpha?: number };
}

/** Writes one line with its middle at y; a halo keeps it readable over any ink. */
export function write({ context }: Sheet, { text, x, y, hand, fill, align = 'center', halo }: Writing): void {
  setHand(context, hand);
  context.textAlign = align;
  context.textBaseline = 'alphabetic';
  // The middle of capitals and lining figures lies a third of the size above the base line.
  const base = y + hand.size * 0.335;
  if (halo) {
    context.lineJoin = 'round';
    context.globalAlpha = halo.alpha ?? 1;
    context.strokeStyle = halo.colour;
    context.lineWidth = halo.width * 2;
    context.strokeText(text, x, base);
    context.globalAlpha = 1;
    context.lineJoin = 'miter';
  }
  context.fillStyle = fill;
  context.fillText(text, x, base);
}
