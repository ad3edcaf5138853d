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
    shop: { name: shop.name, place: shop.place, contact: shop.contact },
    shell: shell.id,
    vin: shell.vin,
    chassis: [shell.chassis.description, shell.chassis.document].filter(Boolean).join('; ') || undefined,
    signed: signed && book.show.date(signed),
    makers: table(book.show, {
      look: 'dense tight',
      rows: shell.components.filter((one) => one.part || one.serial),
      columns: (c) => [
        c.refs('Id', (one) => [one.id]),
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
