import { defineConfig } from '@playwright/test';
import { findBrowser } from '../support/browser';

const browser = await findBrowser();
const port = 4179;

/** Whole walks through the built page, in a real browser, at desktop and phone size. */
export default defineConfig({
  testDir: '.',
  testMatch: '*.walk.ts',
  outputDir: '../../test-results',
  workers: 2,
  fullyParallel: true,
  timeout: 90_000,
  reporter: [['list']],
  use: {
    baseURL: `http://localhost:${port}/`,
    launchOptions: {
      executablePath: browser.executablePath,
      env: { ...(process.env as Record<string, string>), ...browser.env },
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
    viewport: { width: 1440, height: 900 },
    trace: 'off',
  },
  projects: [
    { name: 'desktop', testIgnore: /phone/ },
    {
      name: 'phone',
      testMatch: /phone.*\.walk\.ts/,
      use: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
    },
  ],
  webServer: {
    command: `node node_modules/vite/bin/vite.js preview --port ${port} --strictPort`,
    cwd: '../..',
    url: `http://localhost:${port}/`,
    reuseExistingServer: false,
  },
});
