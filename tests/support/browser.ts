import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { fileURLToPath } from 'node:url';
import { brotliDecompressSync } from 'node:zlib';
import { extract } from 'tar-fs';

export interface FoundBrowser {
  executablePath: string;
  env: Record<string, string>;
}

const INSTALLED =
  process.platform === 'darwin'
    ? [
        '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
        '/Applications/Chromium.app/Contents/MacOS/Chromium',
        '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
      ]
    : process.platform === 'win32'
      ? [
          'C:/Program Files/Google/Chrome/Application/chrome.exe',
          'C:/Program Files (x86)/Microsoft/Edge/Application/msedge.exe',
        ]
      : ['google-chrome-stable', 'google-chrome', 'chromium', 'chromium-browser', 'microsoft-edge'];

/** A browser that answers `--version`; a stub of a package manager does not. */
function answers(path: string): boolean {
  try {
    return /\d+\.\d+/.test(
      execFileSync(path, ['--version'], { stdio: ['ignore', 'pipe', 'ignore'], timeout: 20_000 }).toString(),
    );
  } catch {
    return false;
  }
}

/** The full path of a command on the PATH, since a launcher wants one. */
function onPath(command: string): string | null {
  if (command.includes('/')) return existsSync(command) ? command : null;
  const folder = (process.env.PATH ?? '')
    .split(':')
    .find((entry) => entry && existsSync(join(entry, command)));
  return folder ? join(folder, command) : null;
}

/** Unpacks the browser that travels as a package, once; a rename at the end makes half-done work invisible. */
async function unpacked(): Promise<FoundBrowser> {
  const cache = fileURLToPath(new URL('../../node_modules/.cache/browser', import.meta.url));
  const packed = join(createRequire(import.meta.url).resolve('@sparticuz/chromium'), '../../../bin');
  if (!existsSync(cache)) {
    const half = `${cache}-${process.pid}`;
    mkdirSync(half, { recursive: true });
    const open = (file: string) => brotliDecompressSync(readFileSync(join(packed, file)));
    writeFileSync(join(half, 'chromium'), open('chromium.br'), { mode: 0o755 });
    for (const file of ['al2023.tar.br', 'fonts.tar.br', 'swiftshader.tar.br']) {
      await pipeline(Readable.from([open(file)]), extract(half));
    }
    writeFileSync(
      join(half, 'fonts.conf'),
      `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${cache}/fonts</dir><cachedir>${cache}/fontcache</cachedir></fontconfig>`,
    );
    try {
      renameSync(half, cache);
    } catch {
      rmSync(half, { recursive: true, force: true });
    }
  }
  return {
    executablePath: join(cache, 'chromium'),
    env: {
      LD_LIBRARY_PATH: [join(cache, 'lib'), process.env.LD_LIBRARY_PATH].filter(Boolean).join(':'),
      ...(existsSync('/etc/fonts/fonts.conf') ? {} : { FONTCONFIG_FILE: join(cache, 'fonts.conf') }),
    },
  };
}

/**
 * A browser to walk with: `CHROME_PATH`, else an installed one, else the one inside an npm package (Linux, x64).
 * Throws one sentence that says what to install.
 */
export async function findBrowser(): Promise<FoundBrowser> {
  const given = process.env.CHROME_PATH;
  if (given) {
    if (answers(given)) return { executablePath: given, env: {} };
    throw new Error(
      `CHROME_PATH is “${given}”, which is no browser that runs. Correct it, or unset it to let one be found.`,
    );
  }
  for (const command of INSTALLED) {
    const path = onPath(command);
    if (path && answers(path)) return { executablePath: path, env: {} };
  }
  if (process.platform === 'linux' && process.arch === 'x64') return unpacked();
  throw new Error(
    'No browser was found for the walks. Install Chrome, Chromium or Edge, or set CHROME_PATH to one.',
  );
}
