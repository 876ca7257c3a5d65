// Every check there is, one after the other; stops at the first that fails and says which.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const home = fileURLToPath(new URL('..', import.meta.url));
const bin = (path, ...args) => ({ command: [process.execPath, `${home}node_modules/${path}`, ...args] });

const steps = [
  { name: 'types', ...bin('typescript/bin/tsc', '--noEmit') },
  {
    name: 'components',
    ...bin(
      'svelte-check/bin/svelte-check',
      '--fail-on-warnings',
      '--tsconfig',
      './tsconfig.json',
      '--output',
      'human',
    ),
  },
  { name: 'lint', ...bin('eslint/bin/eslint.js', '-c', '.eslint.config.js', '--max-warnings', '0', '.') },
  { name: 'format', ...bin('prettier/bin/prettier.cjs', '--check', '.', '--log-level', 'warn') },
  { name: 'unused', ...bin('knip/bin/knip.js', '-c', '.knip.json') },
  { name: 'unit tests', ...bin('vitest/vitest.mjs', 'run', '--reporter=dot') },
  { name: 'build', ...bin('vite/bin/vite.js', 'build', '--logLevel', 'warn') },
  { name: 'size', ...bin('size-limit/bin.js') },
  {
    name: 'walks in a browser',
    ...bin('@playwright/test/cli.js', 'test', '-c', 'tests/walks/walks.config.ts'),
  },
];

const env = process.stdout.isTTY ? process.env : { ...process.env, NO_COLOR: '1' };
const times = [];
for (const step of steps) {
  console.log(`\n— ${step.name}`);
  const began = Date.now();
  const { status } = spawnSync(step.command[0], step.command.slice(1), { cwd: home, stdio: 'inherit', env });
  times.push(`${step.name} ${((Date.now() - began) / 1000).toFixed(0)} s`);
  if (status !== 0) {
    console.error(`\nFailed: ${step.name}. The lines above say why. (${times.join(', ')})`);
    process.exit(1);
  }
}
console.log(`\nAll passed: ${times.join(', ')}.`);
