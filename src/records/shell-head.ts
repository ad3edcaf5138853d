import { block, date, dates, id, list, prose, quantity, text } from './fields.js';
import { part, type RecordOf } from './kind.js';
import { SHARED } from './shared.js';
import type { ModelOf } from './types.js';

const care = {
  what: prose('What is to be done').required(),
  every: text('Time or distance, as 6 months').required(),
  from: date('Day from which it is counted'),
  done: dates('Days on which it was done').usual([]).ofOne().describes(),
};
/** What the owner has done to the coach at intervals. */
export type CareItem = ModelOf<typeof care>;

const paint = {
  where: text('What is painted with it').required(),
  system: text('Maker and system'),
  code: text('Color code'),
  lot: text('Lot').traced('lot').ofOne(),
};
export type PaintCoat = ModelOf<typeof paint>;

const spare = {
  of: id('The record that it is a spare of').required().namesAny(),
  maker_number: text('The maker’s number'),
  supplier: text('Who sells it'),
  note: prose('Anything worth knowing'),
};
/** Where a spare is had. */
export type SparePart = ModelOf<typeof spare>;

const warranty = {
  of: text('What is covered').required(),
  until: date('Last day'),
  by: text('Who gives it').person(),
  terms: prose('Its terms'),
};
export type Warranty = ModelOf<typeof warranty>;

const customer = block(
  {
    name: text('Customer’s name'),
    place: text('Customer’s place'),
    contact: text('How to reach the customer'),
  },
  'Printed in the owner’s edition only',
);

const envelope = block(
  {
    length: quantity('length', 'Outside length', 'above zero').required(),
    width: quantity('length', 'Outside width', 'above zero').required(),
    height: quantity('length', 'Outside height of the shell', 'above zero').required(),
  },
  'Outside of the finished coach',
);

/** shell.yaml without chassis and lists, which are read each on its own. */
export const shellHead = part(
  'shell',
  {
    ...SHARED,
    shell: id('The shell number: the folder’s name').required(),
    title: prose('What the coach is'),
    vin: text('Vehicle identification number, 17 characters').ofOne(),
    customer: customer.ofOne(),
    first_sale: date('Day of the first retail sale; the weight label is the maker’s to correct until then').ofOne(),
    envelope,
    care: list(block(care), 'What is to be done to the coach at intervals'),
    paint: list(block(paint), 'Paint, where it is'),
    parts: list(block(spare), 'Where spares are had'),
    warranty: list(block(warranty), 'What is covered, by whom, until when').ofOne(),
  },
  { words: 'the shell' },
);

export type ShellHead = RecordOf<typeof shellHead>;
