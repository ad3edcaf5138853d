/**
 * A second reading of the demo's records, which shares nothing with the program: files through the `yaml` package as they lie there, and the
 * few sums that a reader with a pencil would do.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';

/** A record as YAML gives it: its keys are the shop's own words. */
// biome-ignore lint/suspicious/noExplicitAny: what stands in a file is known only when it is read
export type Plain = any;

const DEMO = fileURLToPath(new URL('../../../demo-data/', import.meta.url));
const FOLDER = path.join(DEMO, 'shells', 'OV-021');
const read = (file: string): Plain => parse(readFileSync(file, 'utf8'));

/** Every list whose files begin with the word: `members-floor.yaml` and `members-roof.yaml` are one. */
const list = (word: string): readonly Plain[] =>
  readdirSync(FOLDER)
    .filter((name) => new RegExp(`^${word}[^/]*\\.yaml$`, 'u').test(name))
    .sort()
    .flatMap((name) => {
      const file = read(path.join(FOLDER, name)) ?? [];
      return Array.isArray(file) ? file : (file[word] ?? []);
    });

export interface PlainShell {
  readonly shop: Plain;
  readonly head: Plain;
  readonly members: readonly Plain[];
  readonly welds: readonly Plain[];
  readonly panels: readonly Plain[];
  readonly openings: readonly Plain[];
  readonly zones: readonly Plain[];
  readonly components: readonly Plain[];
  readonly tests: readonly Plain[];
  readonly findings: readonly Plain[];
  readonly amendments: readonly Plain[];
  readonly declared: readonly Plain[];
  readonly clamps: readonly Plain[];
  readonly circuits: readonly Plain[];
  readonly nodes: readonly Plain[];
  readonly runs: readonly Plain[];
}

/** The finished shell of the demo. */
export function plainShell(): PlainShell {
  const services: readonly Plain[] = readdirSync(path.join(FOLDER, 'services')).map((name) =>
    read(path.join(FOLDER, 'services', name)),
  );
  const ofAll = (key: string): readonly Plain[] =>
    services.flatMap((service) => (service[key] ?? []).map((one: Plain) => ({ ...one, medium: service.medium })));
  return {
    shop: read(path.join(DEMO, 'shop.yaml')).shop,
    head: read(path.join(FOLDER, 'shell.yaml')),
    members: list('members'),
    welds: list('welds'),
    panels: list('panels'),
    openings: list('openings'),
    zones: list('zones'),
    components: list('components'),
    tests: list('tests'),
    findings: list('findings'),
    amendments: list('amendments'),
    declared: list('declared'),
    clamps: list('clamps'),
    circuits: ofAll('circuits'),
    nodes: ofAll('nodes'),
    runs: ofAll('runs'),
  };
}

const MM: Readonly<Record<string, number>> = { in: 25.4, ft: 304.8, mm: 1, cm: 10, m: 1000 };

/** `6 ft 3-1/2 in`, `-0.6 in`, `1.9 m` in mm; a bare number is in inches, as the files with bare numbers say at their head. */
export function mm(text: string | number): number {
  const said = typeof text === 'number' ? `${text} in` : text.trim();
  const sign = said.startsWith('-') ? -1 : 1;
  let sum = 0;
  for (const [, whole, over, under, bare, unit] of said.matchAll(
    /(?:(\d+)-)?(?:(\d+)\/(\d+)|(\d+(?:\.\d+)?))\s*(in|ft|mm|cm|m)\b/gu,
  ))
    sum += (Number(whole ?? 0) + (over ? Number(over) / Number(under) : Number(bare))) * (MM[unit as string] as number);
  return sign * sum;
}

export const place = (at: readonly (string | number)[]): readonly [number, number, number] =>
  at.map((one) => mm(one)) as unknown as readonly [number, number, number];

/** The number before a unit: of `14,600 lb` 14,600. */
export const figure = (text: string): number => Number(/-?[\d,]+(?:\.\d+)?/u.exec(text)?.[0].replaceAll(',', ''));

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `2026-10-14` as books print it. */
export function day(iso: string | Date): string {
  const [year, month, date] = (typeof iso === 'string' ? iso : iso.toISOString()).slice(0, 10).split('-');
  return `${Number(date)} ${MONTHS[Number(month) - 1]} ${year}`;
}

export const grouped = (value: number): string => String(Math.round(value)).replace(/\B(?=(?:\d{3})+$)/gu, ',');
