import type { Fixing, Opening, Panel } from '../../records/index.js';
import { type Book, type ChapterMaker, stageName } from '../book.js';
import { decisionsOf } from '../decisions.js';
import { spansColumn } from '../id-spans.js';
import { ROLL_MM, ref, table } from '../table.js';

/** Skins and panels, how they are fixed, and openings as measured. */
export const skins: ChapterMaker = (book) => ({
  key: 'skins',
  title: 'Skins, panels and openings',
  template: 'skins',
  data: {
    panels: skinTable(book),
    bonds: book.edition === 'shop' ? bondTable(book) : lotTable(book),
    openings: book.assessment.model.shell.openings.map((one) => openingCard(book, one)),
  },
});

/** `14 screws, driver T25, sealant butyl tape`; in a narrow column without the words for tool and seal. */
export function fixingWords(fixing: Fixing | undefined, short = false): string | undefined {
  if (!fixing) return undefined;
  const screws = [fixing.count, fixing.method].filter((one) => one !== undefined).join(' ');
  return [
    screws,
    short ? fixing.driver : fixing.driver && `driver ${fixing.driver}`,
    fixing.adhesive,
    short ? fixing.sealant : fixing.sealant && `sealant ${fixing.sealant}`,
  ]
    .filter(Boolean)
    .join(', ');
}

function skinTable(book: Book) {
  const figures = new Map(book.assessment.figures.takeOff.panels.map((one) => [one.id, one]));
  return table<Panel>(book.show, {
    look: 'dense tight',
    rows: book.assessment.model.shell.panels.filter((panel) => panel.panelKind !== 'access'),
    home: (panel) => panel.id,
    marks: (panel) => decisionsOf(book, panel.id),
    columns: (c) => [
      c.id('Panel', (panel) => panel.id),
      c.text(
        'Kind',
        (panel) => panel.panelKind,
        (panel) => panel.name ?? stageName(book, panel.stage),
      ),
      c.text('Alloy', (panel) => panel.alloy),
      c.thickness('Thickness', (panel) => panel.thicknessMm),
      c.area('Area', (panel) => figures.get(panel.id)?.areaMm2),
      c.mass('Mass', (panel) => figures.get(panel.id)?.massKg),
      c.text(
        'Fixing',
        (panel) => fixingWords(panel.fixing, true),
        (panel) => panel.note,
      ),
    ],
    empty: 'No skins or panels are recorded.',
  });
}

/** For a repair: which panels one lot of adhesive holds. How each was bonded is the shop's. */
function lotTable(book: Book) {
  const lots = new Map<string, Panel[]>();
  for (const panel of book.assessment.model.shell.panels) {
    if (!panel.fixing?.adhesive) continue;
    const key = JSON.stringify([panel.fixing.adhesive, panel.fixing.lot]);
    lots.set(key, [...(lots.get(key) ?? []), panel]);
  }
  return table<readonly Panel[]>(book.show, {
    look: 'dense tight',
    rows: [...lots.values()],
    columns: (c) => [
      c.text('Adhesive', ([one]) => one?.fixing?.adhesive),
      c.id('Lot', ([one]) => one?.fixing?.lot),
      c.text('Applied', (all) => {
        const days = all.flatMap(({ fixing }) => fixing?.applied ?? []).sort();
        return [...new Set([days[0], days.at(-1)])].map((day) => book.show.date(day)).join(' to ');
      }),
      c.id('Coupon', (all) => [...new Set(all.flatMap(({ bond }) => bond?.coupon ?? []))].join(', ') || undefined),
      spansColumn('Panels', (all) => all.map(({ id }) => id)),
    ],
    empty: 'No bonded panels are recorded.',
  });
}

