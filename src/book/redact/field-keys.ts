import { lazy } from '../../compute/lazy.js';
import type { AnyField, Fields } from '../../records/field.js';
import { KINDS } from '../../records/kinds.js';

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
export const fieldKeys: () => FieldKeys = lazy(() => {
  const [person, personById, hidden] = [new Set<string>(), new Set<string>(), new Set<string>()];
  const look = (key: string, { shape, traits }: AnyField): void => {
    const names = [key, traits.name ?? camelCase(key)];
    for (const name of names) {
      if (traits.person) person.add(name);
      if (traits.person && shape.is === 'value' && shape.form.as === 'id') personById.add(name);
      if (traits.private) hidden.add(name);
    }
    if (shape.is === 'block') lookAt(shape.fields);
    else if (shape.is === 'list') look(key, shape.each);
    else if (shape.is === 'table') look(key, shape.value);
    else if (shape.is === 'either') for (const one of shape.forms) look(key, one);
    else if (shape.is === 'open') lookAt(shape.fields);
  };
  const lookAt = (fields: Fields): void => {
    for (const [key, field] of Object.entries(fields)) look(key, field);
  };
  for (const kind of Object.values(KINDS)) lookAt((kind as { fields: Fields }).fields);
  return { person, personById, private: hidden };
});

const camelCase = (key: string): string => key.replace(/_(\w)/gu, (_all, letter: string) => letter.toUpperCase());
