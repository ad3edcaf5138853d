import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import type * as Files from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { normalizeEol, restoreEol } from '../../src/store/line-ends.js';
import { ownName } from '../../src/store/own/owner.js';
import { writing } from '../../src/store/write.js';
import { UserError } from '../../src/user-error.js';
import { updateFile } from './update-file.js';

/** What the disk does to the next files that are written anew. */
const disk = vi.hoisted(() => ({ takes: Number.POSITIVE_INFINITY, code: 'ENOSPC' }));
vi.mock('node:fs/promises', async (original) => {
  const files = await original<typeof Files>();
  return {
    ...files,
    async open(...args: Parameters<typeof files.open>) {
      const handle = await files.open(...args);
      if (String(args[0]).endsWith('.new') && disk.takes !== Number.POSITIVE_INFINITY) {
        const write = handle.writeFile.bind(handle);
        handle.writeFile = async (data) => {
          await write(Buffer.from(data as Uint8Array).subarray(0, disk.takes));
          throw Object.assign(new Error(disk.code), { code: disk.code, syscall: 'write' });
        };
      }
      return handle;
    },
  };
});

let root: string;
const file = (name: string): string => path.join(root, name);
const WELDS = 'shells/T-1/welds.yaml';
const add = (old: string | null): string => `${old ?? ''}- {id: W-2}\n`;

beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), 'shellbook-write-'));
  writeFileSync(file('shop.yaml'), 'shop: {name: Test shop}\n');
  mkdirSync(file('shells/T-1'), { recursive: true });
  writeFileSync(file(WELDS), '# mine\n- {id: W-1}\n');
  disk.takes = Number.POSITIVE_INFINITY;
});
afterEach(() => {
  chmodSync(file('shells/T-1'), 0o755);
  rmSync(root, { recursive: true, force: true });
});

const text = (name = WELDS): string => readFileSync(file(name), 'utf8');
const nothingLeft = (): void => {
  expect(readdirSync(file('shells/T-1')).filter((name) => name !== 'welds.yaml')).toEqual([]);
  expect(existsSync(file('.shellbook.lock'))).toBe(false);
};

