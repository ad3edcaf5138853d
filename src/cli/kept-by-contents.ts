import type { Figures } from '../compute/figures.js';
import { figuresOf, type PictureOf } from '../compute/figures-of.js';
import { lazyFields } from '../compute/lazy.js';
import { atNote, noting } from '../compute/looked-at.js';
import type { Model } from '../model/shell.js';
import { plainOf } from '../store/plain-of.js';
import { digest } from '../store/sealed.js';
import type { Sections } from '../store/sections.js';

/** Figures that take long, with those that are computed of them: plain data that holds no record. */
const GROUPS: Readonly<Record<string, readonly (keyof Figures)[]>> = {
  frame: ['joints', 'heatAffectedZones', 'openings'],
  reach: ['access'],
  sight: ['solvedPhotos', 'photos'],
};

/** What a group was computed of: each thing that was looked at, and the digest of what stood there. */
type LookedAt = readonly (readonly [note: string, sha256: string])[];

export interface FiguresByContents {
  readonly figures: Figures;
  /** Keeps what was computed just now. */
  save(): Promise<void>;
}

/**
 * Figures of a shell, of which the dear ones come from `kept` where everything that they looked at when they were computed is as it was:
 * a test's day or a sign-off moves no joint. The others are computed, and what they look at is noted with them.
 */
export function figuresByContents(model: Model, pictureOf: PictureOf, kept: Sections): FiguresByContents {
  const figures = figuresOf(model, pictureOf);
  const digests = new Digests(model, pictureOf);
  const groups = Object.entries(GROUPS).map(([name, members]) => new Group(name, members, kept, digests, model, pictureOf));
  const ofGroups = groups.flatMap((group) => group.members.map((name) => [name, () => group.figure(name)] as const));
  const others = Object.keys(figures).map((name) => [name, () => figures[name as keyof Figures]] as const);
  return {
    figures: lazyFields<Figures>(
      Object.fromEntries([...others, ...ofGroups]) as unknown as { [K in keyof Figures]: () => Figures[K] },
    ),
    async save() {
      for (const group of groups) group.keep();
      await kept.save();
    },
  };
}

class Group {
  private computed?: { readonly figures: Figures; readonly notes: () => readonly string[] };
  private isKept?: boolean;

  constructor(
    private readonly name: string,
    readonly members: readonly (keyof Figures)[],
    private readonly kept: Sections,
    private readonly digests: Digests,
    private readonly model: Model,
    private readonly pictureOf: PictureOf,
  ) {}

  figure(name: keyof Figures): unknown {
    this.isKept ??= this.holds();
    return this.isKept ? this.kept.get(this.section(name)) : this.fresh().figures[name];
  }

  /** Nothing where none was asked for, or something was looked at that has no digest. */
  keep(): void {
    if (!this.computed) return;
    const { figures, notes } = this.computed;
    // A record that is kept has lost its place in the file.
    if (this.members.some((name) => holdsRecord(figures[name]))) return void this.kept.put(this.section(), null);
    for (const name of this.members) this.kept.put(this.section(name), figures[name]);
    const lookedAt: [string, string][] = [];
    for (const note of notes()) {
      const sha256 = this.digests.of(note);
      // The entry of before is of other records.
      if (sha256 === undefined) return void this.kept.put(this.section(), null);
      lookedAt.push([note, sha256]);
    }
    this.kept.put(this.section(), lookedAt satisfies LookedAt);
  }

  private section(name?: string): string {
    return name === undefined ? `group ${this.name}` : `group ${this.name}, ${name}`;
  }

  private holds(): boolean {
    const lookedAt = this.kept.get(this.section()) as LookedAt | null | undefined;
    if (!Array.isArray(lookedAt) || !this.members.every((name) => this.kept.has(this.section(name)))) return false;
    return lookedAt.every(([note, sha256]) => this.digests.of(note) === sha256);
  }

  private fresh(): { readonly figures: Figures; readonly notes: () => readonly string[] } {
    if (!this.computed) {
      const { model, notes } = noting(this.model);
      const pictures = new Set<string>();
      const pictureOf: PictureOf = (file) => {
        pictures.add(`${PICTURE}${file}`);
        return this.pictureOf(file);
      };
      this.computed = { figures: figuresOf(model, pictureOf), notes: () => [...notes, ...pictures] };
    }
    return this.computed;
  }
}

function holdsRecord(value: unknown, seen = new Set<object>()): boolean {
  if (typeof value === 'function') return true;
  if (value === null || typeof value !== 'object' || seen.has(value)) return false;
  seen.add(value);
  const parts = value instanceof Map ? [...value].flat() : value instanceof Set ? [...value] : Object.values(value);
  return 'source' in value || parts.some((one) => holdsRecord(one, seen));
}

const PICTURE = 'picture ';

class Digests {
  private readonly known = new Map<string, string | undefined>();

  constructor(
    private readonly model: Model,
    private readonly pictureOf: PictureOf,
  ) {}

  of(note: string): string | undefined {
    if (!this.known.has(note)) this.known.set(note, this.make(note));
    return this.known.get(note);
  }

  private make(note: string): string | undefined {
    const found = note.startsWith(PICTURE) ? { value: this.pictureOf(note.slice(PICTURE.length)) } : atNote(this.model, note);
    return found && digestOf(found.value);
  }
}

/** Of contents alone: how V8 writes a value down hangs on how it came about. Undefined for what goes round in a circle. */
function digestOf(value: unknown): string | undefined {
  try {
    return digest(JSON.stringify(plainOf(value), told) ?? 'undefined');
  } catch {
    return undefined;
  }
}

/** What JSON would make something else of, under a name that no record has. */
function told(_key: string, value: unknown): unknown {
  if (value instanceof Map) return { '<map>': [...value] };
  if (value instanceof Set) return { '<set>': [...value] };
  if (value === undefined) return { '<undefined>': 1 };
  if (typeof value === 'number' && (Object.is(value, -0) || !Number.isFinite(value)))
    return { '<number>': Object.is(value, -0) ? '-0' : String(value) };
  return value;
}
