import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';

const LIBRARY = `- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3}\n`;
const SECTIONS = '- {id: RT2x2x1/8, shape: rectangular tube, depth: 2 in, width: 2 in, wall: 1/8 in, corner_radius: 0 in}\n';
const STAGES = '- {id: floor, name: Floor frame}\n- {id: walls, name: Wall frames}\n';

/**
 * A repository from a stream of `git fast-import`: commits, each with the files that it changes. `at` says when the nth was made,
 * in seconds since 1970; else a quarter of an hour apart, from 1 January 2026.
 */
export function layRepository(
  dir: string,
  commits: Iterable<ReadonlyMap<string, string>>,
  at = (n: number): number => 1767225600 + n * 900,
): void {
  mkdirSync(dir, { recursive: true });
  git(dir, ['init', '--quiet', '--initial-branch=main']);
  const parts: string[] = [];
  let n = 0;
  for (const files of commits) {
    const message = `record ${n}`;
    const who = `${n % 2 ? 'K. Marrow' : 'O. Penn'} <k@example.org> ${at(n)} +0000`;
    parts.push(`commit refs/heads/main\nauthor ${who}\ncommitter ${who}\ndata ${message.length}\n${message}\n`);
    for (const [file, text] of files) parts.push(`M 100644 inline ${file}\ndata ${Buffer.byteLength(text)}\n${text}\n`);
    n += 1;
  }
  const done = spawnSync('git', ['fast-import', '--quiet'], { cwd: dir, input: parts.join('') });
  if (done.status !== 0) throw new Error(`fast-import: ${done.stderr}`);
  git(dir, ['reset', '--quiet', '--hard', 'main']);
  git(dir, ['gc', '--quiet']);
}

export function git(dir: string, args: readonly string[], input?: string): string {
  const done = spawnSync('git', args, {
    cwd: dir,
    encoding: 'utf8',
    maxBuffer: 1 << 30,
    ...(input === undefined ? {} : { input }),
  });
  if (done.status !== 0) throw new Error(`git ${args[0]}: ${done.stderr}`);
  return done.stdout;
}

const weld = (i: number, size: number): string =>
  `- {id: W-${i}, joins: [[M-1, M-2]], type: fillet, size: ${size}/16 in, length: 4 in, sides: both, process: GMAW, procedure: WPS-1,\n   welder: K7, date: 2026-01-0${(i % 9) + 1}, inspections: [{method: VT, by: J2, date: 2026-02-01, result: accept}]}\n`;

/** One shell whose 200 welds were changed one at a time, in so many commits. */
export function* manyCommits(count: number, welds = 200): Generator<ReadonlyMap<string, string>> {
  const lines = Array.from({ length: welds }, (_, i) => weld(i, 3));
  yield new Map([
    ...base(),
    ['shells/B-1/shell.yaml', shell('B-1')],
    ['shells/B-1/members.yaml', member(1) + member(2)],
    ['shells/B-1/welds.yaml', lines.join('')],
  ]);
  for (let n = 1; n < count; n++) {
    const i = (n * 37) % welds;
    lines[i] = weld(i, 3 + ((n * 7) % 6));
    yield new Map([['shells/B-1/welds.yaml', lines.join('')]]);
  }
}

/** So many small shells, in one commit. */
export function manyShells(count: number): ReadonlyMap<string, string> {
  const files = new Map(base());
  for (let i = 0; i < count; i++) {
    const id = `S-${String(i).padStart(4, '0')}`;
    files.set(`shells/${id}/shell.yaml`, shell(id));
    files.set(`shells/${id}/members.yaml`, member(1, `H-${i % 50}`) + member(2, `H-${(i + 7) % 50}`));
    files.set(`shells/${id}/welds.yaml`, weld(1, 4));
    files.set(`shells/${id}/signoffs.yaml`, '');
  }
  return files;
}

const base = (): readonly (readonly [string, string])[] => [
  ['shop.yaml', 'shop: {name: Bench shop}\nunits: us\n'],
  ['library/materials.yaml', LIBRARY],
  ['library/sections.yaml', SECTIONS],
  ['library/stages.yaml', STAGES],
];

const shell = (id: string): string =>
  `shell: ${id}\ntitle: Coach ${id}\nchassis:\n  gvwr: 30000 lb\n  axles:\n    - {id: front, x: 0 in, gawr: 12000 lb}\n    - {id: rear, x: 200 in, gawr: 20000 lb}\n`;

const member = (i: number, heat = 'H-1'): string =>
  `- {id: M-${i}, part: rail, stage: floor, section: RT2x2x1/8, alloy: 6061-T6, heat: ${heat}, from: [20 in, ${i * 2} in, 4 in], to: [180 in, ${i * 2} in, 4 in]}\n`;
