import type { Traits } from './field.js';
import { KIND_NAMES, kindOf } from './kinds.js';
import { nameOf } from './read-model.js';
import { eachField } from './references.js';

/** Keys of every field, of whatever kind, that says this of itself: as the record files and as the model call it. */
export function keysWith(says: (traits: Traits) => boolean): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const kind of KIND_NAMES) {
    eachField(kindOf(kind).fields, (field, _path, key) => {
      if (says(field.traits)) keys.add(key).add(nameOf(key, field));
    });
  }
  return keys;
}
