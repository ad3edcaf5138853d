import type { Finding } from '../finding.js';
import type { AnyField, Fields, Given } from './field.js';
import type { KindName, Medium } from './names.js';
import type { RecordBase } from './record-base.js';
import { COMMON } from './shared.js';
import type { Flat, KeysOf, ModelOf, ReadOf, Source, TypedOf } from './types.js';

/** Where records of a kind are typed: in a list of the library, of a shell, of a service, of shell.yaml; or it is no record of a list. */
export type Home =
  | { readonly in: 'library'; readonly list: string }
  | { readonly in: 'shell'; readonly list: string }
  | { readonly in: 'service'; readonly list: 'circuits' | 'nodes' | 'runs' }
  | { readonly in: 'head'; readonly path: readonly string[] }
  | { readonly in: 'part' };

/** Own fields of a record of a list with the shared ones; its own field where both have one. */
export type Whole<Own> = Flat<Omit<typeof COMMON, keyof Own> & Own>;

/** A record as the model has it before its kind gives it another shape. */
export type PlainRecord<Own, H extends Home> = H['in'] extends 'head'
  ? Flat<
      { readonly source?: Source<KeysOf<Whole<Own>>>; readonly photos?: readonly string[] } & Omit<ModelOf<Whole<Own>>, 'photos'>
    >
  : H['in'] extends 'part'
    ? ModelOf<Own>
    : H['in'] extends 'service'
      ? Flat<Typed<Whole<Own>> & { readonly service: string; readonly medium: Medium } & ModelOf<Whole<Own>>>
      : Flat<Typed<Whole<Own>> & ModelOf<Whole<Own>>>;

/** Where a record was typed, and what. */
export interface Typed<F> {
  readonly source: Source<KeysOf<F>>;
  /** The record as plain data as it was typed (no units converted): what the fingerprint covers and editions carry. */
  readonly typed: TypedOf<F>;
}

/** A record whose form is right, as its kind's own checks see it. */
export interface Formed<F> {
  readonly id: string;
  readonly form: ReadOf<F>;
  readonly source: Source<KeysOf<F>>;
}
/** Tells a fault that no single field can see, at its line. */
export type Report = (rule: string, message: string, place: Finding['place'], ids: readonly string[]) => void;

/** Keys of a kind, and of the blocks within: `protection.rating`. */
export type Keys<F> = KeysOf<F> | `${KeysOf<F>}.${string}`;

/** How records of a kind are compared with those of other shells: pasted and not made anew, or a coincidence worth a look. */
export interface Repeated<F> {
  /** What is the same: `readings and dates`. */
  readonly what: string;
  /** This many must repeat before anything is said: a few may agree by chance. */
  readonly least: number;
  /** And this share of the records that can be compared. */
  readonly share?: number;
  /** Compared where typed. */
  readonly same: readonly KeysOf<F>[];
  /** Compared, and so many of them at least must be typed. */
  readonly readings: readonly KeysOf<F>[];
  readonly leastReadings: number;
  /** Key whose value the other file must have before it is read at all. */
  readonly word: KeysOf<F>;
}

