import type { z } from 'zod';
import type { FieldForm } from './form/field-form.js';
import type { JsonHelp } from './form/plain-fields.js';
import type { Read, UnitReader } from './form/unit-reader.js';
import type { KindName, Medium } from './names.js';

/** Must it be typed? Where not, the model has it undefined, or has what is usual. */
export type Presence = 'optional' | 'required' | 'usual';

/** What a recall asks for (`trace heat H-4471`). */
export type TraceWord = 'heat' | 'lot' | 'welder' | 'procedure' | 'instrument' | 'part' | 'certificate';

/** How a field is built: one value, a block of keys, a list, a table by id, one of several forms, or a block with further keys. */
export type FieldShape =
  | {
      readonly is: 'value';
      readonly read: (units: UnitReader) => Read<unknown>;
      readonly json: JsonHelp;
      readonly form: FieldForm;
      /** Where the ids stand that it may name: '' it is one, '*' each of its items, '*.*' each of theirs. */
      readonly idsAt: readonly string[];
    }
  | { readonly is: 'block'; readonly fields: Fields }
  | { readonly is: 'list'; readonly each: AnyField; readonly size?: readonly [number, number] }
  | { readonly is: 'table'; readonly value: AnyField }
  | { readonly is: 'either'; readonly forms: readonly AnyField[] }
  | { readonly is: 'open'; readonly fields: Fields; readonly rest: AnyField };

/** What is known of the record while its fields go into the model. */
export interface Given {
  readonly id: string;
  /** Of a circuit, node or run. */
  readonly medium?: Medium;
  /** The record or block as read, under its typed keys. */
  readonly read: Readonly<Record<string, unknown>>;
  /** Of the axles from front to rear the first. */
  readonly isFirst?: boolean;
  /** Keys down to it. */
  readonly path: readonly (string | number)[];
  /** Reads the words of a condition with the tanks and axles of its shell. */
  readonly condition?: (read: never, path: readonly (string | number)[]) => unknown;
}

/** Everything that a field says of itself beside its shape. */
export interface Traits {
  readonly help: string;
  readonly presence: Presence;
  /** Name in the model, where it is not the key with its unit. */
  readonly name?: string;
  readonly suffix: string;
  /** One value that becomes several in the model: key within it → suffix. */
  readonly parts?: Readonly<Record<string, string>>;
  readonly usual?: unknown;
  readonly convert?: (read: never, given: Given, key: string) => unknown;
  /** Kinds of record that it may name; `any` of this shell. Each is checked. */
  readonly names?: readonly KindName[] | 'any';
  /** A kind of the library that it leans on and whose records it need not find there. */
  readonly leansOn?: KindName;
  /** It names a person: their stamp, or who did something. */
  readonly person?: boolean;
  /** Free text, in which a person may be named among other words. */
  readonly prose?: boolean;
  /** Of one coach only: evidence, readings, lots, what its papers rate. The next coach does not take it over. */
  readonly ofOne?: boolean;
  /** Of one record only: one that is entered like it (`add --like`) is asked for its own. */
  readonly notLent?: boolean;
  /** It only describes: no part of what a sign-off covers. `early`: it was part of it in digests `c1-`. */
  readonly describes?: 'always' | 'early';
  /** Never printed for an owner or a service shop. */
  readonly private?: boolean;
  /** What sheets call its column, in small letters without signs. */
  readonly called?: readonly string[];
  /** When it is asked for, the last record's answer is offered. */
  readonly asLast?: boolean;
  readonly traced?: TraceWord;
  /** Words outside its list read, and a rule warns of them; new entry takes none. */
  readonly listed?: boolean;
  /** Words that stand before another field of its block at the head of a column, and fill this one: `VT by`. */
  readonly leads?: readonly string[];
}

export type Fields = Readonly<Record<string, AnyField>>;
export type AnyField = Field<unknown, unknown, string, string, Presence>;

/**
 * One field of a record, stated once. `R`: as read, in SI under its typed key. `M`: as the model has it. `S`: unit behind its name in
 * the model. `N`: its name there, where it has one of its own. `P`: must it be typed?
 */
export class Field<R, M = R, S extends string = '', N extends string = '', P extends Presence = 'optional'> {
  declare readonly types: { readonly read: R; readonly model: M; readonly suffix: S; readonly name: N; readonly presence: P };

  constructor(
    readonly shape: FieldShape,
    readonly traits: Traits,
  ) {}

  private with(traits: Partial<Traits>): never {
    return new Field(this.shape, { ...this.traits, ...traits }) as never;
  }

  required(): Field<R, M, S, N, 'required'> {
    return this.with({ presence: 'required' });
  }

  /** What the model has where it was not typed. */
  usual<U extends M>(usual: U | ((given: Given) => U)): Field<R, M, S, N, 'usual'> {
    return this.with({ presence: 'usual', usual });
  }

  /** Its whole name in the model. */
  as<As extends string>(name: As): Field<R, M, S, As, P> {
    return this.with({ name });
  }

  /** How the model has it, and the unit behind its name there. */
  model<To, Unit extends string = ''>(
    convert: (read: R, given: Given, key: string) => To,
    suffix?: Unit,
  ): Field<R, To, Unit, N, P> {
    return this.with({ convert, suffix: suffix ?? '' });
  }

  /** Kinds of which it must name a record, of this shell or of the library. */
  names(...kinds: readonly KindName[]): this {
    return this.with({ names: kinds });
  }

  /** It names a record of this shell, of whatever kind. */
  namesAny(): this {
    return this.with({ names: 'any' });
  }

  leansOn(kind: KindName): this {
    return this.with({ leansOn: kind });
  }

  person(): this {
    return this.with({ person: true });
  }

  ofOne(): this {
    return this.with({ ofOne: true });
  }

  notLent(): this {
    return this.with({ notLent: true });
  }

  describes(since: 'always' | 'early' = 'always'): this {
    return this.with({ describes: since });
  }

  private(): this {
    return this.with({ private: true });
  }

  called(...words: readonly string[]): this {
    return this.with({ called: words });
  }

  leads(...words: readonly string[]): this {
    return this.with({ leads: words });
  }

  asLast(): this {
    return this.with({ asLast: true });
  }

  traced(word: TraceWord): this {
    return this.with({ traced: word });
  }
}

const FIELDS = new WeakMap<z.core.$ZodType, AnyField>();

/** Remembers the field that a schema was made of. */
export function ofField<S extends z.core.$ZodType>(schema: S, field: AnyField): S {
  FIELDS.set(schema, field);
  return schema;
}

/** The field that a schema was made of, where it was made of one. */
export const fieldOf = (schema: z.core.$ZodType): AnyField | undefined => FIELDS.get(schema);