describe('one change of one file', () => {
  it('changes a file and keeps its rights; says when nothing changed', async () => {
    chmodSync(file(WELDS), 0o664);
    expect(await updateFile(root, WELDS, add)).toBe(true);
    expect(text()).toBe('# mine\n- {id: W-1}\n- {id: W-2}\n');
    expect(lstatSync(file(WELDS)).mode & 0o777).toBe(0o664);
    expect(await updateFile(root, WELDS, (old) => old ?? '')).toBe(false);
    nothingLeft();
  });

  it('makes a file and its folder where they are not there', async () => {
    expect(await updateFile(root, 'shells/T-2/services/dc.yaml', (old) => `# ${old}\n`)).toBe(true);
    expect(text('shells/T-2/services/dc.yaml')).toBe('# null\n');
  });

  it('keeps carriage returns and the byte order mark', async () => {
    writeFileSync(file(WELDS), '\ufeff# mine\r\n- {id: W-1}\r\n');
    await updateFile(root, WELDS, (old) => {
      expect(old).toBe('# mine\n- {id: W-1}\n');
      return add(old);
    });
    expect(text()).toBe('\ufeff# mine\r\n- {id: W-1}\r\n- {id: W-2}\r\n');
  });

  it('leaves tabs and odd signs of other records as they are', async () => {
    writeFileSync(file(WELDS), '- {id: W-1,\tnote: "tab\there, ä, 焊"}\n');
    await updateFile(root, WELDS, add);
    expect(text()).toBe('- {id: W-1,\tnote: "tab\there, ä, 焊"}\n- {id: W-2}\n');
  });

  it('refuses Latin-1 and leaves it byte for byte', async () => {
    const bytes = Buffer.from('- {id: W-1, note: "M\u00fcller"}\n', 'latin1');
    writeFileSync(file(WELDS), bytes);
    await expect(updateFile(root, WELDS, add)).rejects.toThrow(/welds\.yaml: This file is not UTF-8 text.*Nothing was written/u);
    expect(readFileSync(file(WELDS)).equals(bytes)).toBe(true);
    nothingLeft();
  });

  it('refuses a file of 300 MB without reading it', async () => {
    truncateSync(file(WELDS), 300 * 1048576);
    await expect(updateFile(root, WELDS, add)).rejects.toThrow(/300 MB, expected 20 MB at most/u);
    expect(lstatSync(file(WELDS)).size).toBe(300 * 1048576);
  });

  it.each([
    '../x.yaml',
    '/etc/passwd',
    'shells/../../x.yaml',
    'shells//x.yaml',
    '',
    'shells\\x.yaml',
    'shells/x\u0000.yaml',
    './shop.yaml',
  ])('takes no name that leads elsewhere: %j', async (name) => {
    await expect(updateFile(root, name, () => 'x')).rejects.toThrow(UserError);
    expect(existsSync(path.join(root, '..', 'x.yaml'))).toBe(false);
  });

  it('takes a name that looks like an option as a name', async () => {
    await updateFile(root, 'shells/-rf/welds.yaml', add);
    expect(text('shells/-rf/welds.yaml')).toBe('- {id: W-2}\n');
  });

  it('writes through a link within the store, and through none that leads out', async () => {
    const outside = mkdtempSync(path.join(tmpdir(), 'shellbook-outside-'));
    try {
      writeFileSync(path.join(outside, 'theirs.yaml'), 'theirs\n');
      symlinkSync(path.join(outside, 'theirs.yaml'), file('shells/T-1/tests.yaml'));
      symlinkSync(outside, file('shells/T-3'));
      symlinkSync(path.join(outside, 'nowhere.yaml'), file('shells/T-1/zones.yaml'));
      symlinkSync('welds.yaml', file('shells/T-1/welds-2.yaml'));
      for (const name of ['shells/T-1/tests.yaml', 'shells/T-3/welds.yaml', 'shells/T-1/zones.yaml'])
        await expect(updateFile(root, name, add)).rejects.toThrow(/lies behind a link that leads out of the store/u);
      expect(readdirSync(outside)).toEqual(['theirs.yaml']);
      expect(readFileSync(path.join(outside, 'theirs.yaml'), 'utf8')).toBe('theirs\n');
      await updateFile(root, 'shells/T-1/welds-2.yaml', add);
      expect(lstatSync(file('shells/T-1/welds-2.yaml')).isSymbolicLink()).toBe(true);
      expect(text()).toContain('W-2');
    } finally {
      rmSync(outside, { recursive: true, force: true });
    }
  });

  it('keeps the old file where the disk takes only half of the new one', async () => {
    disk.takes = 7;
    await expect(updateFile(root, WELDS, add)).rejects.toThrow(
      /welds\.yaml cannot be written: the disk is full. It is as it was\./u,
    );
    expect(text()).toBe('# mine\n- {id: W-1}\n');
    nothingLeft();
  });

  it('tells of a read-only disk', async () => {
    disk.takes = 0;
    disk.code = 'EROFS';
    await expect(updateFile(root, WELDS, add)).rejects.toThrow(/the disk is read-only/u);
    disk.code = 'ENOSPC';
    expect(text()).toBe('# mine\n- {id: W-1}\n');
  });

  // Nobody is refused as root, who runs tests in some containers.
  it('tells of a folder where a file stands', async () => {
    await expect(updateFile(root, 'shop.yaml/welds.yaml', add)).rejects.toThrow(/cannot be written: it is not a folder/u);
    await expect(updateFile(root, 'shells', add)).rejects.toThrow(/expected a record file/u);
    await expect(updateFile(file('nowhere'), WELDS, add)).rejects.toThrow(/cannot be written to: it is not there/u);
  });

  it('tells of a read-only folder, or is root', async () => {
    chmodSync(file('shells/T-1'), 0o555);
    const done = updateFile(root, WELDS, add);
    if (process.getuid?.() === 0) expect(await done).toBe(true);
    else await expect(done).rejects.toThrow(/no permission/u);
    expect(text()).toContain('W-1');
  });

  it('writes nothing where the change cannot be made, and lets the next one in', async () => {
    await expect(
      updateFile(root, WELDS, () => {
        throw new UserError('no such weld');
      }),
    ).rejects.toThrow('no such weld');
    expect(await updateFile(root, WELDS, add)).toBe(true);
    nothingLeft();
  });

  it('begins again where an editor saves meanwhile', async () => {
    let first = true;
    await updateFile(root, WELDS, (old) => {
      if (first) writeFileSync(file(WELDS), '# theirs\n');
      first = false;
      return add(old);
    });
    expect(text()).toBe('# theirs\n- {id: W-2}\n');
  });

  it('sweeps away what a killed writer left, and nothing else', async () => {
    writeFileSync(file(`shells/T-1/.welds.yaml.${ownName().replace(/\d+$/u, '1')}-0123abcd.new`), 'half');
    writeFileSync(file('shells/T-1/.welds.yaml.swp'), 'an editor’s');
    await updateFile(root, WELDS, add);
    expect(readdirSync(file('shells/T-1')).sort()).toEqual(['.welds.yaml.swp', 'welds.yaml']);
  });
});

describe('writing', () => {
  it('holds the store for several steps', async () => {
    const order: string[] = [];
    const step = (name: string) =>
      writing(root, async (writer) => {
        order.push(`${name} in`);
        await writer.update(WELDS, (old) => `${old}# ${name}\n`);
        await new Promise((done) => setTimeout(done, 20));
        order.push(`${name} out`);
      });
    await Promise.all([step('a'), step('b')]);
    expect(order[1]?.[0]).toBe(order[0]?.[0]);
    expect(order[3]?.[0]).toBe(order[2]?.[0]);
  });
});

describe('line ends', () => {
  const line = fc.constantFrom('a', 'b', '', '# c');
  const end = fc.constantFrom('\n', '\r\n');
  const written = fc
    .tuple(fc.boolean(), fc.array(fc.tuple(line, end), { maxLength: 8 }), line)
    .map(([mark, lines, last]) => (mark ? '\ufeff' : '') + lines.map((one) => one.join('')).join('') + last);

  it('come back byte for byte where nothing changed', () => {
    fc.assert(fc.property(written, (old) => restoreEol(normalizeEol(old).text, normalizeEol(old)) === old));
  });

  it('are put to new text so that it reads as it was meant', () => {
    fc.assert(
      fc.property(
        written,
        fc.array(line, { maxLength: 8 }),
        (old, lines) => normalizeEol(restoreEol(lines.join('\n'), normalizeEol(old))).text === lines.join('\n'),
      ),
    );
  });

  it('of lines around a change stay mixed as they were', () => {
    const old = 'a\r\nb\nc\r\nd\r\n';
    expect(restoreEol('a\nb\nX\nd\n', normalizeEol(old))).toBe('a\r\nb\nX\r\nd\r\n');
  });
});
