import type { Book } from '../book.js';
import { table } from '../table.js';

/** Who answers for what: the shell, the chassis, each appliance; and the dates from which a warranty may run. */
export function whoAnswers(book: Book) {
  const { shop, shell } = book.assessment.model;
  const signed = shell.signoffs
    .map((one) => one.date)
    .sort()
    .at(-1);
  return {
    shop: [shop.name, shop.place, shop.telephone, shop.contact].filter(Boolean).join(', '),
    shell: shell.id,
    vin: shell.vin,
    chassis: [shell.chassis.description, shell.chassis.document].filter(Boolean).join('; ') || undefined,
    signed: signed && book.show.date(signed),
    warranty: table(book.show, {
      look: 'dense tight',
      rows: shell.warranty ?? [],
      columns: (c) => [
        c.text('Warranty on', (one) => one.of),
        c.text('Until', (one) => book.show.date(one.until) || undefined),
        c.text('Given by', (one) => one.by),
        c.text('Terms', (one) => one.terms),
      ],
      empty: 'No warranty is recorded: see the papers of delivery and of each maker.',
    }),
    makers: table(book.show, {
      look: 'dense tight',
      rows: shell.components.filter((one) => one.part || one.serial),
      columns: (c) => [
        c.refs('ID', (one) => [one.id]),
        c.text('Appliance or part', (one) => one.name),
        c.id('Part', (one) => one.part),
        c.id('Serial', (one) => one.serial),
        c.text('Fitted', (one) => book.show.date(one.date) || undefined),
        c.page((one) => one.id),
      ],
      empty: 'No appliance is recorded with a part or serial number: read them from its plate.',
    }),
  };
}