/** What a kind says of itself beside its fields. */
export interface More<Own, H extends Home, R> {
  /** How a message speaks of one; `a weld` where not given. */
  readonly words?: string;
  /** Of one and of several, where that is not the kind's name with an s. */
  readonly counted?: readonly [string, string];
  /** Gives a record its final shape; undefined where it is not whole, which `check` has told. */
  finish?(record: PlainRecord<Own, H>, given: Given): R | undefined;
  /** Faults that no single field can see. */
  check?(record: Formed<Whole<Own>>, report: Report): void;
  /** Keys that look right and are never typed, with the reason. */
  readonly never?: Readonly<Record<string, string>>;
  /** It says what is to be built; the others say what was done, weighed, found or seen. */
  readonly structure?: boolean;
  /** What the shop wants to be asked, in the order in which one knows it on the floor. */
  readonly asked?: readonly Keys<Whole<Own>>[];
  /** Asked of another form of it. */
  readonly askedOtherwise?: readonly Keys<Whole<Own>>[];
  /** Needed of one form of it, though not of every. */
  readonly needed?: readonly Keys<Whole<Own>>[];
  /** Further words of sheets, in small letters without signs → key. */
  readonly called?: Readonly<Record<string, Keys<Whole<Own>>>>;
  /** People read it from top to bottom, a field a line. */
  readonly block?: boolean;
  /** Evidence, of a life of its own beside a sign-off, or kept up after a stage is signed. */
  readonly stands?: 'evidence' | 'own life' | 'kept up';
  /** When what it tells of happened, by the first of these keys that is typed. */
  readonly event?: readonly Keys<Whole<Own>>[];
  /** How likely a picture shows one: 1 is the likeliest. */
  readonly pictured?: number;
  readonly repeated?: Repeated<Whole<Own>>;
  /** Typed words that tell one from another, of a kind that needs no id. */
  readonly toldBy?: readonly KeysOf<Whole<Own>>[];
}

/** One kind of record, stated once. `F`: all of its fields. `R`: a record of it in the model. */
export interface Kind<N extends KindName = KindName, F = Fields, R = unknown, H extends Home = Home> {
  readonly name: N;
  readonly home: H;
  readonly fields: F;
  readonly variants?: Variants;
  readonly more: Omit<More<Fields, Home, unknown>, 'finish' | 'check'> & {
    readonly finish?: (record: never, given: Given) => R | undefined;
    readonly check?: (record: never, report: Report) => void;
  };
}

/** A record kind of a list: its own fields beside those that every record may carry. */
export const kind = <const N extends KindName, const H extends Home, Own extends Fields, R = PlainRecord<Own, H>>(
  name: N,
  home: H,
  own: Own,
  more: More<Own, H, R> = {},
): Kind<N, Whole<Own>, R, H> => ({ name, home, fields: { ...COMMON, ...own } as never, more: more as never });

/** What is no record of a list: a whole file or a part of its head. */
export const part = <const N extends KindName, Own extends Fields>(
  name: N,
  fields: Own,
  more: { readonly words?: string } = {},
): Kind<N, Own, ModelOf<Own>, { readonly in: 'part' }> => ({ name, home: { in: 'part' }, fields, more });

/** A part of shell.yaml that stands in a list there and has no id. */
export const head = <const N extends KindName, const P extends readonly string[], Own extends Fields>(
  name: N,
  path: P,
  fields: Own,
  more: { readonly structure?: boolean; readonly toldBy?: readonly KeysOf<Own>[] } = {},
): Kind<N, Own, ModelOf<Own>, { readonly in: 'head'; readonly path: P }> => ({ name, home: { in: 'head', path }, fields, more });

/** Forms of a kind by the word under one key: each has fields of its own. */
export interface Variants {
  readonly key: string;
  readonly keyCalled: readonly string[];
  readonly forms: Readonly<Record<string, Fields>>;
}

/** A kind of several forms, told apart by the word under one key. `own`: the form's own fields in the model, that word among them. */
export const variants = <const N extends KindName, const H extends Home, R>(
  name: N,
  home: H,
  forms: Variants,
  more: Omit<More<Fields, H, R>, 'finish' | 'check' | 'called'> & {
    readonly called?: Readonly<Record<string, string>>;
    finish(parts: { readonly base: RecordBase; readonly own: Readonly<Record<string, unknown>> }): R;
  },
): Kind<N, Fields, R, H> => ({ name, home, fields: COMMON, variants: forms, more: more as never });

/** A record of a kind. */
export type RecordOf<K> = K extends Kind<KindName, infer _F, infer R, Home> ? R : never;
/** The form of a kind as read: in SI under its typed keys. */
export type FormOf<K> = K extends Kind<KindName, infer F, infer _R, Home> ? ReadOf<F> : never;
export type { AnyField };
