import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const dist = fileURLToPath(new URL('../../dist/', import.meta.url));

/** What a first visit fetches before the page can be used: page, script, style, upright type; kB after gzip. */
export function firstLoad(): { file: string; kB: number }[] {
  const assets = readdirSync(`${dist}assets`).map((name) => `assets/${name}`);
  const wanted = [
    'index.html',
    ...assets.filter((name) => /(index|first)-.*\.(js|css)$|wght-normal.*woff2$/.test(name)),
  ];
  return wanted.map((file) => {
    const bytes = readFileSync(dist + file);
    return { file, kB: (file.endsWith('woff2') ? bytes.length : gzipSync(bytes).length) / 1000 };
  });
}
