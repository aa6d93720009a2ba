/**
 * A Chromium for the browser tests: found on the machine, or installed once. Where there is none and none can be
 * installed, that is said loudly and the tests are skipped.
 */
import { execFile } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { type Browser, chromium } from 'playwright-core';
import { lock } from 'proper-lockfile';

const run = promisify(execFile);
const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
/** Where the program lies inside a folder of Playwright's cache, on each system. */
const IN_CACHE = [
  'chrome-linux/chrome',
  'chrome-linux64/chrome',
  'chrome-linux/headless_shell',
  'chrome-headless-shell-linux64/chrome-headless-shell',
  'chrome-mac/Chromium.app/Contents/MacOS/Chromium',
  'chrome-win/chrome.exe',
];
/** An installation takes minutes on a slow line, and hangs where there is none. */
const INSTALL_MS = 240_000;

function caches(): string[] {
  const folders = [
    process.env.PLAYWRIGHT_BROWSERS_PATH,
    join(homedir(), '.cache/ms-playwright'),
    join(homedir(), 'Library/Caches/ms-playwright'),
    process.env.LOCALAPPDATA && join(process.env.LOCALAPPDATA, 'ms-playwright'),
  ];
  return folders
    .filter((folder) => folder !== undefined && folder !== '' && existsSync(folder))
    .flatMap((folder) => readdirSync(folder as string).map((name) => join(folder as string, name)))
    .filter((folder) => /chromium/.test(folder));
}

/** The first Chromium there is: CHROMIUM_PATH, the usual places, the PATH, Playwright's caches. */
export function findChromium(): string | undefined {
  const path = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  const places = [
    process.env.CHROMIUM_PATH ?? '',
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    ...NAMES.flatMap((name) => path.map((folder) => join(folder, name))),
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    ...caches().flatMap((folder) => IN_CACHE.map((program) => join(folder, program))),
  ];
  return places.find((place) => place !== '' && existsSync(place));
}

/** Installs one: the system's package as root on Debian, else Playwright's own build. */
async function install(): Promise<void> {
  const root = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (root) {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    await run('apt-get', ['update'], { timeout: INSTALL_MS, env });
    await run('apt-get', ['install', '-y', 'chromium'], { timeout: INSTALL_MS, env });
    return;
  }
  const cli = fileURLToPath(new URL('../../node_modules/playwright-core/cli.js', import.meta.url));
  await run(process.execPath, [cli, 'install', 'chromium'], { timeout: INSTALL_MS });
}

/** The path of a Chromium, installed if need be; undefined, and a loud sentence, where there is none to be had. */
export async function getChromium(): Promise<string | undefined> {
  const found = findChromium();
  if (found) return found;
  // Several test files may come here at once; one installs, the others wait for it.
  const release = await lock(tmpdir(), {
    lockfilePath: join(tmpdir(), 'snackstop-chromium.lock'),
    stale: INSTALL_MS,
    retries: { retries: 300, factor: 1, minTimeout: 1000 },
  });
  try {
    if (!findChromium()) await install();
  } catch (error) {
    console.error(
      `\nNO CHROMIUM: none was found and none could be installed (${(error as Error).message.split('\n')[0]}).`,
    );
  } finally {
    await release();
  }
  const installed = findChromium();
  if (!installed)
    console.error(
      'THE BROWSER TESTS ARE SKIPPED. Install Chromium, or set CHROMIUM_PATH to one, and run them again.\n',
    );
  return installed;
}

/** Starts it. */
export function launch(executablePath: string): Promise<Browser> {
  return chromium.launch({ executablePath, args: FLAGS });
}
