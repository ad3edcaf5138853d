import type { Assessment } from '../assess.js';
import { render, templateText } from '../book/templates.js';
import type { ShellProgress } from '../closeout/stage-progress.js';
import { planDrawing, windowOf } from '../pocket/plan-svg.js';
import { coachViews } from '../pocket/views.js';
import { FLOOR_FIELDS, type Reader } from '../words/index.js';
import { formFields, type TaskName, taskOf } from './tasks.js';

/** What is most often written by hand, with so many lines for each. */
const WRITTEN: readonly (readonly [TaskName, number])[] = [
  ['weld', 8],
  ['look', 6],
  ['node', 6],
  ['run', 6],
  ['test', 5],
  ['finding', 4],
];
const DRAWN = ['plan', 'left-out', 'right-out', 'underside'];
/** Columns that a hand fills on one line of a sheet. */
const MOST_COLUMNS = 8;

export interface FloorSheetInput {
  readonly assessment: Assessment;
  readonly progress: ShellProgress;
  readonly reader: Reader;
  /** Of the sheet, as 2026-11-30. */
  readonly day: string;
}

/** The page for the floor on paper: open hold points, lines to fill in, drawings to mark. One HTML file that a browser prints. */
export function floorSheet({ assessment, progress, reader, day }: FloorSheetInput): string {
  const { model } = assessment;
  const label = (key: string): string => {
    const word = Object.hasOwn(FLOOR_FIELDS, key) ? FLOOR_FIELDS[key as keyof typeof FLOOR_FIELDS] : undefined;
    return word === undefined ? key : reader.language === 'es' ? word.es : word.us;
  };
  const body = render('floor-sheet', {
    reader,
    shell: model.shell.id,
    day,
    open: progress.stages.flatMap(({ stage, name, holdPoints }) =>
      holdPoints
        .filter(({ state }) => state !== 'met')
        .map(({ holdPoint, gaps }) => ({
          stage: name || stage,
          holdPoint,
          wants: gaps.map(({ message }) => message).slice(0, 3),
        })),
    ),
    tables: WRITTEN.map(([task, lines]) => ({
      key: `floor.task.${task}`,
      heads: [
        ...(taskOf(task).does === 'add' ? [] : [label('record')]),
        ...formFields(task)
          .first.slice(0, MOST_COLUMNS)
          .map(({ key }) => label(key.split('.').at(-1) === 'id' ? 'id' : key.replace(/^inspections\.\d+\./u, ''))),
      ],
      lines: Array.from({ length: lines }, (_, i) => i + 1),
    })),
    views: coachViews(model)
      .filter(({ key }) => DRAWN.includes(key))
      .map((view) => {
        const { symbol, svg } = planDrawing(model, view, () => false);
        return { key: view.key, title: `pocket.view.${view.key}`, window: windowOf(view), symbol, svg };
      }),
  });
  return [
    `<!doctype html>\n<html lang="${reader.language}">\n<head>\n<meta charset="utf-8">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">`,
    render('floor-head', { reader, shell: model.shell.id }),
    `<style>${templateText('floor-sheet.css')}</style>\n</head>`,
    body,
    '</html>\n',
  ].join('\n');
}
