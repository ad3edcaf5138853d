import { readDocument } from '../source/document.js';
import { roleOf, type ShellList } from '../store/layout.js';

/** A record of another shell, as typed: form, links and units are that shell's own affair. */
export interface RecordElsewhere {
  readonly shell: string;
  readonly id: string;
  readonly typed: Readonly<Record<string, unknown>>;
}

/** What the other shells of the store have on record. Read when asked, file by file. */
export interface Elsewhere {
  /**
   * Records of one list of every other shell, in files whose text has at least `least` (one, where not said) of `words` (a welder,
   * dates): the others are not read.
   */
  records(list: ShellList, words: readonly string[], least?: number): readonly RecordElsewhere[];
  /** Other shells whose shell.yaml has this vehicle identification number. */
  withVin(vin: string): readonly string[];
  /** Ids of the other shells. */
  shells?(): readonly string[];
  /** Who ordered the other shells, as typed. */
  customers?(): readonly RawRecord[];
  /** Everyone who is named as a welder, in this shell too: also in records that are not whole. */
  welders?(): readonly string[];
  /** True where this shell's first day on record is before that of another. */
  beganBefore(shell: string): boolean;
}

export type RawRecord = Readonly<Record<string, unknown>>;
interface ListFile {
  readonly shell: string;
  readonly list: ShellList;
  readonly text: string;
  /** Its records, once read. */
  records?: readonly RecordElsewhere[];
  /** Its words, once looked for. */
  words?: ReadonlySet<string>;
}

/** All list files of a store, from which each shell sees those of the others. A file is read at most once. */
export class Neighbours {
  private readonly files: readonly ListFile[];
  private readonly firstDays = new Map<string, string>();
  /** Each shell's shell.yaml. */
  private readonly heads = new Map<string, string>();

  constructor(texts: ReadonlyMap<string, string>) {
    this.files = [...texts].flatMap(([path, text]) => {
      const role = roleOf(path);
      if (role.holds === 'shell') this.heads.set(role.shell, text);
      return role.holds === 'list' ? [{ shell: role.shell, list: role.list, text }] : [];
    });
  }

  of(shell: string): Elsewhere {
    return {
      records: (list, words, least = 1) =>
        this.files
          .filter((file) => file.shell !== shell && file.list === list && hasSome(file, words, least))
          .flatMap((file) => {
            file.records ??= recordsOf(file);
            return file.records;
          }),
      withVin: (vin) =>
        [...this.heads].filter(([other, text]) => other !== shell && vinIn(text) === vin.toUpperCase()).map(([other]) => other),
      shells: () =>
        [...new Set([...this.heads.keys(), ...this.files.map((file) => file.shell)])].filter((other) => other !== shell),
      customers: () => [...this.heads].flatMap(([other, text]) => (other === shell ? [] : customerIn(text))),
      welders: () => this.files.flatMap((file) => (file.list === 'welds' ? weldersIn(file.text) : [])),
      beganBefore: (other) => this.firstDay(shell) < this.firstDay(other),
    };
  }

  /** The earliest `date:` in any of its lists; the end of time where there is none. */
  private firstDay(shell: string): string {
    const known = this.firstDays.get(shell);
    if (known !== undefined) return known;
    const dates = this.files
      .filter((file) => file.shell === shell)
      .flatMap(({ text }) => [...text.matchAll(/\bdate:\s*["']?(\d{4}-\d{2}-\d{2})/gu)].map((match) => match[1] as string));
    const first = dates.sort()[0] ?? '9999-12-31';
    this.firstDays.set(shell, first);
    return first;
  }
}

/** Words as YAML parts them, taken apart once: a store of fifty shells is asked thousands of times. */
function hasSome(file: ListFile, words: readonly string[], least: number): boolean {
  file.words ??= new Set(file.text.split(BETWEEN));
  let found = 0;
  for (const word of words) {
    if ((BETWEEN.test(word) ? file.text.includes(word) : file.words.has(word)) && ++found >= least) return true;
  }
  return false;
}
const BETWEEN = /[\s,:{}[\]"'#]+/u;

function customerIn(text: string): readonly RawRecord[] {
  if (!/^\s*["']?customer["']?\s*:/mu.test(text)) return [];
  const { data } = readDocument('shell.yaml', text);
  const customer = (data as RawRecord | null)?.customer;
  return typeof customer === 'object' && customer !== null && !Array.isArray(customer) ? [customer as RawRecord] : [];
}

const weldersIn = (text: string): readonly string[] => [
  ...new Set([...text.matchAll(/\bwelder["']?\s*:\s*["']?([\p{L}\p{N}./_-]+)/gu)].map((match) => match[1] as string)),
];

const vinIn = (text: string): string | undefined => /^vin:\s*["']?([A-Z0-9]{5,})/imu.exec(text)?.[1]?.toUpperCase();

function recordsOf({ shell, list, text }: ListFile): readonly RecordElsewhere[] {
  const { data } = readDocument(`${list}.yaml`, text);
  const listed = Array.isArray(data) ? data : (data as RawRecord | null)?.[list];
  if (!Array.isArray(listed)) return [];
  return listed.flatMap((typed: unknown) =>
    typeof typed === 'object' && typed !== null && 'id' in typed
      ? [{ shell, id: String(typed.id), typed: typed as RawRecord }]
      : [],
  );
}
