// Installs by the lock file where node_modules is absent or older than it. Plain JavaScript: it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const home = fileURLToPath(new URL('..', import.meta.url));
const age = (path) => statSync(home + path, { throwIfNoEntry: false })?.mtimeMs ?? 0;

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(
    `Stillroom needs Node 20.19 or newer; this is Node ${process.versions.node}. Install a newer Node and try again.`,
  );
  process.exit(1);
}

if (age('node_modules/.package-lock.json') < age('package-lock.json')) {
  console.error('Installing the packages of the lock file …');
  const { status } = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: home,
    stdio: ['ignore', 'ignore', 'inherit'],
    shell: process.platform === 'win32',
    env: { ...process.env, PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: '1' },
  });
  if (status !== 0) {
    console.error(
      'The packages could not be installed: see the lines above. A connection to the npm registry is needed once.',
    );
    process.exit(status ?? 1);
  }
}
