import yauzl from 'yauzl';
import { UserError } from '../../user-error.js';

/** A workbook of a shop has a few dozen parts. */
const MOST_PARTS = 2000;
/** All parts together: a sheet of two hundred thousand rows has half of it. */
const MOST_UNPACKED = 256 * 1024 * 1024;

/** What is taken out of a workbook: texts of cells, their formats, the sheets. No macros, no links to other files, no pictures. */
const WANTED =
  /^(?:\[Content_Types\]\.xml|_rels\/\.rels|xl\/(?:_rels\/workbook\.xml\.rels|(?:workbook|sharedStrings|styles)\.xml|worksheets\/[^/]+\.xml))$/u;

/**
 * The parts of a workbook that hold cells, by name. Counted and bounded while they are unpacked, whatever the file says of their sizes.
 * Throws {@link UserError} where it is no workbook, damaged, or grows beyond its bounds.
 */
export async function unpackWorkbook(
  name: string,
  bytes: Uint8Array,
  most = MOST_UNPACKED,
): Promise<ReadonlyMap<string, Uint8Array>> {
  const zip = await open(name, bytes);
  if (zip.entryCount > MOST_PARTS)
    throw new UserError(`${name} has ${zip.entryCount} parts, expected a workbook with a sheet of records`);
  const parts = new Map<string, Uint8Array>();
  let room = most;
  let others = '';
  for await (const entry of entriesOf(zip, name)) {
    if (!WANTED.test(entry.fileName)) {
      others ||= entry.fileName;
      continue;
    }
    if (parts.has(entry.fileName)) throw new UserError(`${name} has two parts called ${entry.fileName}: save it again as XLSX`);
    const part = await unpacked(zip, entry, name, room);
    room -= part.length;
    parts.set(entry.fileName, part);
  }
  if (!parts.has('xl/workbook.xml')) throw new UserError(notOne(name, others));
  return parts;
}

function notOne(name: string, part: string): string {
  const what = part.startsWith('xl/') ? 'a workbook of another kind (XLSB)' : 'a packed file, but no workbook';
  return `${name} is ${what}, expected XLSX or CSV: save the sheet as XLSX${part === '' ? '' : ` (it holds ${part.slice(0, 60)})`}`;
}

const damaged = (name: string): UserError =>
  new UserError(`${name} is damaged or cut short: copy it again, or save it again as XLSX`);

function open(name: string, bytes: Uint8Array): Promise<yauzl.ZipFile> {
  return new Promise((resolve, reject) => {
    yauzl.fromBuffer(Buffer.from(bytes), { lazyEntries: true, validateEntrySizes: true }, (error, zip) =>
      error || !zip ? reject(damaged(name)) : resolve(zip),
    );
  });
}

async function* entriesOf(zip: yauzl.ZipFile, name: string): AsyncGenerator<yauzl.Entry> {
  for (;;) {
    const entry = await new Promise<yauzl.Entry | undefined>((resolve, reject) => {
      const done = (): void => {
        zip.removeAllListeners();
      };
      zip.once('entry', (one: yauzl.Entry) => {
        done();
        resolve(one);
      });
      zip.once('end', () => {
        done();
        resolve(undefined);
      });
      zip.once('error', () => {
        done();
        reject(damaged(name));
      });
      zip.readEntry();
    });
    if (entry === undefined) return;
    yield entry;
  }
}

function unpacked(zip: yauzl.ZipFile, entry: yauzl.Entry, name: string, room: number): Promise<Uint8Array> {
  const large = new UserError(
    `${name} unpacks to more than ${MOST_UNPACKED / 1048576} MB, expected a sheet of records: split it, or save the sheet as CSV`,
  );
  if (entry.uncompressedSize > room) return Promise.reject(large);
  return new Promise((resolve, reject) => {
    zip.openReadStream(entry, (error, stream) => {
      if (error || !stream) {
        reject(damaged(name));
        return;
      }
      const chunks: Buffer[] = [];
      let size = 0;
      stream.on('data', (chunk: Buffer) => {
        size += chunk.length;
        if (size > room) {
          stream.destroy();
          reject(large);
        } else chunks.push(chunk);
      });
      stream.on('error', () => reject(damaged(name)));
      stream.on('end', () => resolve(Buffer.concat(chunks)));
    });
  });
}