function bondTable(book: Book) {
  const { show } = book;
  return table<Panel>(book.show, {
    look: 'roll',
    widthMm: ROLL_MM,
    rows: book.assessment.model.shell.panels.filter((panel) => panel.fixing?.adhesive),
    columns: (c) => [
      c.refs('Panel', (panel) => [panel.id]),
      c.text('Adhesive', (panel) => panel.fixing?.adhesive),
      c.id('Lot', (panel) => panel.fixing?.lot),
      c.text('Good until', (panel) => show.date(panel.fixing?.expires)),
      c.text('Applied', (panel) => show.date(panel.fixing?.applied)),
      c.text('Surface', (panel) => (panel.bond?.surfaceK === undefined ? undefined : show.temperature(panel.bond.surfaceK))),
      c.text('Air', (panel) =>
        [
          panel.bond?.airK === undefined ? undefined : show.temperature(panel.bond.airK),
          panel.bond?.humidity === undefined ? undefined : show.percent(panel.bond.humidity, 0),
        ]
          .filter(Boolean)
          .join(', '),
      ),
      c.id('Coupon', (panel) => panel.bond?.coupon),
    ],
    empty: 'No bonded panels are recorded.',
  });
}

/** Openings wider than this have a drawing over the whole page; narrower ones stand beside their figures, mm. */
const WIDE_MM = 1500;
const BESIDE_MM = 84;
/** A sag by calculation below this is told as such, not as nothing, mm. */
const NEGLIGIBLE_MM = 0.1;

function openingCard(book: Book, opening: Opening) {
  const { show } = book;
  const wide = opening.widthMm > WIDE_MM;
  const figure = book.assessment.figures.openings.find((one) => one.id === opening.id);
  const measured = opening.measured;
  const limits = book.assessment.model.shop.limits;
  const sag = (mm: number): string => (mm < NEGLIGIBLE_MM ? `under ${show.thickness(NEGLIGIBLE_MM)}` : show.thickness(mm));
  const facts = [
    { name: 'Nominal, width × height', value: `${show.length(opening.widthMm)} × ${show.length(opening.heightMm)}` },
    measured?.topMm !== undefined && {
      name: 'Top / bottom',
      value: `${show.length(measured.topMm)} / ${measured.bottomMm === undefined ? 'not measured' : show.length(measured.bottomMm)}`,
    },
    measured?.frontMm !== undefined && {
      name: 'Front / rear',
      value: `${show.length(measured.frontMm)} / ${measured.rearMm === undefined ? 'not measured' : show.length(measured.rearMm)}`,
    },
    measured?.diagonalsMm && { name: 'Diagonals', value: measured.diagonalsMm.map(show.length).join(' / ') },
    figure?.diagonalDifferenceMm !== undefined && {
      name: 'Diagonal difference',
      value: `${show.thickness(figure.diagonalDifferenceMm)} (house limit ${show.thickness(limits.diagonalDifferenceMm)})`,
    },
    figure?.rackingDeg !== undefined && { name: 'Racking', value: `${figure.rackingDeg.toFixed(3)}°` },
    figure?.sagMm !== undefined && {
      name: 'Header sag',
      value: `${show.thickness(figure.sagMm)} (house limit ${show.thickness(limits.headerSagMm)})`,
    },
    figure?.headerDeflectionMm !== undefined &&
      figure.headerWithPanelMm !== undefined &&
      figure.headerBuiltInMm !== undefined && {
        name: 'Header by calculation',
        value: `${sag(figure.headerDeflectionMm)} under its own mass, ${sag(figure.headerWithPanelMm)} with the ${show.mass(figure.headerPanelKg ?? 0)} of panels over it, simply held at the sides; ${sag(figure.headerBuiltInMm)} with its ends built in; a welded header lies between (for information: no rating; nothing else that hangs on it is counted)`,
      },
    !measured && { name: 'Measured', value: 'not measured: not verified' },
  ].filter(Boolean);
  return {
    id: opening.id,
    kind: opening.openingKind,
    wall: opening.wall,
    facts,
    decided: decisionsOf(book, opening.id),
    header: opening.header ? ref(opening.header) : undefined,
    gussets: opening.gussets.map((id) => ref(id)),
    beside: !wide,
    figure: book.draw.opening(book.assessment, opening.id, {
      widthMm: wide ? book.availableSize('portrait').widthMm : BESIDE_MM,
      heightMm: 95,
    }),
  };
}
