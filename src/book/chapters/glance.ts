import type { ConditionFigure } from '../../compute/weights/types.js';
import type { Book, ChapterMaker } from '../book.js';
import { overallFacts } from '../overall.js';
import { ref, table } from '../table.js';
import { placeColumn } from '../where.js';

/** Key dimensions, ratings and margins, lifting and jacking points, what is open: one spread. */
export const glance: ChapterMaker = (book) => {
  const { model, figures, findings } = book.assessment;
  const { shell } = model;
  const open = shell.findings.filter((one) => !one.closed);
  const { coverage } = figures.access;
  return {
    key: 'glance',
    title: 'At a glance',
    template: 'glance',
    data: {
      facts: facts(book),
      axles: axleTable(book),
      axlesUp: axlesUp(book),
      basis: basisWords(book),
      declared: declaredTable(book),
      open: open.map((one) => ({ ref: ref(one.id), text: one.description, of: one.of.map((id) => ref(id)) })),
      counts: {
        errors: counted(findings.filter((one) => one.severity === 'error').length, 'error'),
        warnings: counted(findings.filter((one) => one.severity === 'warning').length, 'warning'),
      },
      reportFindings: book.edition !== 'owner',
      coverage:
        coverage.nodes > 0
          ? `${coverage.nodesInReach} of ${coverage.nodes} joints, valves and devices are in reach, and ${book.show.percent(
              coverage.runLengthMm > 0 ? coverage.runLengthInReachMm / coverage.runLengthMm : 0,
              0,
            )} of the length of all runs.`
          : undefined,
    },
  };
};

const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;

function facts(book: Book) {
  const { shell } = book.assessment.model;
  const { show } = book;
  const { chassis } = shell;
  const { takeOff, weights } = book.assessment.figures;
  const unladen = weights.conditions.find((one) => one.name === 'unladen');
  const ground = chassis.frame.railTopAboveGroundMm;
  return [
    ...overallFacts(book),
    ground !== undefined && { name: 'Frame rail top above ground', value: show.length(ground) },
    chassis.description && { name: 'Chassis', value: chassis.description },
    chassis.document && { name: 'Chassis papers', value: chassis.document },
    chassis.gvwrKg !== undefined && { name: 'Gross vehicle weight rating (GVWR)', value: show.mass(chassis.gvwrKg) },
    chassis.gcwrKg !== undefined && { name: 'Gross combination weight rating', value: show.mass(chassis.gcwrKg) },
    weights.trailerKg !== undefined && {
      name: 'Trailer, by that rating alone',
      value: `at most ${show.massDown(Math.max(0, weights.trailerKg))}`,
    },
    unladen && {
      name: 'Unladen, full fuel, no water',
      value: `${show.mass(unladen.totalKg)}, plus or minus ${show.mass(unladen.uncertaintyKg)}`,
    },
    takeOff.total.massKg > 0 && { name: 'Recorded parts of the shell', value: show.mass(takeOff.total.massKg) },
    ...shell.tanks.map((tank) => ({ name: `Tank ${tank.id}`, value: `${tank.contents}, ${show.volume(tank.capacityM3)}` })),
  ].filter((fact): fact is { name: string; value: string } => Boolean(fact));
}

/** The condition with the least margin on any axle: what a reader must watch. */
export function hardest(conditions: readonly ConditionFigure[]): ConditionFigure | undefined {
  const least = (one: ConditionFigure) => Math.min(...one.axles.map((axle) => axle.marginKg ?? Number.POSITIVE_INFINITY));
  return [...conditions].sort((a, b) => least(a) - least(b))[0];
}

function axleTable(book: Book) {
  const { weights } = book.assessment.figures;
  const worst = hardest(weights.conditions.filter((one) => one.kind !== 'lifted'));
  const liftable = weights.conditions.some((one) => one.kind === 'lifted') ? ', every axle down' : '';
  return table(book.show, {
    caption: worst ? `Axles in the condition that leaves least${liftable}: ${worst.name}` : 'Axles',
    rows: worst?.axles ?? [],
    columns: (c) => [
      c.refs('Axle', (axle) => [axle.axle]),
      c.massDown('Limit', (axle) => axle.limitKg),
      c.mass('Load', (axle) => axle.loadKg),
      c.massDown('Margin', (axle) => axle.marginKg),
      c.mass('Uncertainty', (axle) => axle.uncertaintyKg),
      c.verdict((axle) => axle.verdict),
    ],
    empty: 'Axle loads: nothing is weighed or rated to judge by. Not verified.',
  });
}

/** What an axle that is lifted puts over the limit of another: the worst, in words, and in which conditions. */
function axlesUp(book: Book): readonly string[] {
  const { conditions } = book.assessment.figures.weights;
  const over = conditions
    .filter((one) => one.kind === 'lifted')
    .map((one) => ({ one, up: one.axles.filter((axle) => axle.lifted).map((axle) => axle.axle) }))
    .filter(({ one }) => one.axles.some((axle) => axle.verdict === 'over'));
  return [...new Set(over.map(({ up }) => up.join(' and ')))].map((up) => {
    const same = over.filter((each) => each.up.join(' and ') === up).map(({ one }) => one);
    const worst = hardest(same)?.axles.filter((axle) => axle.verdict === 'over') ?? [];
    const loads = worst.map(
      (axle) =>
        `axle ${axle.axle} carries up to ${book.show.mass(axle.loadKg)}${axle.limitKg === undefined ? '' : ` on a limit of ${book.show.mass(axle.limitKg)}`}`,
    );
    const names = same.map((one) => one.name.replace(/ \/ .*$/u, '')).join(', ');
    return `With axle ${up} lifted, ${loads.join(' and ')}. Over the limit when: ${names}.`;
  });
}

export function basisWords(book: Book): string {
  const { basis, basisTicket, basisTickets } = book.assessment.figures.weights;
  if (basis === 'ticket') {
    const tickets = basisTickets.length > 1 ? `tickets ${basisTickets.join(' and ')}` : `ticket ${basisTicket ?? ''}`;
    return `These loads are based on scale ${tickets}, corrected for what was aboard.`;
  }
  if (basis === 'prediction') return 'These loads are predicted from the recorded parts. No scale ticket verifies them.';
  return 'No loads could be computed: not verified.';
}

/** Lifting, jacking, towing and hanging points: declared by somebody who may, or not declared. */
function declaredTable(book: Book) {
  return table(book.show, {
    rows: book.assessment.model.shell.declared,
    home: (one) => one.id,
    columns: (c) => [
      c.id('Id', (one) => one.id),
      c.text(
        'For',
        (one) => one.declaredKind,
        (one) => one.note,
      ),
      placeColumn(book, 'Where', (one) => one.at),
      c.text('Rating', (one) => one.rating && book.show.rating(one.rating)),
      c.text(
        'Declared by',
        (one) => one.by,
        (one) => [book.show.date(one.date), one.document].filter(Boolean).join(', '),
      ),
    ],
    empty:
      'Lifting, jacking, towing and hanging points: not declared. Do not lift, jack, tow or hang here without the chassis maker’s manual and a licensed engineer.',
  });
}
