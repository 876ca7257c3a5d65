/** One call of a painter on its context, with the colours set at that moment. */
export interface Call {
  name: string;
  given: unknown[];
  fillStyle: unknown;
  strokeStyle: unknown;
  lineWidth: unknown;
}

/** A drawing context that draws nothing and notes every call. */
export function recordedContext(): { context: CanvasRenderingContext2D; calls: Call[] } {
  const calls: Call[] = [];
  const values: Record<string, unknown> = {};
  const context = new Proxy(values, {
    get(_, name: string) {
      if (name in values) return values[name];
      return (...given: unknown[]) => {
        const { fillStyle, strokeStyle, lineWidth } = values;
        calls.push({ name, given, fillStyle, strokeStyle, lineWidth });
        return name === 'measureText' ? { width: String(given[0]).length * 6 } : undefined;
      };
    },
    set(_, name: string, value) {
      values[name] = value;
      return true;
    },
  });
  return { context: context as unknown as CanvasRenderingContext2D, calls };
}
