/**
 * Places along a line kept at least `least` apart, each as near as can be to where it belongs (least squares), within
 * [low, high] where all fit. Order is kept; the answer is in the order given. Pooling of neighbours: places that would
 * overlap move as one block to the mean of where they want to be.
 */
export function pushApart(wanted: readonly number[], least: number, low: number, high: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  // With the spacing taken out, places need only not decrease.
  const blocks: { sum: number; count: number }[] = [];
  order.forEach((which, rank) => {
    blocks.push({ sum: wanted[which]! - rank * least, count: 1 });
    while (blocks.length > 1 && mean(blocks[blocks.length - 2]!) > mean(blocks[blocks.length - 1]!)) {
      const upper = blocks.pop()!;
      const lower = blocks[blocks.length - 1]!;
      lower.sum += upper.sum;
      lower.count += upper.count;
    }
  });
  const end = high - (wanted.length - 1) * least;
  const places = new Array<number>(wanted.length);
  let rank = 0;
  for (const block of blocks) {
    const level = Math.max(low, Math.min(end, mean(block)));
    for (let k = 0; k < block.count; k++, rank++) places[order[rank]!] = level + rank * least;
  }
  return places;
}

const mean = ({ sum, count }: { sum: number; count: number }): number => sum / count;
