import type { Model } from '../model/shell.js';
import { plainOf } from '../store/plain-of.js';
import type { Sections } from '../store/sections.js';

/** What a record has of its text: half of a model, and no look-up asks for it. */
type Typed = { typed?: unknown };
type TypedById = ReadonlyMap<string, unknown>;

const recordsIn = ({ shell }: Model): Iterable<readonly [string, { readonly record: Typed }]> =>
  shell.byId as unknown as Map<string, { readonly record: Typed }>;

/** Keeps a model, without what the other shells say and what the history says; what was typed lies apart, and is read when it is asked for. */
export function keepModel(kept: Sections, { elsewhere: _neighbours, changes: _dated, ...own }: Model): void {
  const copy = plainOf(own) as Model;
  const typed = new Map<string, unknown>();
  for (const [id, { record }] of recordsIn(copy)) {
    typed.set(id, record.typed);
    delete record.typed;
  }
  kept.put('typed', typed);
  kept.put('model', copy);
}

/** The model that was kept; undefined where none was. */
export function keptModel(kept: Sections): Model | undefined {
  const model = kept.get('model') as Model | undefined;
  if (!model || !kept.has('typed')) return undefined;
  // One description for all: a closure for each of two thousand records takes longer than most answers.
  const typed: PropertyDescriptor & ThisType<{ readonly id: string }> = {
    get() {
      return (kept.get('typed') as TypedById).get(this.id);
    },
    enumerable: true,
    configurable: true,
  };
  for (const [, { record }] of recordsIn(model)) Object.defineProperty(record, 'typed', typed);
  return model;
}
