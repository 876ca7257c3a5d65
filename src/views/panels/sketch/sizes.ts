import type { PieceKind } from '../../../home/home';

/** A piece as it is picked up from the key. */
export interface PieceSize {
  kind: PieceKind;
  name: string;
  /** Width, length in metres. */
  size: [number, number];
  /** For whom the size is usual: shown beside the size. */
  usual: string;
}

const inches = (width: number, length: number): [number, number] => [width * 0.0254, length * 0.0254];

/**
 * Mattress sizes sold in the United Kingdom, on the continent and in the United States; cots, desks and seats are this
 * project's choice. Frames are larger: every size stays editable.
 */
export const PIECE_SIZES: readonly PieceSize[] = [
  { kind: 'bed', name: 'Single bed', size: [0.9, 1.9], usual: 'single, UK' },
  { kind: 'bed', name: 'Single bed', size: [0.8, 2], usual: 'single, narrow' },
  { kind: 'bed', name: 'Single bed', size: [0.9, 2], usual: 'single' },
  { kind: 'bed', name: 'Single bed', size: [1, 2], usual: 'single, wide' },
  { kind: 'bed', name: 'Single bed', size: inches(39, 75), usual: 'single, US' },
  { kind: 'bed', name: 'Double bed', size: [1.4, 2], usual: 'double' },
  { kind: 'bed', name: 'Double bed', size: [1.2, 1.9], usual: 'small double, UK' },
  { kind: 'bed', name: 'Double bed', size: [1.35, 1.9], usual: 'double, UK' },
  { kind: 'bed', name: 'Double bed', size: [1.5, 2], usual: 'wide double, UK' },
  { kind: 'bed', name: 'Double bed', size: [1.6, 2], usual: 'wide double' },
  { kind: 'bed', name: 'Double bed', size: [1.8, 2], usual: 'widest double' },
  { kind: 'bed', name: 'Double bed', size: inches(54, 75), usual: 'double, US' },
  { kind: 'bed', name: 'Double bed', size: inches(60, 80), usual: 'wide double, US' },
  { kind: 'bed', name: 'Double bed', size: inches(76, 80), usual: 'widest double, US' },
  { kind: 'cot', name: 'Cot', size: [0.6, 1.2], usual: 'cot' },
  { kind: 'cot', name: 'Cot', size: [0.7, 1.4], usual: 'large cot' },
  { kind: 'desk', name: 'Desk', size: [1.2, 0.6], usual: 'desk' },
  { kind: 'desk', name: 'Desk', size: [1.6, 0.8], usual: 'large desk' },
  { kind: 'seat', name: 'Armchair', size: [0.8, 0.8], usual: 'armchair' },
  { kind: 'seat', name: 'Sofa', size: [1.8, 0.9], usual: 'sofa' },
  { kind: 'other', name: 'Table', size: [1.4, 0.8], usual: 'table' },
  { kind: 'other', name: 'Chest', size: [1, 0.5], usual: 'chest of drawers' },
];
