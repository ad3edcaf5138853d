import type { Assessment } from '../assess.js';
import { render, templateText } from '../book/templates.js';
import type { ShellProgress } from '../closeout/stage-progress.js';
import { planDrawing, windowOf } from '../pocket/plan-svg.js';
import { coachViews } from '../pocket/views.js';
import { FLOOR_FIELDS, type Reader } from '../words/index.js';
import type { TaskName } from './tasks.js';

/** What is most often written by hand: so many lines for each, and what a hand fills on one of them. */
const WRITTEN: readonly (readonly [task: TaskName, lines: number, keys: readonly string[]])[] = [
  ['weld', 10, ['joins', 'type', 'size', 'length', 'position', 'procedure', 'welder', 'date']],
  ['look', 8, ['record', 'method', 'result', 'reason', 'repair', 'by', 'date']],
  ['node', 6, ['id', 'kind', 'circuit', 'at', 'name', 'by']],
  ['run', 6, ['circuit', 'from', 'to', 'zones', 'installed_length', 'by', 'date']],
  ['bond', 4, ['record', 'fixing.lot', 'bond.surface', 'bond.air', 'bond.humidity', 'bond.open_time', 'by']],
  ['test', 6, ['kind', 'of', 'limit', 'measured', 'duration', 'instrument', 'by', 'date']],
  ['closed', 4, ['record', 'photos', 'by', 'date']],
  ['finding', 4, ['of', 'description', 'by', 'raised']],
];
const DRAWN = ['plan', 'left-out', 'right-out', 'underside'];
/** More would fill the sheet; the rest is counted. */
const MOST_WANTS = 3;

export interface FloorSheetInput {
  readonly assessment: Assessment;
  readonly progress: ShellProgress;
  readonly reader: Reader;
  /** Of the sheet, as 2026-11-30. */
  readonly day: string;
  /** Rules of style that bring the typefaces; empty where the machine that prints has its own. */
  readonly typefaces: string;
}

/** The page for the floor on paper: open hold points, lines to fill in, drawings to mark. One HTML file that a browser prints. */
export function floorSheet({ assessment, progress, reader, day, typefaces }: FloorSheetInput): string {
  const { model } = assessment;
  const label = (key: string): string => {
    const word = Object.hasOwn(FLOOR_FIELDS, key) ? FLOOR_FIELDS[key as keyof typeof FLOOR_FIELDS] : undefined;
    return word === undefined ? key : reader.language === 'es' ? word.es : word.us;
  };
  const isToday = ({ stage, standing, records }: ShellProgress['stages'][number]): boolean =>
    standing !== 'holds' && (stage === progress.next?.stage || records.built > 0);
  const body = render('floor-sheet', {
    reader,
    shell: model.shell.id,
    day,
    open: progress.stages.filter(isToday).flatMap(({ stage, name, holdPoints }) =>
      holdPoints
        .filter(({ state }) => state !== 'met')
        .map(({ holdPoint, gaps }) => ({
          stage: name || stage,
          next: progress.next?.stage === stage,
          holdPoint,
          wants: gaps.map(({ message }) => message).slice(0, MOST_WANTS),
          more: Math.max(0, gaps.length - MOST_WANTS),
        })),
    ),
    later: progress.stages.filter((one) => one.standing !== 'holds' && !isToday(one)).map(({ stage, name }) => name || stage),
    tables: WRITTEN.map(([task, lines, keys]) => ({
      key: `floor.task.${task}`,
      heads: keys.map(label),
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
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'">`,
    render('floor-head', { reader, shell: model.shell.id }),
    `<style>${typefaces}@page{size:${model.shop.paper}}${templateText('floor-sheet.css')}</style>\n</head>`,
    body,
    '</html>\n',
  ].join('\n');
}
