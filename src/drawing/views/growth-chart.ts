import type { Assessment } from '../../assess.js';
import { mass, number } from '../../quantity/format.js';
import { chartUnit, ticks } from '../chart-axis.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { line, type Mark, type Point, textMark } from '../scene.js';
import type { SheetSize } from '../sheet.js';
import { shorten, textWidthMm } from '../text-width.js';

interface Frame {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** Mass stage by stage: predicted line, weighed marks with their uncertainty. */
export function growthChart(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const { growth } = a.figures.weights;
  const units = a.model.shop.units;
  const { perKg, word } = chartUnit(units);
  const heightMm = Math.min(sheet.heightMm, 90);
  const frame: Frame = { x0: 18, y0: 8, x1: sheet.widthMm - 6, y1: heightMm - 26 };
  const highest =
    Math.max(1, ...growth.map((g) => Math.max(g.predictedKg, (g.measuredKg ?? 0) + (g.uncertaintyKg ?? 0)))) * 1.08 * perKg;
  const low = lowestShown(
    Math.min(...growth.map((g) => Math.min(g.predictedKg, g.measuredKg ?? g.predictedKg))) * perKg,
    highest,
  );
  const y = (kg: number): number => frame.y1 - ((frame.y1 - frame.y0) * (kg * perKg - low)) / (highest - low);
  const step = (frame.x1 - frame.x0) / Math.max(1, growth.length);
  const x = (index: number): number => frame.x0 + step * (index + 0.5);
  const marks: Mark[] = [...gridUp(low, highest, frame, word)];
  marks.push(
    line(
      'runs',
      'series-1',
      growth.map((g, index): Point => [x(index), y(g.predictedKg)]),
    ),
  );
  growth.forEach((g, index) => {
    marks.push(...stageName(stageLabel(a, g.stage), x(index), frame.y1 + 3.5, step));
    if (g.measuredKg === undefined) return;
    const [low, high] = [y(g.measuredKg - (g.uncertaintyKg ?? 0)), y(g.measuredKg + (g.uncertaintyKg ?? 0))];
    const at = x(index);
    marks.push(
      line('nodes', 'whisker', [
        [at, low],
        [at, high],
      ]),
      line('nodes', 'whisker', [
        [at - 1.2, low],
        [at + 1.2, low],
      ]),
    );
    marks.push(
      line('nodes', 'whisker', [
        [at - 1.2, high],
        [at + 1.2, high],
      ]),
    );
    marks.push({ kind: 'circle', layer: 'nodes', pen: 'mark-filled', center: [at, y(g.measuredKg)], radiusMm: 0.7 });
  });
  const measured = growth.filter((g) => g.measuredKg !== undefined);
  return compose(
    {
      id: 'growth-chart',
      title: 'Mass by stage, predicted and weighed',
      alt: `Line chart of the predicted mass after each of ${growth.length} stages, with ${measured.length} weighed marks.`,
      widthMm: sheet.widthMm,
      heightMm,
      units,
      room: { x0: frame.x0, y0: 1, x1: sheet.widthMm - 1, y1: frame.y1 },
      marks,
      wishes: growth.flatMap((g, index) => [
        {
          text: mass(g.measuredKg ?? g.predictedKg, units === 'metric' ? 'metric' : 'us'),
          anchor: [x(index), y(g.measuredKg ?? g.predictedKg)] as const,
          style: 'name' as const,
          priority: g.measuredKg === undefined ? 10 : 20,
          clearMm: 1.5,
        },
      ]),
      notes: [
        `Line: predicted from the records. Dots: weighed, with expanded uncertainty (k = 2).${low > 0 ? ' The scale does not start at zero.' : ''}`,
      ],
    },
    options,
  );
}

const stageLabel = (a: Assessment, stage: string): string => a.model.library.stages.find(({ id }) => id === stage)?.name ?? stage;

/** Up to three lines of a stage's name under its place on the axis. */
function stageName(words: string, x: number, y: number, widthMm: number): readonly Mark[] {
  const lines: string[] = [];
  for (const word of words.split(/\s+/u)) {
    const last = lines.at(-1);
    if (last !== undefined && textWidthMm(`${last} ${word}`, 'note') <= widthMm - 1) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines
    .slice(0, 3)
    .map((row, index) =>
      textMark('labels', 'note', [x, y + index * 3.1], shorten(row, 'note', widthMm - 1), { anchor: 'middle' }),
    );
}

/** Where the axis starts: at zero, or at a round figure below where all the marks lie in the upper half. */
function lowestShown(lowest: number, highest: number): number {
  if (!Number.isFinite(lowest) || lowest < highest / 2) return 0;
  const step = ticks(highest - lowest)[1] ?? 1;
  return Math.max(0, Math.floor(lowest / step - 1) * step);
}

function gridUp(low: number, highest: number, frame: Frame, word: string): readonly Mark[] {
  return ticks(highest - low).flatMap((above, index): readonly Mark[] => {
    const value = low + above;
    const y = frame.y1 - ((frame.y1 - frame.y0) * above) / (highest - low);
    return [
      line('background', index === 0 ? 'axis' : 'grid', [
        [frame.x0, y],
        [frame.x1, y],
      ]),
      textMark(
        'labels',
        'note',
        [frame.x0 - 1.5, y],
        index === 0 && low === 0 ? word : `${number(value)}${index === 0 ? ` ${word}` : ''}`,
        { anchor: 'end' },
      ),
    ];
  });
}
