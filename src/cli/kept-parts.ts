import { type KeptAt, keptByContents } from '../store/kept-answers.js';
import { digest } from '../store/sealed.js';
import { Sections } from '../store/sections.js';
import type { OpenShell } from './open.js';
import { programFiles } from './program-files.js';

/** Beyond this many the oldest go. The three books of a coach of two thousand records have about three hundred. */
const MOST_PARTS = 900;

const PARTS = 'parts';

/**
 * Parts of a shell's books, each kept by all that it is made of: a second edition, and a print after a change of something else, takes
 * them as they are. Plain data of the store's own, beside its Git folder, marked with the user's key; outside Git for one run alone.
 */
export class KeptParts {
  private readonly used = new Map<string, unknown>();
  private earlier?: ReadonlyMap<string, unknown>;
  private isNew = false;

  private constructor(private readonly kept: Sections | undefined) {}

  static of({ store: { root, history, book }, assessment }: OpenShell): KeptParts {
    const question = `${root}\n${assessment.model.shell.id}\nparts of books`;
    return KeptParts.at(history && !book ? keptByContents(history.gitDir, question, programFiles()) : undefined);
  }

  static at(place: KeptAt | undefined): KeptParts {
    return new KeptParts(place && Sections.open(place));
  }

  /** What was made of exactly this text, else what `make` makes of it. `kind` says how. */
  once<T>(kind: string, of: string, make: () => T): T {
    const name = `${kind} ${digest(of)}`;
    if (this.used.has(name)) return this.used.get(name) as T;
    this.earlier ??= partsIn(this.kept);
    const isKept = this.earlier.has(name);
    const part = isKept ? (this.earlier.get(name) as T) : make();
    this.isNew ||= !isKept;
    this.used.set(name, part);
    return part;
  }

  /** Keeps what was asked for, and of the rest the newest. */
  async save(): Promise<void> {
    if (!this.kept || !this.isNew) return;
    const rest = [...(this.earlier ?? [])].filter(([name]) => !this.used.has(name));
    this.kept.put(PARTS, new Map([...this.used, ...rest].slice(0, MOST_PARTS)));
    this.isNew = false;
    await this.kept.save();
  }
}

function partsIn(kept: Sections | undefined): ReadonlyMap<string, unknown> {
  const found = kept?.get(PARTS);
  return found instanceof Map ? found : new Map();
}
