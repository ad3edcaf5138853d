import { accessSync, chownSync, constants, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import puppeteer, { type Browser } from 'puppeteer';
import { atEnd } from '../../store/own/at-end.js';
import { ownFolder } from '../../store/own/folder.js';
import { UserError } from '../../user-error.js';
import { type LoweredUser, loweredUser } from './lowered-user.js';
import { type BrowserBinary, packagedChromium, starts } from './packaged.js';

/** A browser of our own, with nothing of the user's in it and no way out to a network. */
export interface OpenBrowser {
  readonly browser: Browser;
  /** What the person who prints should know of it. Sentences. */
  readonly notices: readonly string[];
  /** What `act` gives; throws {@link UserError} where the browser ends meanwhile, killed or out of memory. */
  guard<T>(act: Promise<T>): Promise<T>;
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

/** In order: the one that was named, the packaged one, one of the system. `as`: the user that it is run as, where that is another. */
export async function findBrowser(environment: NodeJS.ProcessEnv = process.env, as?: LoweredUser): Promise<BrowserBinary> {
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
  const packaged = await packagedChromium(as);
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

const WITHOUT_SANDBOX =
  'Printed by root, and this system has no other user to run the browser as: it ran without its sandbox. Print as another user where records come from strangers.';

const ENDED =
  'The browser ended before it had printed, killed or out of memory: nothing was written, and what was there is as it was. Print again.';

/** @throws UserError where none is found or it does not start */
export async function openChromium(): Promise<OpenBrowser> {
  const as = loweredUser();
  const lowered = as && (await openAs(as));
  if (lowered) return lowered;
  const notices = process.getuid?.() === 0 ? [WITHOUT_SANDBOX] : [];
  const binary = await findBrowser();
  try {
    return await launch(binary, notices);
  } catch (error) {
    const why = error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
    throw new UserError(
      `The browser \`${binary.executable}\` does not start: ${why}. Set PUPPETEER_EXECUTABLE_PATH to a Chromium or Chrome that ` +
        'does, then print again.',
    );
  }
}

/** Undefined where that user cannot run it, or the system gives them no sandbox. */
async function openAs(as: LoweredUser): Promise<OpenBrowser | undefined> {
  const binary = await findBrowser(process.env, as);
  if (!starts(binary.executable, binary.environment, as)) return undefined;
  return launch(binary, [], as).catch(() => undefined);
}

async function launch(binary: BrowserBinary, notices: readonly string[], as?: LoweredUser): Promise<OpenBrowser> {
  const profile = ownFolder('profile');
  const { folder } = profile;
  const tidy = (): void => {
    profile.remove();
    if (binary.throwAway) rmSync(binary.throwAway, { recursive: true, force: true, maxRetries: 3 });
  };
  try {
    if (as) chownSync(folder, as.uid, as.uid);
    const args = launchArguments(as?.uid ?? process.getuid?.());
    const browser = await puppeteer.launch({
      // Driven through a pipe that only we hold: whoever reached a port could have the browser read any file of ours.
      pipe: true,
      // The program ends by its own rules, and takes the browser along; see `atEnd`.
      handleSIGINT: false,
      handleSIGTERM: false,
      handleSIGHUP: false,
      env: {
        ...process.env,
        ...binary.environment,
        HOME: folder,
        TMPDIR: folder,
        XDG_CONFIG_HOME: folder,
        XDG_CACHE_HOME: folder,
      },
      protocolTimeout: 600_000,
      ...(as
        ? {
            executablePath: as.command,
            ignoreDefaultArgs: true,
            args: [...as.before, binary.executable, ...puppeteer.defaultArgs({ headless: 'shell', userDataDir: folder, args })],
          }
        : { executablePath: binary.executable, headless: 'shell' as const, userDataDir: folder, args }),
    });
    return opened(browser, notices, tidy);
  } catch (error) {
    tidy();
    throw error;
  }
}

/** Time in which a killed process lets go of its files, ms. */
const LET_GO_MS = 40;

/** The browser and all that it has started, which are a group of their own. */
function endNow(browser: Browser): void {
  const child = browser.process();
  if (!child?.pid || child.exitCode !== null || child.signalCode !== null) return;
  try {
    process.kill(process.platform === 'win32' ? child.pid : -child.pid, 'SIGKILL');
  } catch {
    // Ended in this moment.
  }
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, LET_GO_MS);
}

function opened(browser: Browser, notices: readonly string[], tidy: () => void): OpenBrowser {
  let closing = false;
  const callOff = atEnd(() => endNow(browser));
  const gone = new Promise<never>((_, reject) => {
    browser.once('disconnected', () => reject(new UserError(ENDED)));
  });
  // Only whoever prints hears of it.
  gone.catch(() => undefined);
  return {
    browser,
    notices,
    async guard(act) {
      try {
        return await Promise.race([act, gone]);
      } catch (error) {
        if (error instanceof UserError || browser.connected || closing) throw error;
        throw new UserError(ENDED);
      }
    },
    async close() {
      closing = true;
      try {
        await browser.close().catch(() => undefined);
      } finally {
        endNow(browser);
        callOff();
        tidy();
      }
    },
  };
}
