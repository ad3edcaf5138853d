import { block, date, id, ids, prose, text, yesNo } from './fields.js';
import type { ModelOf } from './types.js';

/** A word given by a person on a day. */
export const statement = (help: string) =>
  block(
    { date: date('When').required(), by: text('Who').person().leansOn('person').required(), why: prose('Why').required() },
    help,
  );

/** What every record may carry beside its own fields. Keys that begin with `x-` are the shop's own and are never looked at. */
export const SHARED = {
  note: prose('Anything worth knowing that no other field holds')
    .called('notes', 'remarks', 'comment', 'comments')
    .ofOne()
    .notLent()
    .describes('early'),
  photos: ids('Ids of photos that show it').names('photo').usual([]).called('photo').ofOne().notLent(),
  by: text('Who did it or entered it').person().leansOn('person').ofOne().notLent().asLast(),
  date: date('When it was done').notLent().asLast(),
  stage: id('Build stage that it belongs to, as in library/stages.yaml').names('stage').called('phase').asLast(),
};

/** What a record of a list may carry beside. */
export const LISTED_FIELDS = {
  place: prose('Where it is, in words that a stranger understands').describes(),
  planned: yesNo('yes while it is not in the coach yet; take it away and type its date once it is').describes(),
  corrected: statement('The entry was mended and the coach did not change: when, by whom, why').ofOne().describes(),
};

export const ID = {
  id: id('The shop’s own number or name for it, unique in the shell')
    .required()
    .notLent()
    .called('no', 'number', 'mark', 'tag', 'item', 'piece', 'pieceno'),
};

/** What every record of a list may carry. */
export const COMMON = { ...ID, ...SHARED, ...LISTED_FIELDS };
export type Shared = ModelOf<typeof SHARED>;
export type Common = ModelOf<typeof COMMON>;

/** A word given by a person on a day. */
export type Statement = NonNullable<Common['corrected']>;
