import type { Circuit, Panel } from '../../records/index.js';
import type { Book } from '../book.js';
import { spansColumn } from '../id-spans.js';
import { table } from '../table.js';
import { madeOf, protectionWords } from '../where.js';

interface Coloured {
  readonly colour: string;
  readonly circuit: Circuit;
  readonly zones: readonly string[];
}

/** An untagged wire: by its printed colour, then by the places where it runs. */
export function coloursAnswer(book: Book) {
  const { shell } = book.assessment.model;
  const rows = shell.circuits.flatMap((circuit): readonly Coloured[] => {
    if (!['dc', 'ac', 'data'].includes(circuit.medium) || circuit.colour === undefined) return [];
    const zones = [...new Set(shell.runs.filter((run) => run.circuit === circuit.id).flatMap((run) => run.zones))];
    return [{ colour: circuit.colour, circuit, zones }];
  });
  return table<Coloured>(book.show, {
    look: 'dense index',
    rows: rows.sort((a, b) => (a.colour < b.colour ? -1 : a.colour > b.colour ? 1 : 0)),
    group: (one) => one.colour,
    columns: (c) => [
      c.refs('Circuit', (one) => [one.circuit.id]),
      c.text('What', (one) => one.circuit.name),
      c.text('Size', (one) => madeOf(one.circuit)),
      c.text('Protection', (one) => protectionWords(one.circuit)),
      c.text('Runs through', (one) => one.zones.join(', ')),
      c.page((one) => one.circuit.id),
    ],
    empty: 'No wire colour is recorded.',
  });
}

interface Alike {
  readonly panels: readonly Panel[];
}

/** What a skin was put on with: product, sheet, how long it lay open and cured, and the order of fasteners. */
export function skinRepairAnswer(book: Book) {
  const { show } = book;
  const groups = new Map<string, Panel[]>();
  for (const panel of book.assessment.model.shell.panels) {
    if (!panel.fixing || panel.panelKind === 'access') continue;
    const { method, adhesive, sealant, order } = panel.fixing;
    const { openTimeLimitS, cureS, cureLeastS } = panel.bond ?? {};
    const key = JSON.stringify([
      panel.alloy,
      panel.thicknessMm,
      method,
      adhesive,
      sealant,
      order,
      openTimeLimitS,
      cureS,
      cureLeastS,
    ]);
    groups.set(key, [...(groups.get(key) ?? []), panel]);
  }
  const minutes = (s: number | undefined): string | undefined => (s === undefined ? undefined : `${Math.round(s / 60)} min`);
  const hours = (s: number | undefined): string | undefined => (s === undefined ? undefined : `${Math.round(s / 360) / 10} h`);
  return table<Alike>(show, {
    look: 'dense tight',
    rows: [...groups.values()].map((panels) => ({ panels })),
    columns: (c) => [
      c.text('Sheet', ({ panels: [one] }) =>
        [one?.alloy, one?.thicknessMm === undefined ? undefined : show.thickness(one.thicknessMm)].filter(Boolean).join(', '),
      ),
      c.text('Held by', ({ panels: [one] }) =>
        [one?.fixing?.method, one?.fixing?.adhesive, one?.fixing?.sealant].filter(Boolean).join(', '),
      ),
      c.text('Open time, most', ({ panels: [one] }) => minutes(one?.bond?.openTimeLimitS)),
      c.text('Cure before load', ({ panels: [one] }) => hours(one?.bond?.cureLeastS ?? one?.bond?.cureS)),
      c.text('Order of fasteners', ({ panels: [one] }) => one?.fixing?.order),
      spansColumn('Panels', ({ panels }) => panels.map(({ id }) => id)),
    ],
    empty: 'No skin is recorded with how it is held.',
  });
}
