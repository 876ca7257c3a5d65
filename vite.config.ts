import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('src'),
  publicDir: here('static'),
  base: './',
  build: { outDir: here('dist'), emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
  worker: { format: 'es' },
  plugins: [svelte({ configFile: false })],
  test: {
    root: here('.'),
    include: ['tests/**/*.test.ts'],
    environment: 'node',
    testTimeout: 30_000,
  },
});
