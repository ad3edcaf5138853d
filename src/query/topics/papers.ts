import type { PlainKey } from '../../words/index.js';
import { facts, type Topic } from './topic.js';

export const contacts: Topic = {
  name: 'contacts',
  ask: 'find.call',
  words: ['call', 'contact', 'contacts', 'whom', 'who', 'warranty', 'warranties', 'maker', 'makers'],
  answer({ model: { shop, shell } }) {
    const signed = shell.signoffs
      .map((one) => one.date)
      .sort()
      .at(-1);
    return {
      rows: [
        {
          what: `The shell: ${shop.name}`,
          facts: facts(['place', shop.place], ['contact', shop.contact], ['last sign-off', signed]),
        },
        {
          what: `The chassis: ${shell.chassis.description ?? 'not described'}`,
          facts: facts(['document', shell.chassis.document], ['vin', shell.vin]),
        },
        ...shell.components
          .filter((one) => one.part || one.serial)
          .map((one) => ({
            id: one.id,
            what: one.name,
            facts: facts(['part', one.part], ['serial', one.serial], ['fitted', one.date]),
          })),
      ],
      notes: ['For an appliance ask its maker: read the plate. For the chassis ask the chassis maker.'],
    };
  },
};

export const rightBook: Topic = {
  name: 'book',
  ask: 'find.genuine',
  words: ['book', 'vin', 'revision', 'right', 'genuine', 'fingerprint', 'paper'],
  answer({ model: { shell } }) {
    return {
      rows: [{ what: shell.title, facts: facts(['shell', shell.id], ['vin', shell.vin ?? 'not recorded']) }],
      notes: [
        'Shell number, revision and fingerprint are on the cover and on every page; the VIN is on the cover.',
        `Revisions: shellbook history ${shell.id}. A PDF against itself and the store: shellbook verify BOOK.pdf`,
      ],
    };
  },
};

/** Questions that a command of their own answers. */
const pointer = (
  name: string,
  ask: PlainKey,
  words: readonly string[],
  command: (shell: string) => string,
  beside: readonly string[] = [],
): Topic => ({
  name,
  ask,
  words,
  beside,
  answer: ({ model: { shell } }) => ({ rows: [], notes: [`Ask: shellbook ${command(shell.id)}`] }),
});

export const pointers: readonly Topic[] = [
  pointer('axles', 'find.axles', ['axle', 'axles', 'weight', 'weights', 'load', 'loads', 'payload'], (id) => `weights ${id}`, [
    'carry',
    'carries',
    'each',
    'full',
    'rear',
    'front',
    'over',
  ]),
  pointer(
    'drilling',
    'find.drill',
    ['drill', 'drilling', 'screw', 'screws', 'deep', 'hole'],
    (id) => `near ${id} 180in,-49in,60in --within 4in`,
    ['here', 'wall', 'left', 'right', 'roof', 'floor'],
  ),
  pointer('behind', 'find.behind', ['behind'], (id) => `behind ${id} <panel>`),
  pointer('alloy', 'find.weld', ['alloy', 'filler', 'weld', 'welding', 'welded'], (id) => `where ${id} <member or weld>`, [
    'here',
    'bracket',
  ]),
  pointer(
    'plug',
    'find.plug',
    ['plug', 'outlet', 'socket', 'heater', 'watt', 'watts'],
    (id) => `load ${id} <outlet> --add 1500W`,
    ['1500w', '1500', 'w', 'here', 'this', 'in', 'run'],
  ),
  pointer(
    'slide',
    'find.slide',
    ['slide', 'slideout', 'slideouts', 'stuck', 'sticks', 'jammed'],
    (id) => `book ${id} --edition service`,
    ['out', 'hand', 'move'],
  ),
  pointer('skin', 'find.skin', ['skin', 'cracked', 'dent', 'dented'], (id) => `where ${id} <skin panel>`, [
    'replace',
    'panel',
    'side',
    'left',
    'right',
  ]),
  pointer('bay', 'find.bay', ['bay', 'bays', 'compartment'], (id) => `weights ${id}`, ['put', 'much', 'rear', 'front', 'load']),
];
