/** What is said of each id, wherever it is said: what a comparison of figures compares. */
import type { PrintedTable } from './printed-tables.js';

export interface Said {
  /** An id; of a pair, both: `DC-12/S1 × AP-06`, `steer × loaded`. */
  readonly of: string;
  /** The figure by its name: `length`, `reach`. */
  readonly what: string;
  /** As it is said, without the words about it. */
  readonly value: string;
  /** Which edition and page, answer or label. */
  readonly where: string;
}

const UNITS = 'lb|kg|in|mm|ft in|psi|kPa|A|V|L|%|ft²|m²|kg\\/m³|MPa|gal|in²|mm²|cm⁴|in⁴';
const UNIT_TAIL = new RegExp(` (?:${UNITS})(?: \\/ (?:${UNITS}))?$`, 'u');
export const headName = (head: string): string => head.replace(UNIT_TAIL, '').toLowerCase();

const DATE = /\b\d{1,2} [A-Z][a-z]{2} \d{4}\b/gu;
const NUMBER = /[−±-]?\d[\d,]*(?:\.\d+)?(?:-\d+\/\d+|\/\d+)?/gu;

/** The figures of a cell in order: numbers as written, dates whole; numbers that are part of an id or a name are none. */
export function figuresOf(text: string, isId: (word: string) => boolean): string {
  const dates = text.match(DATE) ?? [];
  const rest = text
    .replace(DATE, ' ')
    .split(/[\s();]+/u)
    .filter((word) => !isId(word.replace(/[.,:]+$/u, '')))
    .join(' ');
  const numbers = [...rest.matchAll(NUMBER)]
    .filter(({ index = 0 }) => !/[\p{L}]/u.test(rest[index - 1] ?? ''))
    .map(([one]) => one.replace(/,$/u, ''));
  return [...dates, ...numbers].join(' ');
}

/** Heads under which the words themselves are what is said. */
const IN_WORDS: ReadonlySet<string> = new Set([
  ...['verdict', 'limited by', 'stands', 'decision', 'alloy', 'heat', 'section', 'mass is', 'basis', 'concealed', 'wps', 'pos.'],
]);
/** Heads of a pair: of two ids, or of an id on an occasion or in a condition. */
const OF_A_PAIR: ReadonlySet<string> = new Set([
  ...[
    'distance',
    'reach',
    'load',
    'left',
    'right',
    'margin',
    'uncertainty',
    'limit',
    'as weighed',
    'brought to unladen',
    'predicted',
  ],
  ...['unexplained', 'verdict', 'depth', 'begins at', 'left end', 'right end', 'carries', '±', 'may carry', 'leaves'],
]);
/** Heads of what is no figure of the id: where it stands in this book, what others are beside it. */
const NO_FIGURE: ReadonlySet<string> = new Set([
  ...[
    'page',
    'name',
    'what',
    'kind',
    'which',
    'on plan',
    'id',
    'part',
    'joins',
    'of',
    'runs',
    'by',
    'inspection',
    'from',
    'to',
    'at',
    'passes',
    'for',
  ],
  ...[
    'why',
    'what changed',
    'what was found',
    'finding',
    'panel',
    'panels',
    'where',
    'through',
    'closed by',
    'drawn',
    'protects',
    'fed through',
  ],
  ...[
    'panels to follow it',
    'each look, in order',
    'shallowest behind it',
    'metal behind',
    'condition',
    'done',
    'check',
    'joints',
    'ask',
    'drain hole',
    'step',
  ],
]);

export interface Reading {
  readonly edition: string;
  readonly isId: (word: string) => boolean;
}

/** Every figure of every id that a table gives. */
export function saidInTable({ rows, heading, page }: PrintedTable, { edition, isId }: Reading): readonly Said[] {
  const [heads = [], ...body] = rows;
  if (heads.length < 2 || !heads.every(({ head }) => head)) return [];
  const names = heads.map(({ text }) => headName(text));
  const ofHeading = heading.split(/[\s:]/u)[0] ?? '';
  // A card is of its panel, whatever parts its list has.
  const card = isId(ofHeading) ? ofHeading : undefined;
  let group = card ?? heading;
  const found: Said[] = [];
  for (const row of body) {
    if (row.length === 1) {
      group = card ?? contextOf(row[0]?.text ?? '', isId);
      continue;
    }
    const own = subjectOf(row, names, isId);
    if (own === undefined || row.length !== names.length) continue;
    row.forEach(({ text }, i) => {
      const what = names[i] as string;
      if (NO_FIGURE.has(what) || text === '–' || text === '' || text.startsWith(own)) return;
      const value = IN_WORDS.has(what) ? text : figuresOf(text, isId);
      const where = `${edition}, page ${page}`;
      if (value !== '') found.push({ of: OF_A_PAIR.has(what) ? `${own} × ${group}` : own, what, value, where });
      // `to the forearm, tool, both hands`: how far in is said at the prompt too.
      const [how] = /^(?:by hand|to the (?:fore)?arm|beyond reach)/u.exec(text) ?? [];
      if (what === 'reach' && how) found.push({ of: `${own} × ${group}`, what: 'how far in', value: how, where });
    });
  }
  return found;
}

/** The id that a row is of: that of its first cell, else that under `Id`. */
function subjectOf(
  row: readonly { readonly text: string }[],
  names: readonly string[],
  isId: Reading['isId'],
): string | undefined {
  const first = (text: string | undefined): string | undefined => {
    const word = text?.split(/[\s,]/u)[0] ?? '';
    return isId(word) ? word : undefined;
  };
  return first(row[0]?.text) ?? first(row[names.indexOf('id')]?.text);
}

const contextOf = (text: string, isId: Reading['isId']): string => {
  const [word = ''] = text.split(/[\s,:]/u);
  return isId(word) ? word : text.replace(/:.*$/u, '').trim();
};

/** What is said in two ways: `id, what: value (where) ≠ value (where)`. */
export function disagreements(all: readonly Said[]): readonly string[] {
  const byKey = new Map<string, Map<string, string>>();
  for (const { of, what, value, where } of all) {
    const key = `${of} | ${what}`;
    const values = byKey.get(key) ?? new Map<string, string>();
    if (!values.has(value)) values.set(value, where);
    byKey.set(key, values);
  }
  return [...byKey]
    .filter(([, values]) => values.size > 1)
    .map(([key, values]) => `${key}: ${[...values].map(([value, where]) => `${value} (${where})`).join(' ≠ ')}`);
}
