import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/**
 * What a script of this folder prints as JSON when it is run as the page runs: bundled. A runner of single files names every
 * function it makes, which in the inner loops takes a third of the time.
 */
export async function asBuilt<Answer>(script: string, ...args: (string | number)[]): Promise<Answer> {
  const outDir = fileURLToPath(new URL('../../node_modules/.cache/bench/', import.meta.url));
  await build({
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: fileURLToPath(new URL(script, import.meta.url)),
      outDir,
      target: 'es2022',
      rolldownOptions: { output: { entryFileNames: 'bench.mjs' } },
    },
  });
  const printed = execFileSync(process.execPath, [`${outDir}bench.mjs`, ...args.map(String)], {
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  return JSON.parse(printed) as Answer;
}
