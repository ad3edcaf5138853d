import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));

/** One import: types are gone when the program runs, a worker's file starts afresh. Files relative to src/, packages by their name. */
interface Import {
  readonly from: string;
  readonly to: string;
  readonly of: 'types' | 'values' | 'worker';
  /** Values that are imported. */
  readonly names: readonly string[];
}

const FILES = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .map((file) => file.split(path.sep).join('/'))
  .filter((file) => file.endsWith('.ts'));

const STATEMENT =
  /^(?:import|export)\s+(?<type>type\s+)?(?:(?<names>[^;'"]*?)\s+from\s+)?'(?<to>[^']+)'|\bimport\('(?<later>[^']+)'\)|new URL\('(?<worker>\.[^']+\.js)'/gmu;

function importsOf(from: string): readonly Import[] {
  return [...readFileSync(path.join(SRC, from), 'utf8').matchAll(STATEMENT)].map(({ groups = {} }) => {
    const written = groups.to ?? groups.later ?? groups.worker ?? '';
    const to = written.startsWith('.') ? path.posix.join(path.posix.dirname(from), written).replace(/\.js$/u, '.ts') : written;
    const names = /^\{(?<all>.*)\}$/su
      .exec(groups.names ?? '')
      ?.groups?.all?.split(',')
      .map((name) => name.trim());
    const allTypes = names?.filter((name) => name !== '').every((name) => name.startsWith('type ')) === true;
    const ofTypes = groups.type !== undefined || allTypes;
    return {
      from,
      to,
      of: groups.worker === undefined ? (ofTypes ? 'types' : 'values') : 'worker',
      names: names?.filter((name) => name !== '' && !name.startsWith('type ')) ?? ['*'],
    };
  });
}

const IMPORTS = FILES.flatMap(importsOf);
const INSIDE = IMPORTS.filter(({ to }) => to.endsWith('.ts'));

/**
 * The rooms from left to right; a file imports from its own room and from those left of it. `layout`: what a store's files are called, which touches no file.
 */
const ROOMS = [
  ...[
    'finding.ts',
    'user-error.ts',
    'get-own.ts',
    'words',
    'geometry',
    'quantity',
    'source',
    'records',
    'sections',
    'layout',
    'model',
    'store',
  ],
  ...[
    'signing',
    'pdf',
    'archive',
    'history',
    'coverage',
    'compute',
    'query',
    'rules',
    'assess.ts',
    'page',
    'drawing',
    'closeout',
    'entry',
    'book',
    'pocket',
    'floor',
  ],
  ...['index.ts', 'cli', 'main.ts', 'start.ts', 'preinstall.ts'],
];

const roomOf = (file: string): string => file.split('/')[0] as string;
/** What a signature stands for, which rules judge; the rest of closing a build comes after them. */
const COVERAGE = new Set(['bound', 'coverage', 'signed', 'state'].map((name) => `closeout/${name}.ts`));
const roomFor = (file: string): string => {
  if (COVERAGE.has(file)) return 'coverage';
  return file === 'store/layout.ts' ? 'layout' : roomOf(file);
};
const placeOf = (room: string): number => {
  const place = ROOMS.indexOf(room);
  if (place < 0) throw new Error(`${room} is no room yet: put it into ROOMS where it belongs`);
  return place;
};
const words = ({ from, to }: Import): string => `${from} → ${to}`;

/** What touches no file, no Git, no browser and no process. A package is allowed by name where it touches none either. */
const PURE = [
  'words',
  'geometry',
  'quantity',
  'source',
  'records',
  'sections',
  'model',
  'signing',
  'pdf',
  'archive',
  'history',
  'compute',
  'query',
  'rules',
  'drawing',
  'closeout',
  'entry',
];
const QUIET = [
  'yaml',
  'zod',
  'yalps',
  'ml-matrix',
  'canonicalize',
  '@cantoo/pdf-lib',
  '@peculiar/asn1-cms',
  '@peculiar/asn1-schema',
  '@peculiar/asn1-x509',
  'node:crypto',
  'node:zlib',
  'node:util',
  'csv-parse/sync',
  'csv-stringify/sync',
  'yauzl',
  'fflate',
  'read-excel-file/universal',
  'write-excel-file/universal',
];

/** Of compute/: constants, words of a record, the body that a member or plate is drawn as, and what puts off work until it is asked for. */
const READ_ONLY = new Set([
  ...['PHOTOS_OF_A_JOINT', 'REACH_MM', 'WELD_BAND_MM', 'memberBox', 'plateFaces', 'lazy', 'lazyFields', 'LazyMap'],
  ...['outOf', 'processName', 'surfaceKey', 'surfaceWords', 'surfacesInOrder'],
]);

describe('imports', () => {
  it('are found: every file but the first is imported by another', () => {
    const imported = new Set(INSIDE.map(({ to }) => to));
    expect(FILES.filter((file) => !imported.has(file)).sort()).toEqual([
      'floor/script/floor.ts',
      'index.ts',
      'main.ts',
      'page/mark.ts',
      'page/pocket.ts',
      'preinstall.ts',
      'start.ts',
    ]);
    expect(INSIDE.filter(({ to }) => !FILES.includes(to)).map(words)).toEqual([]);
  });

  it('go one way: from a room to those left of it', () => {
    const back = INSIDE.filter(
      ({ from, to }) =>
        placeOf(roomFor(to)) > placeOf(['store', 'closeout'].includes(roomOf(from)) ? roomFor(from) : roomOf(from)),
    );
    expect(back.map(words)).toEqual([]);
  });

  it('never go in a circle, not even later, nor by types alone', () => {
    const next = new Map(
      FILES.map((file) => [file, INSIDE.filter((one) => one.from === file && one.of !== 'worker').map(({ to }) => to)]),
    );
    expect(circleIn(next)).toEqual([]);
  });

  it('of drawings and pages are of nothing that computes: figures come from the assessment, all else from query/', () => {
    const computing = IMPORTS.filter(
      ({ from, to, of, names }) =>
        of === 'values' &&
        ['drawing', 'book'].includes(roomOf(from)) &&
        roomOf(to) === 'compute' &&
        names.some((name) => !READ_ONLY.has(name)),
    );
    expect(computing.map(words)).toEqual([]);
  });

  it('have one meaning for each exported name', () => {
    const homes = new Map<string, Set<string>>();
    for (const file of FILES) {
      const text = readFileSync(path.join(SRC, file), 'utf8');
      for (const [, name = ''] of text.matchAll(/^export (?:async )?(?:const|function\*?|class|interface|type|enum) (\w+)/gmu))
        homes.set(name, (homes.get(name) ?? new Set()).add(file));
    }
    expect([...homes].filter(([, files]) => files.size > 1).map(([name, files]) => `${name}: ${[...files].join(', ')}`)).toEqual(
      [],
    );
  });

  it('of the middle are of nothing that touches the world', () => {
    const middle = IMPORTS.filter(({ from, of }) => PURE.includes(roomOf(from)) && of !== 'types');
    const world = middle.filter(({ to }) => (to.endsWith('.ts') ? roomFor(to) === 'store' : !QUIET.includes(to)));
    expect(world.map(words)).toEqual([]);
  });
});

/** One circle, its first file again at its end; empty where there is none. */
function circleIn(next: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const done = new Set<string>();
  const walk = (file: string, way: readonly string[]): readonly string[] => {
    if (way.includes(file)) return [...way.slice(way.indexOf(file)), file];
    if (done.has(file)) return [];
    for (const to of next.get(file) ?? []) {
      const circle = walk(to, [...way, file]);
      if (circle.length > 0) return circle;
    }
    done.add(file);
    return [];
  };
  for (const file of next.keys()) {
    const circle = walk(file, []);
    if (circle.length > 0) return circle;
  }
  return [];
}
