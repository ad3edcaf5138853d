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

/** What a record of a list may carry beside. */
const listed = (f: Fields) => ({
  place: f.text('Where it is, in words that a stranger understands').optional(),
  planned: f.yesNo('yes while it is not in the coach yet; take it away and type its date once it is').optional(),
  corrected: statement(f, 'The entry was mended and the coach did not change: when, by whom, why'),
});

/** A word given by a person on a day. */
export const statement = (f: Fields, help: string) =>
  z
    .strictObject({ date: f.date('When'), by: f.text('Who'), why: f.text('Why') })
    .meta({ description: help })
    .optional();

type Common = ReturnType<typeof shared> & ReturnType<typeof listed> & { id: Field<string> };

/** A record of its own fields and the shared ones; its own rule where both have one. */
export function record<Own extends z.core.$ZodLooseShape>(
  f: Fields,
  own: Own,
): z.ZodObject<z.core.util.Flatten<Omit<Common, keyof Own> & Own>, z.core.$strict> {
  const id = f.id('The shop’s own number or name for it, unique in the shell');
  return z.strictObject({ id, ...shared(f), ...listed(f), ...own }) as never;
}
