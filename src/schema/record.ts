import { z } from 'zod';
import type { Field, Fields } from './fields.js';

/** What every record may carry beside its own fields. Keys that begin with `x-` are the shop's own and are never looked at. */
export const shared = (f: Fields) => ({
  note: f.text('Anything worth knowing that has no field of its own').optional(),
  photos: f.ids('Ids of photos that show it').optional(),
  by: f.text('Who did it or entered it').optional(),
  date: f.date('When it was done').optional(),
  stage: f.id('Build stage that it belongs to, as in library/stages.yaml').optional(),
});

type Common = ReturnType<typeof shared> & { id: Field<string> };

/** A record of its own fields and the shared ones; its own rule where both have one. */
export function record<Own extends z.core.$ZodLooseShape>(
  f: Fields,
  own: Own,
): z.ZodObject<z.core.util.Flatten<Omit<Common, keyof Own> & Own>, z.core.$strict> {
  const id = f.id('The shop’s own number or name for it, unique in the shell');
  return z.strictObject({ id, ...shared(f), ...own }) as never;
}
