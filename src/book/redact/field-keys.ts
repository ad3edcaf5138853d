import { lazy } from '../../compute/lazy-value.js';
import type { AnyField } from '../../records/field.js';
import { KIND_NAMES, kindOf } from '../../records/kinds.js';
import { fieldNameOf } from '../../records/read-model.js';
import { eachField } from '../../records/references.js';

/** Keys of fields by what a redaction must know of them, as the record files and as the model call them. */
interface FieldKeys {
  /** It names a person. */
  readonly person: ReadonlySet<string>;
  /** It names a person by the id in the register: nothing but an id may stand there. */
  readonly personById: ReadonlySet<string>;
  /** Never printed for an owner or a service shop. */
  readonly private: ReadonlySet<string>;
}

/** By what the fields say of themselves; see the traits in `records/field.ts`. */
export const fieldKeys: () => FieldKeys = lazy(() => ({
  person: keysOf(({ traits }) => traits.person === true),
  personById: keysOf(({ traits, shape }) => traits.person === true && shape.is === 'value' && shape.form.as === 'id'),
  private: keysOf(({ traits }) => traits.private === true),
}));

function keysOf(says: (field: AnyField) => boolean): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const kind of KIND_NAMES) {
    eachField(kindOf(kind).fields, (field, _path, key) => {
      if (says(field)) keys.add(key).add(fieldNameOf(key, field));
    });
  }
  return keys;
}
