import { describe, expect, it } from 'vitest';
import { parseOptions } from '../../src/cli/options';

const parsed = (...argv: string[]) => {
  const result = parseOptions(argv);
  if (!result.ok) throw new Error(result.problems.join('\n'));
  return result.options;
};
const problems = (...argv: string[]) => {
  const result = parseOptions(argv);
  return result.ok ? [] : result.problems;
};

describe('options', () => {
  it('take their values after a space or an equals sign', () => {
    expect(parsed('a.home.json', '--method', 'kriging', '--round=b', '--table')).toMatchObject({
      file: 'a.home.json',
      method: 'kriging',
      round: 'b',
      table: true,
      arrange: false,
    });
  });

  it('read places, negative ones too', () => {
    expect(parsed('f', '--at', '2.5,1.5', '--at=-3,2', '--at', '-1,-2,l2').at).toEqual([
      { x: 2.5, y: 1.5, level: null, height: null },
      { x: -3, y: 2, level: null, height: null },
      { x: -1, y: -2, level: 'l2', height: null },
    ]);
  });

  it('read quantities in the units people write', () => {
    expect(parsed('f', '--target', '2 mG').target).toBeCloseTo(0.2, 12);
    expect(parsed('f', '--height=60cm').height).toBeCloseTo(0.6, 12);
    expect(parsed('f', '--grid', '0.5').grid).toBe(0.5);
  });

  it.each([
    [['f', '--method', 'magic'], '--method “magic”'],
    [['f', '--next', 'many'], '--next “many”'],
    [['f', '--next', '0'], 'from 1 to 50'],
    [['f', '--next', '2.5'], '--next “2.5”'],
    [['f', '--for', 'r1'], 'Add --next'],
    [['f', '--for', 'p1', '--next', '3', '--arrange'], '--for with --arrange'],
    [['f', '--at', '2.5'], '--at “2.5”'],
    [['f', '--at', '1,2,l1,4'], '--at “1,2,l1,4”'],
    [['f', '--at', '1,x'], '--at “1,x”'],
    [['f', '--target', '0'], '--target “0”'],
    [['f', '--target', '-1'], 'below zero'],
    [['f', '--height', 'tall'], 'Not a length'],
    [['f', '--grid', '0.001'], 'finer than'],
    [['f', '--shiny'], 'not an option'],
    [['f', '--level'], 'needs a value'],
    [['f', '--level', '--table'], 'needs a value'],
    [['f', '--table=yes'], 'takes no value'],
    [['f', 'g'], 'a second file'],
    [['f', '--cautious'], 'Add --arrange'],
    [[], 'No home file'],
  ])('%j is one line that says what to do', (argv, part) => {
    const found = problems(...argv);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(part);
    expect(found[0]).not.toContain('\n');
  });

  it('names every problem at once', () => {
    expect(problems('--shiny', '--method', 'magic')).toHaveLength(3);
  });

  it('help asks for no file', () => {
    expect(parsed('--help').help).toBe(true);
  });
});

describe('fault: quantities beyond any home were taken', () => {
  it.each([
    [['f', '--height', '51'], '--height “51”'],
    [['f', '--target', '2e6'], '--target “2e6”'],
    [['f', '--target', '0'], '--target “0”'],
    [['f', '--at', '1001,0'], '--at “1001,0”'],
    [['f', '--at=0,-1e9'], '--at “0,-1e9”'],
  ])('%j', (argv, start) => {
    const [problem] = problems(...argv);
    expect(problem).toMatch(/\. Write /);
    expect(problem!.startsWith(start)).toBe(true);
  });
});
