import { stateName } from '../../closeout/state.js';
import type { Model } from '../../model/shell.js';
import { length, positionWords, type UnitSystem } from '../../quantity/format.js';
import { ASSUMED_TOLERANCE_MM, type Face, type KeepClean, LOOK_MM, type OpenInZone } from '../../query/release/index.js';
import type { DecidedFinding } from '../../rules/decide.js';
import { placeText } from './findings.js';
import { notPlacedNote } from './not-placed.js';
import type { TerminalPaint } from './paint.js';
import type { HandOver } from './release.js';
import { releaseWeightText } from './release-weight-text.js';
import { textTable } from './tables.js';
import { bullets, counted, paragraph } from './wrap.js';

/** Nearest runs named of each face, and open items of each zone, unless all are asked for. */
const EXAMPLES = 4;
/** Places named of each group, unless all are asked for. */
const MOST_NAMED = 3;

export function releaseText(sheet: HandOver, paint: TerminalPaint, all: boolean): string {
  const { model } = sheet;
  const parts = [
    paint.strong(`${model.shell.id}  ${model.shell.title}: hand-over to paint and interior`),
    paragraph(`State: ${stateText(sheet)}.`),
    ...releaseWeightText(sheet, paint),
    ...facesText(sheet, paint, all),
    ...keepCleanText(sheet.keepClean, model, paint, all),
    ...openText(sheet.open, paint, all),
    `${paint.strong('Cautions')}\n${bullets(sheet.cautions)}`,
  ];
  return parts.join('\n\n');
}

/** `in build, next to sign off: belly`. */
export function stateText({ progress, closed }: HandOver): string {
  const state = stateName(progress, closed);
  const tag = closed ? ` ${state === 'closed' ? 'as' : 'since'} ${closed.tag}, revision ${closed.revision}` : '';
  return `${state}${tag}${progress.stage === null ? '' : `, next to sign off: ${progress.stage}`}`;
}

function facesText({ faces, model }: HandOver, paint: TerminalPaint, all: boolean): readonly string[] {
  const { units } = model.shop;
  const within = length(LOOK_MM, units);
  const heading = paint.strong(`Do not drill: what runs within ${within} of each face`);
  if (faces.length === 0) return [`${heading}\n${paragraph('No panels are recorded, so no face is proven clear.', '  ')}`];
  const unknown = new Set(faces.flatMap(({ runs }) => runs.filter((one) => one.toleranceMm === undefined).map(({ id }) => id)));
  const taken =
    unknown.size > 0
      ? `, or ${length(ASSUMED_TOLERANCE_MM, units)} where none is recorded (${counted(unknown.size, 'run')})`
      : '';
  const notes = [
    `Depth is from the sheet to the outside of the run, less the tolerance of its place${taken}. At 0 the run may touch the sheet or pass through it.`,
    ...notPlacedNote(model),
    'These faces are drawn in the service edition of the book; `shellbook near SHELL X,Y,Z` shows what a drill meets at one place.',
  ];
  return [heading, facesTable(faces, units, all), bullets(notes)];
}

/** One table of all faces: the nearest runs of each, or all of them. */
function facesTable(faces: readonly Face[], units: UnitSystem, all: boolean): string {
  const rows = faces.flatMap(({ name, runs }): readonly (readonly string[])[] => {
    if (runs.length === 0) return [[name, 'no recorded run', '', '', '', '']];
    const shown = all ? runs : runs.slice(0, EXAMPLES);
    const rest = runs.length - shown.length;
    const each = shown.map((run, i) => [
      i === 0 ? name : '',
      run.id,
      run.medium,
      run.panel,
      length(run.depthMm, units === 'both' ? 'us' : units),
      positionWords(run.at, units === 'both' ? 'us' : units),
    ]);
    return rest > 0 ? [...each, ['', '', '', '', '', `and ${rest} deeper`]] : each;
  });
  const heads = [
    { head: 'face' },
    { head: 'run', wrap: true },
    { head: 'carries' },
    { head: 'behind' },
    { head: 'depth', align: 'right' as const },
    { head: 'nearest at' },
  ];
  const cut = !all && faces.some(({ runs }) => runs.length > EXAMPLES);
  return `${textTable(heads, rows, '  ')}${cut ? '\n  (--all lists every run)' : ''}`;
}

function keepCleanText(groups: readonly KeepClean[], { shell }: Model, paint: TerminalPaint, all: boolean): readonly string[] {
  const vin = shell.vin === undefined ? 'its place' : `plate of ${shell.vin}`;
  const rows = groups.map(({ what, why, items }) => {
    const ids = items.map(({ id }) => id);
    const shown = all ? ids : ids.slice(0, MOST_NAMED);
    const more = ids.length > shown.length ? ` and ${ids.length - shown.length} more` : '';
    return [`${what}: ${why}`, String(items.length), `${shown.join(', ')}${more}`];
  });
  return [
    paint.strong('Do not paint'),
    paragraph(`Vehicle identification number (${vin}), certification, weight and tire labels: mask, never coat.`, '  '),
    ...(rows.length > 0
      ? [
          textTable(
            [
              { head: 'what', wrap: true },
              { head: 'places', align: 'right' },
              { head: 'where', wrap: true },
            ],
            rows,
            '  ',
          ),
        ]
      : []),
  ];
}

function openText(open: readonly OpenInZone<DecidedFinding>[], paint: TerminalPaint, all: boolean): readonly string[] {
  const heading = paint.strong('Open items by zone');
  if (open.length === 0)
    return [`${heading}\n${paragraph(paint.good('Nothing open: no error, and no warning undecided.'), '  ')}`];
  const zones = open.map(({ zone, findings }) => {
    const shown = all ? findings : findings.slice(0, EXAMPLES);
    const head = zone ? `${zone.id}, ${zone.name}` : 'in no zone';
    const more =
      findings.length > shown.length ? [paint.faint(`    and ${findings.length - shown.length} more (--all shows them)`)] : [];
    const texts = shown.map((one) =>
      paragraph(`${one.severity} ${one.rule}: ${one.message} (${placeText(one.place)})`, '    - '),
    );
    return [paragraph(paint.strong(`${head}: ${findings.length} open`), '  '), ...texts, ...more].join('\n');
  });
  return [heading, ...zones];
}
