import { describe, expect, it } from 'vitest';
import * as drawing from '../../src/drawing/index.js';
import { project, VIEW_OF_FACE, VIEWS } from '../../src/drawing/projection.js';
import { scaleText } from '../../src/drawing/sheet.js';
import { dot } from '../../src/geometry/vector.js';
import { FACINGS, OUTWARD } from '../../src/records/index.js';
import { buildModel, section } from '../support/build.js';
import { labelBoxes } from './boxes.js';
import { assessmentOf, member, sampleBehind, sampleModel, sampleWeights } from './sample.js';

const SHEET = { widthMm: 180, heightMm: 220 };
const none = { nodes: 0, nodesInReach: 0, runLengthMm: 0, runLengthInReachMm: 0 };

function all(): readonly drawing.Drawing[] {
  const a = assessmentOf(sampleModel(), {
    weights: sampleWeights(),
    access: { nodes: [], runs: [], approaches: {}, behind: sampleBehind, coverage: none, assumptions: [] },
  });
  return [
    ...drawing.generalArrangement(a, SHEET),
    drawing.coverDrawing(a, SHEET),
    ...drawing.frameDrawings(a, SHEET),
    ...drawing.mediaUsed(a).flatMap((medium) => drawing.serviceDrawings(a, medium, SHEET)),
    drawing.panelKeyPlan(a, 'AP-B1', { widthMm: 60, heightMm: 30 }),
    drawing.panelFace(a, 'AP-B1', { widthMm: 110, heightMm: 110 }),
    ...drawing.panelsDrawings(a, SHEET),
    drawing.openingDrawing(a, 'SO-1', { widthMm: 160, heightMm: 100 }),
    ...[...a.model.library.sections.values()].map((one) => drawing.sectionDrawing(one, { widthMm: 60, heightMm: 60 })),
    drawing.axleChart(a, SHEET),
    drawing.growthChart(a, SHEET),
    drawing.influenceChart(a, SHEET),
    drawing.bayPlan(a, SHEET),
    drawing.emergencyPlan(a, SHEET),
    ...FACINGS.map((face) => drawing.noDrillFace(a, drawing.outsideOf(face), SHEET)),
  ];
}

const drawings = all();

