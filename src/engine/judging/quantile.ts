/** Linear between order statistics (Hyndman & Fan 1996, definition 7). */
export function quantile(ascending: Float64Array, share: number): number {
  const at = share * (ascending.length - 1);
  const low = Math.floor(at);
  const high = Math.min(low + 1, ascending.length - 1);
  return ascending[low] + (at - low) * (ascending[high] - ascending[low]);
}
