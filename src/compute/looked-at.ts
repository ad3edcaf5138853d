import type { Model } from '../model/shell.js';

/** A model that notes what is looked at in it. */
export interface NotingModel {
  readonly model: Model;
  /** `shell.members`, `library.sections`, `byId.M-14`: enough to know what a figure hangs on. */
  readonly notes: ReadonlySet<string>;
}

const PARTS = ['shell', 'library', 'shop'] as const;
type Part = (typeof PARTS)[number];

/**
 * The same model, noting each list, library and single record that is read from it. Whoever goes over a part as a whole has read all of it.
 * Figures of it share nothing that was computed of another: what one of them looked at would not be noted for the next.
 */
export function noting(model: Model): NotingModel {
  const notes = new Set<string>();
  const note = (name: string): void => void notes.add(name);
  const shell = noted('shell', { ...model.shell, byId: new NotingIndex(model.shell.byId, note) }, note, new Set(['byId']));
  const parts = { shell, library: noted('library', model.library, note), shop: noted('shop', model.shop, note) };
  return { model: noted('model', { ...model, ...parts }, note, new Set(PARTS)), notes };
}

function noted<T extends object>(name: string, value: T, note: (name: string) => void, silent: ReadonlySet<string> = NONE): T {
  const say = (key: string | symbol): void => {
    if (typeof key === 'string' && !silent.has(key)) note(`${name}.${key}`);
  };
  const all = (): void => note(`${name}.${EVERYTHING}`);
  return new Proxy(value, {
    get: (target, key) => {
      say(key);
      return Reflect.get(target, key);
    },
    has: (target, key) => {
      say(key);
      return Reflect.has(target, key);
    },
    ownKeys: (target) => {
      all();
      return Reflect.ownKeys(target);
    },
    getOwnPropertyDescriptor: (target, key) => {
      say(key);
      return Reflect.getOwnPropertyDescriptor(target, key);
    },
  });
}

const NONE: ReadonlySet<string> = new Set();
const EVERYTHING = '*';

type Index = Model['shell']['byId'];
type Entry = Index extends ReadonlyMap<string, infer E> ? E : never;

class NotingIndex implements ReadonlyMap<string, Entry> {
  constructor(
    private readonly of: Index,
    private readonly note: (name: string) => void,
  ) {}

  get(id: string): Entry | undefined {
    this.note(`byId.${id}`);
    return this.of.get(id);
  }

  has(id: string): boolean {
    return this.get(id) !== undefined;
  }

  private all(): Index {
    this.note(`shell.${EVERYTHING}`);
    return this.of;
  }

  get size(): number {
    return this.all().size;
  }

  forEach(act: (value: Entry, key: string, map: ReadonlyMap<string, Entry>) => void): void {
    for (const [key, value] of this.all()) act(value, key, this);
  }

  entries(): MapIterator<[string, Entry]> {
    return this.all().entries();
  }

  keys(): MapIterator<string> {
    return this.all().keys();
  }

  values(): MapIterator<Entry> {
    return this.all().values();
  }

  [Symbol.iterator](): MapIterator<[string, Entry]> {
    return this.entries();
  }
}

/** Of what the history says: plain data too. */
const BESIDE = ['changes', 'entered', 'builtSincePlanned', 'sharedCommits'] as const satisfies readonly (keyof Model)[];

/** What was looked at, as a note says. Undefined for what cannot be told apart by its contents: other shells. */
export function atNote(model: Model, note: string): { readonly value: unknown } | undefined {
  const dot = note.indexOf('.');
  const [part, key] = [note.slice(0, dot), note.slice(dot + 1)];
  if (part === 'byId') return { value: model.shell.byId.get(key) };
  if (part === 'model') return (BESIDE as readonly string[]).includes(key) ? { value: model[key as keyof Model] } : undefined;
  const whole = model[part as Part];
  return { value: key === EVERYTHING ? whole : Reflect.get(whole, key) };
}
