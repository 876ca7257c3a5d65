import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const source = fileURLToPath(new URL('../src', import.meta.url));

/** Which layers each layer may import; itself always. */
const MAY_IMPORT: Record<string, string[]> = {
  engine: [],
  home: ['engine'],
  words: ['engine', 'home'],
  editor: ['engine', 'home', 'words'],
  views: ['engine', 'home', 'words', 'editor'],
  cli: ['engine', 'home', 'words'],
  main: ['engine', 'home', 'words', 'editor', 'views'],
};

/** Packages that belong to one place only; the others are free. */
const ONLY_IN: Record<string, string> = {
  zod: 'home/',
  svelte: 'views/',
  konva: 'views/canvas/',
  'd3-contour': 'engine/contours/',
  immer: 'editor/',
  idb: 'editor/storage/',
  papaparse: 'cli/',
  'clipper2-ts': 'engine/geometry/',
};

interface Import {
  from: string;
  to: string;
}

function importsOf(path: string): string[] {
  const text = readFileSync(join(source, path), 'utf8');
  const found = text.matchAll(
    /(?:^|[\s;}>])(?:import|export)\s[^'"]*?from\s*['"]([^'"]+)['"]|import\s*\(?\s*['"]([^'"]+)['"]|new URL\(\s*['"]([^'"]+)['"]/g,
  );
  return [...found].map((match) => (match[1] ?? match[2] ?? match[3])!);
}

const files = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => /\.(ts|svelte)$/.test(path));

const imports: Import[] = files.flatMap((from) =>
  importsOf(from).map((to) => ({
    from,
    to: to.startsWith('.')
      ? relative(source, normalize(join(source, dirname(from), to))).replaceAll('\\', '/')
      : to,
  })),
);

const layerOf = (path: string) => (path.includes('/') ? path.slice(0, path.indexOf('/')) : 'main');
const packageOf = (path: string) =>
  path
    .split('/')
    .slice(0, path.startsWith('@') ? 2 : 1)
    .join('/');
const isOurs = (path: string) =>
  path.split('/')[0]! in MAY_IMPORT || files.some((file) => file.startsWith(path));

test('the reader of imports finds the arrows that are there', () => {
  expect(imports).toContainEqual({ from: 'engine/assess.ts', to: 'engine/grid/grid' });
  expect(imports.length).toBeGreaterThan(files.length);
});

test('imports run one way: engine ← home ← editor ← views ← main, words beside', () => {
  const wrong = imports.filter(({ from, to }) => {
    if (!isOurs(to)) return false;
    const [here, there] = [layerOf(from), layerOf(to)];
    return here !== there && !MAY_IMPORT[here]?.includes(there);
  });
  expect(wrong).toEqual([]);
});

test('packages stay in the place that owns them', () => {
  const wrong = imports.filter(({ from, to }) => {
    const place = ONLY_IN[packageOf(to)];
    return !isOurs(to) && place !== undefined && !from.startsWith(place) && from !== 'main.ts';
  });
  expect(wrong).toEqual([]);
});

test('no file is longer than 400 lines', () => {
  const long = files.filter((path) => readFileSync(join(source, path), 'utf8').split('\n').length > 400);
  expect(long).toEqual([]);
});
