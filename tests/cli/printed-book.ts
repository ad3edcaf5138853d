import { readFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

export const SECRETS = {
  customer: ['Ysolde Brackwater', 'Lower Fennimarsh', 'ysolde@example.test'],
  welder: ['Orla Vantongeren', 'K7'],
} as const;

const CUSTOMER = 'customer: {name: Ysolde Brackwater, place: Lower Fennimarsh, contact: ysolde@example.test}\n';

/** A store with something to hide from each reader, odd line ends and a photo; and the three editions of its book. */
export async function printSmallBook(): Promise<SmallStore> {
  const store = await laySmallStore({
    '.gitignore': 'books/\n',
    'library/people.yaml':
      '- {id: K7, name: Orla Vantongeren, role: welder}   # ring Orla on the shop line\n- {id: J2, name: Piet Holloway, role: inspector}\n',
    'shells/T-1/welds.yaml':
      '# Orla Vantongeren made these for Ysolde Brackwater\r\n- {id: W-1, joins: [FL-1, FL-2], type: fillet, size: 1/4 in, length: 2 in, process: GMAW, filler: ER5356, welder: K7, date: 2026-02-11,\r\n   note: "K7 let it cool, as Ysolde Brackwater wished"}\r\n',
    'shells/T-1/findings.yaml':
      '\uFEFF- {id: NC-1, raised: 2026-03-01, of: [FL-1], description: Nick found by K7, decision: use as is, approved_by: J2}\n- {id: NC-2, raised: 2026-03-04, of: [BP-1], description: Dent of 2 mm, decision: use as is, approved_by: J2, tell_owner: yes}\n',
    'shells/T-1/photos/photos.yaml':
      '- {id: P-1, file: p1.jpg, of: [DC-1/S1], caption: Splice before close-in, taken: 2026-04-07}\n',
  });
  store.write('shells/T-1/shell.yaml', `${readFileSync(path.join(store.root, 'shells/T-1/shell.yaml'), 'utf8')}${CUSTOMER}`);
  store.write('shells/T-1/photos/p1.jpg', await photo());
  await store.commit('Record who it is for');
  await shellbook(store.root, 'book', 'T-1', '--quiet');
  return store;
}

async function photo(): Promise<Uint8Array> {
  const plain = sharp({ create: { width: 300, height: 200, channels: 3, background: '#446688' } });
  return plain
    .composite([{ input: { create: { width: 90, height: 40, channels: 3, background: '#ddaa33' } } }])
    .jpeg()
    .toBuffer();
}

export const bookOf = (store: SmallStore, edition: string): string => path.join(store.root, 'books', `T-1-${edition}.pdf`);

/** Runs one command line from a folder. */
export async function shellbook(cwd: string, ...args: readonly string[]) {
  const io = literalIo(cwd);
  const status = await runProgram(args, io);
  return { status, answer: io.answer(), messages: io.messages() };
}
