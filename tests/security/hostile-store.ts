/**
 * A store whose every field of text says the same bad thing. The fields are found by walking the schemas, so that a field that is
 * added tomorrow is tried tomorrow; what else a record needs is taken from the small store, or made up by the form of the field.
 */
import { parse } from 'yaml';
import { z } from 'zod';
import { EXAMPLES } from '../../src/quantity/units.js';
import { formOf } from '../../src/records/form/field-form.js';
import { KIND_IN } from '../../src/records/lists.js';
import type { KindName as Kind } from '../../src/records/names.js';
import { Schemas } from '../../src/records/schema.js';
import { SHELL_LISTS } from '../../src/store/layout.js';
import { smallStore } from '../book/small-store.js';

type Data = Record<string, unknown>;
type List = string;

export interface HostileStore {
  readonly files: Readonly<Record<string, string>>;
  /** Each field that was filled → the words that mark it: `weld.inspections.reason` → `q0017q`. */
  readonly marks: ReadonlyMap<string, string>;
}

const SCHEMAS = new Schemas({ length: 'in', mass: 'lb' });

/** Fills every field of text with the words, and a mark behind them unless they are to stand alone. */
export function hostileStore(words: string, alone = false): HostileStore {
  const filler = new Filler(words, alone);
  const files: Record<string, string> = {};
  const put = (file: string, data: unknown): void => {
    files[file] = `${JSON.stringify(data, null, 1)}\n`;
  };
  const base = smallStore();
  for (const [file, text] of Object.entries(base)) {
    if (!file.endsWith('.yaml')) files[file] = text;
    else put(file, filler.file(file, parse(text, { schema: 'failsafe' })));
  }
  const lists = (Object.keys(KIND_IN) as List[]).filter((list) => !Object.keys(base).some((file) => listOf(file) === list));
  for (const list of lists) put(homeOf(list), [filler.made(KIND_IN[list] as Kind)]);
  return { files, marks: filler.marks };
}

/** `shells/T-1/members.yaml` → `members`. */
const listOf = (file: string): string => file.split('/').at(-1)?.replace('.yaml', '') ?? '';

const homeOf = (list: string): string => {
  if (list === 'rules') return 'library/rules/made.yaml';
  return (SHELL_LISTS as readonly string[]).includes(list) ? `shells/T-1/${list}.yaml` : `library/${list}.yaml`;
};

/** Parts of shell.yaml that are read each on its own. */
const SHELL_PARTS: Readonly<Record<string, Kind>> = {
  tanks: 'tank',
  seats: 'seat',
  bays: 'bay',
  conditions: 'loading condition',
};
const SERVICE_PARTS: Readonly<Record<string, Kind>> = { circuits: 'circuit', nodes: 'node', runs: 'run' };

class Filler {
  readonly marks = new Map<string, string>();

  constructor(
    private readonly words: string,
    private readonly alone: boolean,
  ) {}

  file(file: string, typed: unknown): unknown {
    const name = listOf(file);
    if (name === 'shop') return this.kind('shop', typed as Data);
    if (name === 'shell') return this.shell(typed as Data);
    if (file.includes('/services/'))
      return { ...this.lists(typed as Data, SERVICE_PARTS), ...this.head('service', typed as Data, SERVICE_PARTS) };
    return (typed as Data[]).map((one) => this.kind(KIND_IN[name as List] as Kind, one));
  }

  /** A record of a kind of which the small store has none. */
  made(kind: Kind): unknown {
    return this.kind(kind, { id: `${kind}-1` });
  }

  private shell(typed: Data): Data {
    const { axles, bare, ...chassis } = typed.chassis as Data;
    const parts = { ...SHELL_PARTS, chassis: 'chassis' as const };
    return {
      ...this.lists({ conditions: [{}], ...typed }, SHELL_PARTS),
      ...this.head('shell', typed, parts),
      chassis: {
        ...this.kind('chassis', chassis),
        axles: (axles as Data[]).map((one) => this.kind('axle', one)),
        bare: this.kind('bare', bare as Data),
      },
    };
  }

  private lists(typed: Data, parts: Readonly<Record<string, Kind>>): Data {
    return Object.fromEntries(
      Object.entries(parts).map(([key, kind]) => [key, ((typed[key] ?? []) as Data[]).map((one) => this.kind(kind, one))]),
    );
  }

  private head(kind: Kind, typed: Data, parts: Readonly<Record<string, Kind>>): Data {
    return this.kind(kind, Object.fromEntries(Object.entries(typed).filter(([key]) => !(key in parts))));
  }

