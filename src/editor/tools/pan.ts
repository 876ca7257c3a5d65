import type { Tool } from './tool';

/** The hand. The pointer moves the paper before any tool hears of it, so there is nothing left to do. */
export function createPanTool(): Tool {
  return {
    cursor: 'grab',
    down: () => {},
    move: () => {},
    up: () => {},
    cancel: () => false,
    marks: () => [],
  };
}
