import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { packageFolder } from '../book/print/packaged.js';
import { version } from './version.js';

/** Which program this is, so exactly that the same one prints the same pages. */
export interface ProgramBuild {
  /** `shellbook 0.2.0` */
  readonly program: string;
  /** SHA-256 over its code, its templates and the versions of the packages that it uses, hex, its first half. */
  readonly build: string;
  /** As `linux x64`. */
  readonly platform: string;
}

let known: ProgramBuild | undefined;

export function programBuild(): ProgramBuild {
  known ??= { program: `shellbook ${version()}`, build: buildOf(), platform: `${process.platform} ${process.arch}` };
  return known;
}

function buildOf(): string {
  const own = fileURLToPath(import.meta.url);
  const top = path.join(path.dirname(own), '..', '..');
  const hash = createHash('sha256');
  for (const folder of [path.join(path.dirname(own), '..'), path.join(top, 'templates')]) {
    const names = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((one) => one.isFile() && !/\.(?:map|d\.ts)$/u.test(one.name))
      .map((one) => path.join(one.parentPath, one.name))
      .sort();
    for (const file of names)
      hash.update(path.relative(top, file).split(path.sep).join('/')).update('\0').update(readFileSync(file)).update('\0');
  }
  const { dependencies = {} } = JSON.parse(readFileSync(path.join(top, 'package.json'), 'utf8')) as {
    dependencies?: Record<string, string>;
  };
  for (const name of Object.keys(dependencies).sort()) hash.update(`${name} ${versionOf(name)}\n`);
  return hash.digest('hex').slice(0, 32);
}

function versionOf(name: string): string {
  const folder = packageFolder(name);
  return folder === undefined
    ? ''
    : (JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')) as { version: string }).version;
}
