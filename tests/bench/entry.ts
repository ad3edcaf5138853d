import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { lay } from './growth.js';
import { type Measured, measure } from './measure.js';
import { benchStore, SHELL } from './store.js';

const ROWS = 5000;
const ROUNDS = 3;
const PARSE = `import { readFileSync } from 'node:fs';
import { parseDocument } from 'yaml';
parseDocument(readFileSync(process.argv[1], 'utf8'));`;

/**
 * Getting records in, each in a process of its own: one record added to a shell of 5,000, against a bare process and one parse of the
 * file that it goes to; a sheet of 5,000 rows, new and again.
 */
export function benchEntry(node: (args: readonly string[]) => unknown): readonly Measured[] {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'shellbook-bench-entry-'));
  try {
    const [full, empty] = [path.join(folder, 'full'), path.join(folder, 'empty')];
    lay(benchStore(ROWS), full);
    const bare = new Map(benchStore(0));
    lay(bare, empty);
    const sheet = path.join(folder, 'members.csv');
    writeFileSync(sheet, csv());
    const members = path.join(full, 'shells', SHELL, 'members.yaml');
    const taken = path.join(empty, 'shells', SHELL, 'members.yaml');
    let count = 0;
    const add = (): void => {
      const at = ['--from', `[400 in, 0, ${++count} in]`, '--to', `[420 in, 0, ${count} in]`];
      node([
        'dist/main.js',
        'add',
        'member',
        '--store',
        full,
        '--shell',
        SHELL,
        '--id',
        `ADD-${count}`,
        '--section',
        'RT2x2x1/8',
        '--alloy',
        '6061-T6',
        ...at,
      ]);
    };
    const importSheet = (): unknown =>
      node(['dist/main.js', 'import', 'members', sheet, '--store', empty, '--shell', SHELL, '--quiet']);
    return measure(
      {
        'node -e 0': () => node(['-e', '0']),
        'node and one parse of the file': () => node(['--input-type=module', '-e', PARSE, members]),
        'add a record': add,
        'import 5,000 new rows': () => {
          writeFileSync(taken, bare.get(`shells/${SHELL}/members.yaml`) ?? '');
          importSheet();
        },
        'import them again': importSheet,
      },
      ROUNDS,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function csv(): string {
  const rows = Array.from({ length: ROWS }, (_, i) => {
    const [x, z] = [48 + (i % 80) * 4, 4 + Math.floor(i / 80) * 3];
    return `M-${i + 1},rail,RT2x2x1/8,6061-T6,"${x}, -40.5, ${z}","${x}, 40.5, ${z}",81`;
  });
  return `id,part,section,alloy,from (in),to (in),cut_length (in)\n${rows.join('\n')}\n`;
}
