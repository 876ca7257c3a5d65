import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonFault } from '../../src/home/file/jsonFault';

describe('the place where a text stops being JSON', () => {
  it('is the end of every text that is JSON', () => {
    fc.assert(
      fc.property(fc.json(), fc.constantFrom(undefined, 1, '\t'), (json, indent) => {
        const text = JSON.stringify(JSON.parse(json), null, indent);
        expect(jsonFault(text)).toBe(text.length);
      }),
    );
  });

  it.each([
    ['{"a": oops}', 6],
    ['{"a": 1,}', 8],
    ['{"a" 1}', 5],
    ['{a: 1}', 1],
    ['[1 2]', 3],
    ['[1,, 2]', 3],
    ['[1}', 2],
    ['{"a": [1, 2}', 11],
    ['{"a": "tab\there"}', 6],
    ['{"a": 01}', 7],
    ['{} {}', 3],
    ['{"a": 1', 7],
    ['', 0],
  ])('%j: %i', (text, at) => {
    expect(() => JSON.parse(text) as unknown).toThrow();
    expect(jsonFault(text)).toBe(at);
  });

  it('lies after a start that could still have become JSON', () => {
    fc.assert(
      fc.property(
        fc.json(),
        fc.nat(),
        fc.constantFrom('}', ']', ',', ':', 'x', '"', '\n'),
        (json, n, sign) => {
          const at = n % (json.length + 1);
          const text = json.slice(0, at) + sign + json.slice(at);
          let good = true;
          try {
            JSON.parse(text);
          } catch {
            good = false;
          }
          const fault = jsonFault(text);
          expect(fault).toBeLessThanOrEqual(text.length);
          if (good) expect(fault).toBe(text.length);
        },
      ),
      { numRuns: 500 },
    );
  });
});
