// Builds, serves the result on this machine, prints the address and opens a browser where there is one.
import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';

const configFile = fileURLToPath(new URL('../vite.config.ts', import.meta.url));
const hasScreen =
  process.platform === 'darwin' ||
  process.platform === 'win32' ||
  Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);

await build({ configFile, logLevel: 'warn' });
const server = await preview({
  configFile,
  logLevel: 'warn',
  preview: { open: hasScreen && !process.env.CI },
});
console.log(
  `\n  Stillroom is served at ${server.resolvedUrls.local[0]}\n  Nothing you enter leaves this machine. Stop with Ctrl+C.\n`,
);
