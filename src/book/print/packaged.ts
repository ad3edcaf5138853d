import { spawnSync } from 'node:child_process';
import { createReadStream, createWriteStream, existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createBrotliDecompress } from 'node:zlib';
import { extract } from 'tar-fs';
import { privateFolder, sharedFolder } from './cache.js';
import type { LoweredUser } from './lowered-user.js';

/** A browser that can be started, with what its surroundings must hold. */
export interface BrowserBinary {
  readonly executable: string;
  readonly environment: Readonly<Record<string, string>>;
  /** Folder to take away after use; absent where the browser stays for the next time. */
  readonly throwAway?: string;
}

/** Unpacked files are ours, whoever packed them. The package's own types lack this option. */
const KEEP_OWNER = { chown: false, readable: true } as object;

const require = createRequire(import.meta.url);

/**
 * The Chromium that comes as a package for Linux on x64; undefined elsewhere or where the package was left out. `as`: unpacked where that
 * user can read it, and tried as them.
 */
export async function packagedChromium(as?: LoweredUser): Promise<BrowserBinary | undefined> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  const home = packageFolder('@sparticuz/chromium');
  if (home === undefined || !existsSync(path.join(home, 'bin', 'chromium.br'))) return undefined;
  const { version } = JSON.parse(readFileSync(path.join(home, 'package.json'), 'utf8')) as { version: string };
  const shared = as && sharedFolder(`chromium-${version}`);
  if (as && shared === undefined) return undefined;
  const { folder, temporary } =
    shared === undefined ? privateFolder(`chromium-${version}`) : { folder: shared, temporary: false };
  const executable = path.join(folder, 'chromium');
  await unpackFile(path.join(home, 'bin', 'chromium.br'), executable);
  await unpackTar(path.join(home, 'bin', 'fonts.tar.br'), path.join(folder, 'fallback'));
  const environment: Record<string, string> = { FONTCONFIG_FILE: fontSettings(folder) };
  if (!starts(executable, environment, as)) {
    await unpackTar(path.join(home, 'bin', 'al2023.tar.br'), path.join(folder, 'libraries'));
    const own = path.join(folder, 'libraries', 'lib');
    environment.LD_LIBRARY_PATH = process.env.LD_LIBRARY_PATH ? `${own}:${process.env.LD_LIBRARY_PATH}` : own;
    if (!starts(executable, environment, as)) return undefined;
  }
  return { executable, environment, ...(temporary ? { throwAway: folder } : {}) };
}

/** Folder of an installed package, whatever its `exports` show. */
export function packageFolder(name: string): string | undefined {
  for (const modules of require.resolve.paths(name) ?? []) {
    const folder = path.join(modules, name);
    if (existsSync(path.join(folder, 'package.json'))) return folder;
  }
  return undefined;
}

/** Unpacks under a name of its own, then renames: two processes at once, or one that is broken off, leave a whole file or none. */
async function unpackFile(packed: string, target: string): Promise<void> {
  if (existsSync(target)) return;
  const unfinished = `${target}.${process.pid}`;
  try {
    await pipeline(createReadStream(packed), createBrotliDecompress(), createWriteStream(unfinished, { mode: 0o755 }));
    renameSync(unfinished, target);
  } finally {
    rmSync(unfinished, { force: true });
  }
}

async function unpackTar(packed: string, target: string): Promise<void> {
  if (existsSync(target) || !existsSync(packed)) return;
  const unfinished = `${target}.${process.pid}`;
  try {
    await pipeline(createReadStream(packed), createBrotliDecompress(), extract(unfinished, KEEP_OWNER));
    try {
      renameSync(unfinished, target);
    } catch (error) {
      // Another process was faster; its folder is as good as ours.
      if (!existsSync(target)) throw error;
    }
  } finally {
    rmSync(unfinished, { force: true, recursive: true });
  }
}

/** The book brings its own faces; these are only for signs that they lack. */
function fontSettings(folder: string): string {
  const file = path.join(folder, 'fonts.conf');
  const text = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${path.join(folder, 'fallback', 'fonts')}</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir>${path.join(folder, 'fonts-cache')}</cachedir>
  <cachedir prefix="xdg">fontconfig</cachedir>
</fontconfig>
`;
  if (!existsSync(file)) {
    const unfinished = `${file}.${process.pid}`;
    writeFileSync(unfinished, text, { mode: 0o644 });
    renameSync(unfinished, file);
  }
  return file;
}

/** Whether the machine has the libraries that the browser wants: the loader says so before the program runs. */
export function starts(executable: string, environment: Readonly<Record<string, string>>, as?: LoweredUser): boolean {
  const [program, ...before] = as ? [as.command, ...as.before, executable] : [executable];
  const tried = spawnSync(program as string, [...before, '--version'], {
    env: { ...process.env, ...environment },
    timeout: 20_000,
    stdio: 'ignore',
  });
  return tried.status === 0;
}
