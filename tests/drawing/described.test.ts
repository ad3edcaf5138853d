/**
 * A few drawings, whole, beside their stored descriptions: a label that moved is seen. Where it should have moved, look at the drawing,
 * then write it anew: `npx vitest run --config .vitest.config.ts tests/drawing/described.test.ts -u`.
 */
import { describe, expect, it } from 'vitest';
import * as drawing from '../../src/drawing/index.js';
import { screws } from '../../src/query/release/index.js';
import { record } from '../support/build.js';
import { described } from './described.js';
import { assessmentOf, sampleBehind, sampleModel, sampleWeights } from './sample.js';

const SHEET = { widthMm: 180, heightMm: 220 };
const none = { nodes: 0, nodesInReach: 0, runLengthMm: 0, runLengthInReachMm: 0 };

const assessment = () =>
  assessmentOf(sampleModel(), {
    weights: sampleWeights(),
    access: { nodes: [], runs: [], approaches: {}, behind: sampleBehind, coverage: none, assumptions: [] },
  });

type Assessed = ReturnType<typeof assessment>;

/** The sample names no services; a line diagram is of one. */
const withService = ({ model, ...rest }: Assessed): Assessed => {
  const service = {
    ...record('dc'),
    id: 'dc',
    name: 'House 12 V',
    medium: 'dc',
  } as unknown as Assessed['model']['shell']['services'][number];
  return { ...rest, model: { ...model, shell: { ...model.shell, services: [service] } } };
};

const STORED: readonly (readonly [string, (assessed: Assessed) => drawing.Drawing | undefined])[] = [
  ['general', (a) => drawing.generalArrangement(a, SHEET)[0]],
  ['services', (a) => drawing.serviceDrawings(a, drawing.mediaUsed(a)[0] as 'dc', SHEET)[0]],
  ['panel-face', (a) => drawing.panelFace(a, 'AP-B1', { widthMm: 110, heightMm: 110 })],
  ['emergency', (a) => drawing.emergencyPlan(a, SHEET)],
  ['service-layer', (a) => drawing.serviceDrawings(a, 'gas', SHEET)[0]],
  ['line-diagram', (a) => drawing.lineDiagrams(withService(a), 'dc', SHEET)[0]],
  ['drill-areas', (a) => drawing.drillAreas(a, screws(a), drawing.outsideOf('left'), SHEET)],
  ['no-drill', (a) => drawing.noDrillFace(a, drawing.outsideOf('left'), SHEET)],
];

describe('a drawing', () => {
  it.each(STORED)('of the sample stands as it is described: %s', async (name, make) => {
    const made = make(assessment());
    await expect(described((made as drawing.Drawing).svg)).toMatchFileSnapshot(`described/${name}.txt`);
  });

  it('is described so that one label that moves by 0.2 mm shows', () => {
    const { svg } = drawing.emergencyPlan(assessment(), SHEET) as drawing.Drawing;
    const [whole, x = ''] = /<text[^>]* x="([-\d.]+)"/u.exec(svg) ?? [];
    const moved = svg.replace(whole as string, (whole as string).replace(`x="${x}"`, `x="${Number(x) + 0.2}"`));
    expect(described(moved)).not.toBe(described(svg));
  });
});
