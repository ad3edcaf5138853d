import type { z } from 'zod';
import type { Finding } from '../../finding.js';
import { found, shown } from '../../source/shown.js';
import type { Path } from '../../source/source.js';
import { type Form, kindOf } from '../kinds.js';
import type { KindName } from '../names.js';
import type { Schemas } from '../schema.js';
import { type Fault, faultOf } from './fault.js';
import { helpOf, keysOf } from './help.js';
import { kindWords, neverTyped, unknownKeyMessage } from './unknown-key.js';
import { enumFault } from './worded-fields.js';

/** Where a record's fields were typed: in a file, in a row of a sheet. */
export interface FieldSource {
  place(...path: Path): Finding['place'];
  /** Of a key that should not be there. */
  placeOfKey(...path: Path): Finding['place'];
}

/** One record as it was typed, before its form is checked. */
export interface TypedRecordForm<Source extends FieldSource = FieldSource> {
  readonly id?: string;
  /** Without blank keys and the shop's own. */
  readonly data: unknown;
  readonly source: Source;
  /** Path of `data` within the source's record. */
  readonly path?: Path;
  /** Keys that are read elsewhere, to be offered beside the kind's own. */
  readonly alsoKnown?: readonly string[];
}

/** Checks the form of one record and gives its fields in SI, or undefined with every fault told. */
export function checkForm<K extends KindName>(
  schemas: Schemas,
  kind: K,
  typed: TypedRecordForm,
  say: (finding: Finding) => void,
): Form<K> | undefined {
  const schema = schemas.of(kind);
  const result = schema.safeParse(typed.data);
  if (result.success) return result.data;
  const tell = new Teller(schema, kind, typed, say);
  for (const issue of result.error.issues) tell.issue(issue, []);
  return undefined;
}

/** Puts what zod says into the words of a finding. */
class Teller {
  constructor(
    private readonly schema: z.ZodType,
    private readonly kind: KindName,
    private readonly typed: TypedRecordForm,
    private readonly say: (finding: Finding) => void,
  ) {}

  issue(issue: z.core.$ZodIssue, before: Path): void {
    const path = [...before, ...(issue.path as Path)];
    const fault = faultOf(issue);
    const value = valueAt(this.typed.data, path);
    if (issue.code === 'unrecognized_keys') this.unknownKeys(issue.keys, path);
    else if (value === undefined) this.missing(path);
    else if (fault) this.fault(fault, path);
    else if (issue.code === 'invalid_union') this.union(issue, value, path);
    else this.fault({ found: found(value), expected: this.expectedBy(issue, path) }, path);
  }

  private fault({ rule = 'format.wrong-value', found: what, expected }: Fault, path: Path): void {
    const where = path.length === 0 ? ` as ${kindWords(this.kind)}` : ` for ${named(path)}`;
    this.tell(rule, `Found ${what}${where}, expected ${expected}`, this.place(path));
  }

  private missing(path: Path): void {
    const help = helpOf(this.schema, path, this.typed.data);
    const of = this.typed.id === undefined ? kindWords(this.kind) : `${this.kind} ${shown(this.typed.id, 80)}`;
    const within = path.length > 1 ? ` in ${named(path.slice(0, -1))}` : '';
    const key = String(path.at(-1) ?? '');
    this.tell(
      'format.missing-key',
      `Missing key \`${key}\`${within} of ${of}${help ? `, expected: ${help}` : ''}`,
      this.place(path),
    );
  }

  private unknownKeys(keys: readonly string[], path: Path): void {
    const known = [...keysOf(this.schema, path, this.typed.data), ...(path.length === 0 ? (this.typed.alsoKnown ?? []) : [])];
    for (const key of keys) {
      const message = neverTyped(this.kind, key) ?? unknownKeyMessage(key, known, this.kind, path);
      this.tell('format.unknown-key', message, this.typed.source.placeOfKey(...this.within(path), key));
    }
  }

  /** Of several forms that a value may have, the faults of the one that it comes nearest to. */
  private union(issue: z.core.$ZodIssueInvalidUnion, value: unknown, path: Path): void {
    if (issue.errors.length === 0) this.fault(enumFault(value, Object.keys(kindOf(this.kind).variants?.forms ?? {})), path);
    const inside = (errors: readonly z.core.$ZodIssue[]): boolean =>
      errors.some((one) => one.path.length > 0 || one.code === 'unrecognized_keys');
    const best = (typeof value === 'object' ? issue.errors.find(inside) : undefined) ?? issue.errors[0] ?? [];
    for (const one of best) this.issue(one, path);
  }

  private expectedBy(issue: z.core.$ZodIssue, path: Path): string {
    if (issue.code === 'invalid_type' && issue.expected === 'array') return 'a list, as `[…]`';
    if (issue.code === 'invalid_type' && (issue.expected === 'object' || issue.expected === 'record')) {
      const [key] = keysOf(this.schema, path, this.typed.data);
      return key === undefined ? 'a block of keys' : `a block of keys, as \`{${key}: …}\``;
    }
    if (issue.code === 'too_small') return `${issue.minimum} or more`;
    if (issue.code === 'too_big') return `${issue.maximum} or fewer`;
    return 'another kind of value';
  }

  private tell(rule: string, message: string, place: Finding['place']): void {
    const { id } = this.typed;
    this.say({ rule, severity: 'error', message, ids: id === undefined ? [] : [id], place });
  }

  private place(path: Path): Finding['place'] {
    return this.typed.source.place(...this.within(path));
  }

  private within(path: Path): Path {
    return [...(this.typed.path ?? []), ...path];
  }
}

function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}

/** `\`depth\``, `item 2 of \`from\``, `\`date\` in item 1 of \`inspections\``. */
function named(path: Path): string {
  const words: string[] = [];
  let items: number[] = [];
  for (const step of path) {
    if (typeof step === 'number') items.push(step + 1);
    else {
      if (items.length > 0) words.push(`item ${items.join('.')} of ${words.pop() ?? ''}`);
      items = [];
      words.push(`\`${step}\``);
    }
  }
  if (items.length > 0) words.push(`item ${items.join('.')}${words.length > 0 ? ` of ${words.pop()}` : ''}`);
  return words.slice(-2).reverse().join(' in ');
}