describe('every drawing of a whole shell', () => {
  it.each(drawings.map((one) => [one.id, one] as const))('%s is sound', (_id, one) => {
    expect(one.svg).toContain(`viewBox="0 0 ${one.widthMm} ${one.heightMm}"`);
    expect(one.svg).not.toMatch(/NaN|Infinity|undefined|<script|<style|<image|url\(|https?:\/\/(?!www\.w3\.org\/2000\/svg)/u);
    // Figures of places and sizes; words in an attribute may have more decimals.
    expect(one.svg.replaceAll(/ aria-label="[^"]*"/gu, '')).not.toMatch(/="[^"]*\d\.\d{3}/u);
    expect(one.title.length).toBeGreaterThan(3);
    expect(one.alt.length).toBeGreaterThan(10);
    expect(one.widthMm).toBeLessThanOrEqual(180);
    expect(one.heightMm).toBeLessThanOrEqual(220);
    const boxes = labelBoxes(one.svg);
    boxes.forEach((box, index) => {
      expect(box.x0).toBeGreaterThanOrEqual(0);
      expect(box.y0).toBeGreaterThanOrEqual(0);
      expect(box.x1).toBeLessThanOrEqual(one.widthMm);
      expect(box.y1).toBeLessThanOrEqual(one.heightMm);
      for (const other of boxes.slice(index + 1)) {
        // The lines of a list touch; two decimals in print may differ from that by one each.
        const over = Math.min(
          Math.min(box.x1, other.x1) - Math.max(box.x0, other.x0),
          Math.min(box.y1, other.y1) - Math.max(box.y0, other.y0),
        );
        expect(over).toBeLessThan(0.025);
      }
    });
  });

  it('has ids of its own', () => {
    expect(new Set(drawings.map(({ id }) => id)).size).toBe(drawings.length);
  });

  it('comes out the same twice', () => {
    expect(all().map(({ svg }) => svg)).toEqual(drawings.map(({ svg }) => svg));
  });

  it('shows every member, run, node and panel as a subject somewhere', () => {
    const shown = new Set(drawings.flatMap(({ ids }) => ids));
    const { members, runs, nodes, panels } = sampleModel().shell;
    expect([...members, ...runs, ...nodes, ...panels].filter(({ id }) => !shown.has(id)).map(({ id }) => id)).toEqual([]);
  });

  it('keeps ids off the cover', () => {
    expect(drawings.find(({ id }) => id === 'cover')?.ids).toEqual([]);
  });

  it('links nothing where nothing has a home', () => {
    const a = assessmentOf(sampleModel());
    for (const one of drawing.generalArrangement(a, SHEET, { linkable: () => false })) expect(one.svg).not.toContain('<a ');
  });
});

describe('frames across the vehicle', () => {
  const truss = (name: string, x: number) => [
    member(`${name}-TC`, 'roof', 'RT', [x, -48, 100], [x, 48, 100]),
    member(`${name}-BC`, 'roof', 'RT', [x, -48, 92], [x, 48, 92]),
    ...[1, 2, 3].map((k) => member(`${name}-W${k}`, 'roof', 'RT', [x, k * 20 - 40, 93], [x, k * 20 - 40, 99])),
  ];
  const model = buildModel(
    { members: [...truss('T1', 40), ...truss('T2', 60)] },
    {
      sections: new Map([
        ['RT', section('RT', { shape: 'rectangular tube', depthMm: 50, widthMm: 40, wallMm: 3, cornerRadiusMm: 0 })],
      ]),
    },
  );

  it('are drawn square on with the ids that hide each other from above', () => {
    const frames = drawing.frameDrawings(assessmentOf(model), SHEET);
    const square = frames.filter(({ id }) => id.includes('cross-frames'));
    expect(square).toHaveLength(1);
    expect(new Set(square[0]?.ids)).toEqual(new Set(model.shell.members.map(({ id }) => id)));
    const plan = frames.find(({ id }) => id.endsWith('-roof'));
    expect(plan?.svg).toContain('>T1-TC<');
    expect(plan?.svg).not.toContain('>T1-BC<');
  });
});

describe('scale', () => {
  it('is true: a member of 40 in measures 40 in over the scale', () => {
    const rail = member('R-1', 'floor', 'RT', [100, 0, 0], [140, 0, 0]);
    const model = buildModel(
      { members: [rail] },
      {
        sections: new Map([
          ['RT', section('RT', { shape: 'rectangular tube', depthMm: 50, widthMm: 40, wallMm: 3, cornerRadiusMm: 0 })],
        ]),
      },
    );
    const [plan] = drawing.frameDrawings(assessmentOf(model), SHEET).filter(({ scale }) => scale !== 'not to scale');
    const path = /<a href="#r-R-1"><path d="M([^"]*)Z"/u.exec(plan?.svg ?? '')?.[1] as string;
    const points = path.split('L').map((pair) => pair.split(' ').map(Number) as [number, number]);
    const xs = points.map(([x]) => x);
    const ys = points.map(([, y]) => y);
    const reduction = Number(plan?.scale.split(':')[1]);
    expect((Math.max(...xs) - Math.min(...xs)) * reduction).toBeCloseTo(40 * 25.4, 0);
    expect((Math.max(...ys) - Math.min(...ys)) * reduction).toBeCloseTo(40, 0);
  });

  it('is one of the series, and the bar is as long as it says', () => {
    const front = drawings.find(({ id }) => id === 'ga-left') as drawing.Drawing;
    const reduction = Number(front.scale.split(':')[1]);
    expect(scaleText(reduction)).toBe(front.scale);
    const furniture = front.svg.slice(front.svg.indexOf('sb-furniture'));
    const feet = Number(/>(\d+) ft</u.exec(furniture)?.[1]);
    const rings = [...furniture.matchAll(/d="M([\d.]+) [\d.]+L([\d.]+)/gu)]
      .slice(0, 2)
      .map((m) => [Number(m[1]), Number(m[2])] as const);
    const drawn = Math.max(...rings.flat()) - Math.min(...rings.flat());
    expect((drawn * reduction) / 304.8).toBeCloseTo(feet, 1);
  });
});

describe('views', () => {
  it('look at the face that they are named after', () => {
    for (const face of FACINGS) expect(dot(VIEW_OF_FACE[face].toViewer, OUTWARD[face])).toBeCloseTo(1, 9);
  });

  it('turn front, right side and top to where a reader expects them', () => {
    const front = [-1, 0, 0] as const;
    const right = [0, 1, 0] as const;
    const top = [0, 0, 1] as const;
    expect(project(VIEWS.plan, front)).toEqual([-1, 0]);
    expect(project(VIEWS.plan, right)).toEqual([0, 1]);
    expect(project(VIEWS.underside, front)).toEqual([-1, 0]);
    expect(project(VIEWS.underside, right)).toEqual([0, -1]);
    expect(project(VIEWS.left, front)).toEqual([-1, 0]);
    expect(project(VIEWS.left, top)).toEqual([0, 1]);
    expect(project(VIEWS.right, front)).toEqual([1, 0]);
    expect(project(VIEWS.front, right)).toEqual([-1, 0]);
    expect(project(VIEWS.rear, right)).toEqual([1, 0]);
  });

  it('draw an empty shell without falling over', () => {
    const a = assessmentOf(buildModel());
    for (const one of [
      ...drawing.generalArrangement(a, SHEET),
      drawing.emergencyPlan(a, SHEET),
      drawing.bayPlan(a, SHEET),
      drawing.axleChart(a, SHEET),
      drawing.growthChart(a, SHEET),
      drawing.influenceChart(a, SHEET),
      drawing.coverDrawing(a, SHEET),
    ]) {
      expect(one.svg).not.toMatch(/NaN|Infinity/u);
    }
    expect(drawing.panelFace(a, 'NONE', SHEET).svg).toContain('Panel NONE is not on record.');
    expect(drawing.openingDrawing(a, 'NONE', SHEET).alt).toContain('not on record');
  });
});
