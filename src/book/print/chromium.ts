import { accessSync, constants, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import puppeteer, { type Browser } from 'puppeteer';
import { UserError } from '../../user-error.js';
import { type BrowserBinary, packagedChromium } from './packaged.js';

/** A browser of our own, with nothing of the user's in it and no way out to a network. */
export interface OpenBrowser {
  readonly browser: Browser;
  close(): Promise<void>;
}

const USUAL_NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'chrome-headless-shell'];
const USUAL_PLACES: Partial<Record<NodeJS.Platform, readonly string[]>> = {
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  linux: ['/usr/bin/chromium', '/usr/bin/google-chrome', '/snap/bin/chromium', '/opt/google/chrome/chrome'],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
  ],
};

const NO_BROWSER =
  'No browser to print with: the book is printed by Chromium or Chrome, and none was found. Install one, or set ' +
  'PUPPETEER_EXECUTABLE_PATH to its program file, then print again.';

/** In order: the one that was named, the packaged one, one of the system. */
export async function findBrowser(environment: NodeJS.ProcessEnv = process.env): Promise<BrowserBinary> {
  const named = environment.PUPPETEER_EXECUTABLE_PATH;
  if (named) {
    if (!isProgram(named)) {
      throw new UserError(
        `PUPPETEER_EXECUTABLE_PATH names \`${named}\`, which is not a program that can be run. Set it to the file of Chromium or ` +
          'Chrome, or take it away to use the packaged one.',
      );
    }
    return { executable: named, environment: {} };
  }
  const packaged = await packagedChromium();
  if (packaged) return packaged;
  const onPath = (environment.PATH ?? '')
    .split(path.delimiter)
    .filter((folder) => path.isAbsolute(folder))
    .flatMap((folder) => USUAL_NAMES.map((name) => path.join(folder, process.platform === 'win32' ? `${name}.exe` : name)));
  const system = [...onPath, ...(USUAL_PLACES[process.platform] ?? [])].find(isProgram);
  if (system === undefined) throw new UserError(NO_BROWSER);
  return { executable: system, environment: {} };
}

function isProgram(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}

/** Chromium's own services that would speak to a network, each switched off; requests of the page are refused besides. */
const QUIET = [
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-default-apps',
  '--disable-domain-reliability',
  '--disable-extensions',
  '--disable-gpu',
  '--disable-sync',
  '--font-render-hinting=none',
  '--force-color-profile=srgb',
  '--metrics-recording-only',
  '--no-first-run',
  '--no-pings',
  '--proxy-server=127.0.0.1:9',
];

/** Chromium refuses its sandbox to root; everybody else keeps it. `user` is the process's own number; Windows has none. */
export const launchArguments = (user: number | undefined): string[] => [...QUIET, ...(user === 0 ? ['--no-sandbox'] : [])];

/** @throws UserError where none is found or it does not start */
export async function openChromium(): Promise<OpenBrowser> {
  const binary = await findBrowser();
  const profile = mkdtempSync(path.join(tmpdir(), 'shellbook-profile-'));
  const tidy = () => {
    rmSync(profile, { recursive: true, force: true, maxRetries: 3 });
    if (binary.throwAway) rmSync(binary.throwAway, { recursive: true, force: true, maxRetries: 3 });
  };
  try {
    const browser = await puppeteer.launch({
      executablePath: binary.executable,
      headless: 'shell',
      userDataDir: profile,
      args: launchArguments(process.getuid?.()),
      env: { ...process.env, ...binary.environment, HOME: profile, XDG_CONFIG_HOME: profile, XDG_CACHE_HOME: profile },
      protocolTimeout: 600_000,
    });
    return {
      browser,
      async close() {
        try {
          await browser.close();
        } finally {
          tidy();
        }
      },
    };
  } catch (error) {
    tidy();
    const why = error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
    throw new UserError(
      `The browser \`${binary.executable}\` does not start: ${why}. Set PUPPETEER_EXECUTABLE_PATH to a Chromium or Chrome that ` +
        'does, then print again.',
    );
  }
}
