import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
/** Writes into the service worker which files make up this build, and a version made from their content. */
function keptOffline(): Plugin {
  let output = '';
  return {
    name: 'kept-offline',
    apply: 'build',
    configResolved(config) {
      output = resolve(config.root, config.build.outDir);
    },
    writeBundle() {
      const worker = join(output, 'service-worker.js');
      const files = readdirSync(output, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && entry.name !== 'service-worker.js')
        .map((entry) => join(entry.parentPath, entry.name))
        .sort();
      const hash = createHash('sha256');
      for (const file of files) hash.update(readFileSync(file));
      const list = files.map((file) => `./${file.slice(output.length + 1).replaceAll('\\', '/')}`);
      const text = readFileSync(worker, 'utf8')
        .replace('__VERSION__', hash.digest('hex').slice(0, 12))
        .replace('__FILES__', JSON.stringify(list));
      writeFileSync(worker, text);
    },
  };
}

export default defineConfig({
  root: here('src'),
  publicDir: here('static'),
  base: './',
  build: {
    outDir: here('dist'),
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1000,
    rolldownOptions: {
      output: {
        // What several chunks share comes with the page: its name says so to what weighs the first load.
        chunkFileNames: ({ isDynamicEntry }) => `assets/${isDynamicEntry ? '' : 'first-'}[name]-[hash].js`,
      },
    },
  },
  worker: { format: 'es' },
  plugins: [svelte({ configFile: false }), keptOffline()],
  test: {
    root: here('.'),
    include: ['tests/**/*.test.ts'],
    environment: 'node',
    testTimeout: 30_000,
  },
});
