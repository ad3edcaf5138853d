import type { Pieces } from '../../entry/dxf/pieces.js';
import type { DrawingPlan } from '../../entry/dxf/plan.js';
import { understood } from '../../entry/understood.js';
import { plannedCounts, plannedRows } from './import-text.js';
import { envelope } from './json.js';
import { textTable } from './tables.js';
import { counted, paragraph } from './wrap.js';

interface Shown extends DrawingPlan {
  readonly name: string;
  readonly pieces: Pieces;
  readonly others: ReadonlyMap<string, number>;
}

const MOST = 20;
/** So many new records are shown with all that was understood. */
const FIRST = 3;

/** What a drawing brought, or would bring: by layer, the first pieces as they were understood, and what was left out. */
export function drawingText(shown: Shown, dryRun: boolean): string {
  const { name, plan, pieces } = shown;
  if (plan.faults.length > 0) {
    const lines = plan.faults.slice(0, MOST).map(({ row, message }) => paragraph(`${name}:${row}: ${message}`, '  '));
    const more = plan.faults.length > MOST ? [`  and ${plan.faults.length - MOST} more`] : [];
    return [`${name}: ${counted(plan.faults.length, 'fault')}, nothing was written.`, ...lines, ...more].join('\n');
  }
  const verb = dryRun ? 'would be ' : '';
  const first = plan.added
    .slice(0, FIRST)
    .map(({ kind, id, data }) => paragraph(`+ ${kind} ${id}: ${understood(kind, data)}`, '  '));
  return [
    ...layerTable(pieces),
    `${name}: ${plannedCounts(plan.added)} ${verb}added, ${plan.changed.length} ${verb}changed, ${plan.unchanged.length} already there.`,
    ...(dryRun ? first : []),
    ...plan.changed
      .slice(0, MOST)
      .map(({ kind, record, changes }) => `  ~ ${kind} ${record.id}: ${changes.map(({ path }) => path.join('.')).join(', ')}`),
    ...leftOut(shown),
  ].join('\n');
}

function layerTable({ pieces, unmapped }: Pieces): readonly string[] {
  const counts = new Map<string, number>();
  for (const { layer, kind } of pieces) counts.set(`${layer}\u0000${kind}`, (counts.get(`${layer}\u0000${kind}`) ?? 0) + 1);
  const rows = [
    ...[...counts].map(([key, count]) => [...key.split('\u0000'), String(count)]),
    ...[...unmapped].map(([layer, count]) => [layer, 'not read: say what it is with --layer', String(count)]),
  ];
  return rows.length === 0
    ? ['No line, face or outline was found.']
    : [textTable([{ head: 'layer' }, { head: 'becomes' }, { head: 'pieces' }], rows, '  ')];
}

function leftOut({ pieces, others }: Shown): readonly string[] {
  const words = [
    ...[...pieces.left].map(([what, count]) => `${what} (${count})`),
    ...[...others].map(([type, count]) => `${type} (${count})`),
  ];
  return words.length === 0 ? [] : [paragraph(`Left out: ${words.slice(0, MOST).join(', ')}.`)];
}

export function drawingJson({ name, plan, texts, pieces, others }: Shown, shell: string, dryRun: boolean): string {
  const listed = (map: ReadonlyMap<string, number>) => [...map].map(([what, count]) => ({ what, count }));
  return envelope('import', shell, null, {
    sheet: name,
    dry_run: dryRun,
    columns: [],
    ...plannedRows(plan),
    faults: plan.faults.map(({ row, message }) => ({ row, column: null, message })),
    gone: [],
    layers_not_read: listed(pieces.unmapped),
    left_out: [...listed(pieces.left), ...listed(others)],
    files: [...texts.keys()],
  });
}
