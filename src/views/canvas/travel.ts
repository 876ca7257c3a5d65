const MILLISECONDS = 400;

/**
 * How far ghosts have come along their ways, 0…1, eased out: they go once when another answer is shown. Where motion
 * is unwelcome they are there at once.
 */
export function createTravel(isStill: () => boolean): (answer: unknown, now: number) => number {
  let shown: unknown = null;
  let started = -Infinity;
  return (answer, now) => {
    if (answer !== shown) {
      shown = answer;
      started = answer === null || isStill() ? -Infinity : now;
    }
    const left = 1 - Math.min(1, (now - started) / MILLISECONDS);
    return 1 - left ** 3;
  };
}
