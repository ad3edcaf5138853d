/** What a camera wrote into a picture (Exif 2.32, CIPA DC-008), of what is asked here: texts as they stand there, numbers as such. */
export type Exif = Readonly<Partial<Record<ExifName, string | number>>>;

const TAGS = {
  dateTime: 0x0132,
  dateTimeOriginal: 0x9003,
  dateTimeDigitized: 0x9004,
  focalLength: 0x920a,
  pixelXDimension: 0xa002,
  focalPlaneXResolution: 0xa20e,
  focalPlaneResolutionUnit: 0xa210,
  focalLengthIn35mm: 0xa405,
} as const;
const GPS_TAGS = { gpsImgDirection: 0x0011 } as const;

export type ExifName = keyof typeof TAGS | keyof typeof GPS_TAGS;

/** Where the first directory names the others. */
const EXIF_DIRECTORY = 0x8769;
const GPS_DIRECTORY = 0x8825;
/** More entries than any camera writes. */
const MOST_ENTRIES = 512;
const LONGEST_TEXT = 64;

/** Reads a block of Exif, with or without its `Exif\0\0`. Whatever is damaged in it is left out. */
export function readExif(block: Buffer | undefined): Exif {
  if (!block) return {};
  const bytes = block.toString('latin1', 0, 6) === 'Exif\0\0' ? block.subarray(6) : block;
  const order = bytes.toString('latin1', 0, 2);
  if (bytes.length < 8 || (order !== 'II' && order !== 'MM')) return {};
  const tiff = new Tiff(bytes, order === 'II');
  const first = tiff.directory(tiff.long(4));
  const exif = tiff.directory(first.get(EXIF_DIRECTORY)?.offset);
  const gps = tiff.directory(first.get(GPS_DIRECTORY)?.offset);
  const found: Partial<Record<ExifName, string | number>> = {};
  const put = (names: Readonly<Record<string, number>>, from: ReadonlyMap<number, Entry>): void => {
    for (const [name, tag] of Object.entries(names)) {
      const value = tiff.value(from.get(tag));
      if (value !== undefined) found[name as ExifName] = value;
    }
  };
  put({ dateTime: TAGS.dateTime }, first);
  put(TAGS, exif);
  put(GPS_TAGS, gps);
  return found;
}

interface Entry {
  readonly type: number;
  readonly count: number;
  /** The last four bytes of the entry: a small value itself, else where it stands. */
  readonly at: number;
  readonly offset: number | undefined;
}

/** Types of TIFF 6.0 that are read here. */
const ASCII = 2;
const SHORT = 3;
const LONG = 4;
const RATIONAL = 5;

/** The frame that Exif stands in. Nothing outside the bytes is read, and no directory names a next one. */
class Tiff {
  constructor(
    private readonly bytes: Buffer,
    private readonly little: boolean,
  ) {}

  long(at: number | undefined): number | undefined {
    if (at === undefined || at < 0 || at + 4 > this.bytes.length) return undefined;
    return this.little ? this.bytes.readUInt32LE(at) : this.bytes.readUInt32BE(at);
  }

  private short(at: number): number | undefined {
    if (at < 0 || at + 2 > this.bytes.length) return undefined;
    return this.little ? this.bytes.readUInt16LE(at) : this.bytes.readUInt16BE(at);
  }

  directory(at: number | undefined): ReadonlyMap<number, Entry> {
    const entries = new Map<number, Entry>();
    const count = at === undefined ? undefined : this.short(at);
    for (let i = 0; i < Math.min(count ?? 0, MOST_ENTRIES); i++) {
      const from = (at as number) + 2 + 12 * i;
      const [tag, type, many] = [this.short(from), this.short(from + 2), this.long(from + 4)];
      if (tag === undefined || type === undefined || many === undefined) break;
      if (!entries.has(tag)) entries.set(tag, { type, count: many, at: from + 8, offset: this.long(from + 8) });
    }
    return entries;
  }

  value(entry: Entry | undefined): string | number | undefined {
    if (!entry) return undefined;
    const { type, count, at, offset } = entry;
    if (type === ASCII) {
      const from = count <= 4 ? at : offset;
      if (from === undefined || from >= this.bytes.length) return undefined;
      return this.bytes.toString('latin1', from, from + Math.min(count, LONGEST_TEXT)).replace(/\0[\s\S]*$/u, '');
    }
    if (type === SHORT) return this.short(at);
    if (type === LONG) return offset;
    const [upper, lower] = offset === undefined ? [] : [this.long(offset), this.long(offset + 4)];
    return type === RATIONAL && upper !== undefined && lower ? upper / lower : undefined;
  }
}

/** What stands where a moment should: a moment, nothing, or something that no calendar has. */
export type Moment = { readonly iso: string } | { readonly wrong: string } | undefined;

/** `2026:04:07 14:30:05` as Exif has it → ISO 8601, as the camera's own clock had it. Cameras without a clock write blanks or zeros. */
export function momentOf(said: string | number | undefined): Moment {
  const text = String(said ?? '').trim();
  if (/^[0\s:]*$/u.test(text)) return undefined;
  const [, year = '', month = '', day = '', time] =
    /^(\d{4})[:-](\d{2})[:-](\d{2})(?:[ T](\d{2}:\d{2}(?::\d{2})?))?/u.exec(text) ?? [];
  const date = new Date(`${year}-${month}-${day}T${time ?? '00:00'}Z`);
  const isThere =
    !Number.isNaN(date.getTime()) && date.getUTCDate() === Number(day) && Number(year) > FIRST_CAMERA && Number(year) < LAST_YEAR;
  return isThere ? { iso: `${year}-${month}-${day}${time === undefined ? '' : `T${time}`}` } : { wrong: text };
}

/** Before 1990 there was no camera that writes Exif, and no coach is photographed after 2100 by this program. */
const FIRST_CAMERA = 1990;
const LAST_YEAR = 2100;