  private kind(kind: Kind, typed: Data): Data {
    return this.filled(SCHEMAS.of(kind), typed, kind) as Data;
  }

  /** What stands at a place of a record, or what can stand there, with every text in it replaced. */
  private filled(schema: z.core.$ZodType, typed: unknown, at: string): unknown {
    if (schema instanceof z.ZodOptional) return this.filled(schema.unwrap(), typed, at);
    if (schema instanceof z.ZodObject) return this.object(schema, (typed ?? {}) as Data, at);
    if (schema instanceof z.ZodArray) {
      const items = Array.isArray(typed) && typed.length > 0 ? typed : [undefined];
      return items.map((one) => this.filled(schema.element, one, at));
    }
    if (schema instanceof z.ZodUnion) return this.filled(branchOf(schema, typed), typed, at);
    if (schema instanceof z.ZodRecord) return typed ?? {};
    const { as } = formOf(schema);
    if (as === 'text' || as === 'texts') return this.text(schema, at);
    return typed ?? exampleOf(schema, at);
  }

  private object(schema: z.ZodObject, typed: Data, at: string): Data {
    const out: Data = { ...typed };
    for (const [key, field] of Object.entries(schema.shape) as [string, z.core.$ZodType][]) {
      const place = `${at}.${key}`;
      if (typed[key] !== undefined || !(field instanceof z.ZodOptional) || hasText(field))
        out[key] = this.filled(field, typed[key], place);
    }
    return out;
  }

  /** The bad words; within the form of the field where it has one of its own. */
  private text(schema: z.core.$ZodType, at: string): unknown {
    const mark = this.marks.get(at) ?? `q${String(this.marks.size).padStart(4, '0')}q`;
    const said = this.alone ? this.words : `${this.words} ${mark}`;
    const sized = `1/2 in ${said}`;
    // Text to the form, and a day to its reader: nothing else can be typed there.
    const day = '2026-03-02';
    const found = [said, sized, sized.replaceAll(/[\r\n\u2028]/gu, ''), day].find((one) => z.safeParse(schema, one).success);
    if (found === undefined) throw new Error(`No text passes ${at}`);
    if (found !== day) this.marks.set(at, mark);
    return found;
  }
}

/** Whether a text can be typed somewhere in it. */
function hasText(schema: z.core.$ZodType): boolean {
  if (schema instanceof z.ZodOptional) return hasText(schema.unwrap());
  if (schema instanceof z.ZodArray) return hasText(schema.element);
  if (schema instanceof z.ZodUnion) return schema.options.some(hasText);
  if (schema instanceof z.ZodObject) return Object.values(schema.shape).some((one) => hasText(one as z.core.$ZodType));
  const { as } = formOf(schema);
  return as === 'text' || as === 'texts';
}

/** The branch of what stands there; else the one with most to say. */
function branchOf(schema: z.ZodUnion, typed: unknown): z.core.$ZodType {
  const { options } = schema;
  const fits = options.find((one) => typed !== undefined && z.safeParse(one, typed).success);
  return fits ?? options.find(hasText) ?? (options[0] as z.core.$ZodType);
}

const PLACE = ['100 in', '0 in', '0 in'];
const CORNERS = [PLACE, ['120 in', '0 in', '0 in'], ['120 in', '20 in', '1 in']];

/** Something that a field of this form takes. */
function exampleOf(schema: z.core.$ZodType, at: string): unknown {
  const form = formOf(schema);
  const known = {
    quantity: 'dimension' in form ? EXAMPLES[form.dimension] : undefined,
    range: 'dimension' in form ? [EXAMPLES[form.dimension], EXAMPLES[form.dimension]] : undefined,
    choice: 'values' in form ? form.values[0] : undefined,
    id: 'SF-L',
    ids: ['SF-L'],
    date: '2026-03-02',
    'yes or no': 'yes',
    count: '2',
    level: '1/2',
    place: PLACE,
    places: CORNERS,
    outlines: [CORNERS],
    'two lengths': '14 in x 18 in',
    'any quantity': '3 psi',
  } as Readonly<Record<string, unknown>>;
  const tries = [known[form.as], 'made.jpg', '14', '6 A', CORNERS.slice(0, 2), ['gas', 'ac'], ['SF-L', 'SF-R'], {}, 'SF-L', '1'];
  const found = tries.find((one) => one !== undefined && z.safeParse(schema, one).success);
  if (found === undefined) throw new Error(`No example for ${at}, a ${form.as}`);
  return found;
}
