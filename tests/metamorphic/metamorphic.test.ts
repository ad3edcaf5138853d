/** Laws that hold whatever the figures are: what must not change, changed, and everything computed again. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Assessment, assess } from '../../src/assess.js';
import { access } from '../../src/compute/access/index.js';
import { loadStore } from '../../src/model/load.js';
import { loadOne, storeText } from '../support/store.js';
import { mirrorPlaces, movePlaces } from './places.js';

const DEMO = fileURLToPath(new URL('../../demo-data/', import.meta.url));
const demoFiles = (shell: string): Record<string, string> => {
  const found = readdirSync(DEMO, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  const names = found.map((one) => path.relative(DEMO, path.join(one.parentPath, one.name)).split(path.sep).join('/'));
  const wanted = names.filter((name) => /^(?:shop\.yaml$|library\/)/u.test(name) || name.startsWith(`shells/${shell}/`));
  return Object.fromEntries(
    wanted
      .filter((name) => name.endsWith('.yaml') || name.includes('/photos/'))
      .map((name) => [name, name.endsWith('.yaml') ? readFileSync(path.join(DEMO, name), 'utf8') : 'picture']),
  );
};
const judged = (files: Readonly<Record<string, string>>, shell: string): Assessment => {
  const found = loadStore(storeText(files)).shells.get(shell);
  if (!found) throw new Error(`no shell ${shell}`);
  return assess(found.model, found.findings);
};
const verdicts = ({ findings }: Assessment): readonly string[] =>
  findings
    // A sign-off stands for the record as it was typed.
    .filter(({ rule }) => !rule.startsWith('signoff.'))
    .map(({ rule, severity, ids }) => `${rule} ${severity} ${ids.join(' ')}`)
    .sort();

describe.each(['OV-021', 'OV-024'])('%s', (shell) => {
  const files = demoFiles(shell);
  const as = judged(files, shell);

  it('is judged the same in every unit system that it may be shown in', () => {
    // The finished shell takes long: one other system does for it.
    for (const units of shell === 'OV-021' ? ['metric'] : ['us', 'metric', 'both']) {
      const shop = (files['shop.yaml'] as string).replace(/^units: .*$/mu, `units: ${units}`);
      expect(shop).toContain(`units: ${units}`);
      expect(verdicts(judged({ ...files, 'shop.yaml': shop }, shell))).toEqual(verdicts(as));
    }
  });

  it('stands with all of its weight on its axles, and turns about none of them', () => {
    const xOf = new Map(as.model.shell.chassis.axles.map(({ id, xMm }) => [id, xMm]));
    const determined = as.figures.weights.conditions.filter(({ axles }) => axles.length > 0);
    expect(determined.length).toBeGreaterThan(4);
    for (const { totalKg, centroid, axles } of determined) {
      expect(axles.reduce((sum, { loadKg }) => sum + loadKg, 0)).toBeCloseTo(totalKg, 6);
      const moment = axles.reduce((sum, { axle, loadKg }) => sum + loadKg * (xOf.get(axle) as number), 0);
      expect(moment / totalKg).toBeCloseTo(centroid[0], 4);
      for (const { loadKg, leftKg, rightKg } of axles) {
        if (leftKg !== undefined && rightKg !== undefined) expect(leftKg + rightKg).toBeCloseTo(loadKg, 6);
      }
    }
  });

  it('mirrored left for right, is judged the same and gets the mirrored answer', () => {
    const there = judged(
      Object.fromEntries(
        Object.entries(files).map(([name, text]) => [
          name,
          name.startsWith('shells/') && name.endsWith('.yaml') ? mirrorPlaces(text) : text,
        ]),
      ),
      shell,
    );
    expect(verdicts(there)).toEqual(verdicts(as));
    const [a, b] = [as.figures, there.figures];
    expect(b.takeOff.total.massKg).toBeCloseTo(a.takeOff.total.massKg, 6);
    const [x, y, z] = a.takeOff.total.centroid;
    for (const [i, mm] of [x, -y, z].entries()) expect(b.takeOff.total.centroid[i]).toBeCloseTo(mm, 4);
    for (const [i, { name, axles }] of a.weights.conditions.entries()) {
      expect(b.weights.conditions[i]?.name).toBe(
        name.replace(/\b(?:left|right) end\b/gu, (end) => (end.startsWith('left') ? 'right end' : 'left end')),
      );
      for (const [k, axle] of axles.entries()) {
        const other = b.weights.conditions[i]?.axles[k];
        expect(other?.loadKg).toBeCloseTo(axle.loadKg, 4);
        expect(other?.verdict).toBe(axle.verdict);
        if (axle.leftKg !== undefined) expect(other?.rightKg).toBeCloseTo(axle.leftKg, 4);
        if (axle.rightKg !== undefined) expect(other?.leftKg).toBeCloseTo(axle.rightKg, 4);
      }
    }
    const reached = ({ access: { nodes } }: Assessment['figures']) =>
      nodes.map(({ id, inReach, open, panels }) => [
        id,
        inReach,
        open,
        ...panels.filter((one) => one.blockedBy.length === 0).map((one) => one.panel),
      ]);
    expect(reached(b)).toEqual(reached(a));
    expect(b.access.coverage.runLengthInReachMm).toBeCloseTo(a.access.coverage.runLengthInReachMm, 2);
    const joined = ({ joints }: Assessment['figures']) => joints.joints.map(({ members, welds }) => [[...members].sort(), welds]);
    expect(joined(b)).toEqual(joined(a));
    expect(b.joints.missing).toEqual(a.joints.missing);
  });

  it('reaches no less for any access panel that it has', () => {
    const { model } = as;
    const having = as.figures.access;
    const reached = new Set(having.nodes.filter(({ inReach }) => inReach).map(({ id }) => id));
    const panels = model.shell.panels.filter(({ panelKind }) => panelKind === 'access');
    // Every fifth, and the last: each look at the whole coach takes a while.
    for (const without of panels.filter((_, i) => i % 5 === 0 || i === panels.length - 1)) {
      const less = access({ ...model, shell: { ...model.shell, panels: model.shell.panels.filter((one) => one !== without) } });
      expect(less.coverage.nodesInReach).toBeLessThanOrEqual(having.coverage.nodesInReach);
      expect(less.coverage.runLengthInReachMm).toBeLessThanOrEqual(having.coverage.runLengthInReachMm + 1e-6);
      for (const { id, inReach } of less.nodes) if (inReach) expect(reached).toContain(id);
    }
  });

  it('is the same coach wherever its positions are measured from', () => {
    const origin = [2540, -76.2, 127] as const;
    const moved = Object.fromEntries(
      Object.entries(files).map(([name, text]) => [
        name,
        name.startsWith('shells/') && name.endsWith('.yaml')
          ? movePlaces(text, ([x, y, z]) => [x - origin[0], y - origin[1], z - origin[2]])
          : text,
      ]),
    );
    const head = `shells/${shell}/shell.yaml`;
    moved[head] = `${moved[head]}\ndatum: {origin: [${origin.map((mm) => `${mm} mm`).join(', ')}]}\n`;
    const there = judged(moved, shell);
    expect(verdicts(there)).toEqual(verdicts(as));
    const [a, b] = [as.figures, there.figures];
    expect(b.takeOff.total.massKg).toBeCloseTo(a.takeOff.total.massKg, 6);
    for (const [i, mm] of b.takeOff.total.centroid.entries()) expect(mm).toBeCloseTo(a.takeOff.total.centroid[i] as number, 4);
    for (const [i, one] of a.weights.conditions.entries()) {
      expect(b.weights.conditions[i]?.name).toBe(one.name);
      for (const [k, axle] of one.axles.entries()) {
        expect(b.weights.conditions[i]?.axles[k]?.loadKg).toBeCloseTo(axle.loadKg, 4);
        expect(b.weights.conditions[i]?.axles[k]?.uncertaintyKg).toBeCloseTo(axle.uncertaintyKg, 4);
      }
    }
    expect(b.access.coverage.nodesInReach).toBe(a.access.coverage.nodesInReach);
    expect(b.access.coverage.runLengthMm).toBeCloseTo(a.access.coverage.runLengthMm, 2);
    expect(b.joints.found).toBe(a.joints.found);
    expect(b.joints.missing).toEqual(a.joints.missing);
  });
});

describe('a member cut in two', () => {
  const SECTIONS = `- {id: T, shape: rectangular tube, depth: 100 mm, width: 50 mm, wall: 5 mm, corner_radius: 4 mm}
- {id: L, shape: angle, depth: 75 mm, width: 50 mm, wall: 6 mm}
- {id: C, shape: channel, depth: 100 mm, width: 50 mm, web: 5 mm, flange: 7 mm}
`;
  const coordinate = fc.integer({ min: -4000, max: 9000 });
  const place = fc.tuple(coordinate, coordinate, coordinate);
  const massAndMoments = (members: string): readonly number[] => {
    const { model, findings } = loadOne({
      'library/materials.yaml': '- {id: A, kind: aluminium, density: 2700 kg/m3}\n',
      'library/sections.yaml': SECTIONS,
      'shells/T-1/members.yaml': members,
    });
    const { massKg, centroid } = assess(model, findings).figures.takeOff.total;
    return [massKg, ...centroid.map((mm) => mm * massKg)];
  };
  const typed = (one: readonly number[]): string => `[${one.map((mm) => `${mm} mm`).join(', ')}]`;
  it('weighs what it weighed, about the same point', () => {
    fc.assert(
      fc.property(
        place,
        place,
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.constantFrom('T', 'L', 'C'),
        fc.integer({ min: -180, max: 180 }),
        (from, to, part, section, roll) => {
          fc.pre(Math.hypot(...from.map((mm, i) => mm - (to[i] as number))) > 100);
          const cut = from.map((mm, i) => mm + part * ((to[i] as number) - mm));
          const line = (id: string, a: readonly number[], b: readonly number[]): string =>
            `- {id: ${id}, section: ${section}, alloy: A, roll: ${roll} deg, from: ${typed(a)}, to: ${typed(b)}}\n`;
          const whole = massAndMoments(line('M', from, to));
          const halves = massAndMoments(line('M-1', from, cut) + line('M-2', cut, to));
          expect(whole[0]).toBeGreaterThan(0);
          halves.forEach((value, i) => {
            expect(Math.abs(value - (whole[i] as number))).toBeLessThan(1e-6 * Math.max(1, Math.abs(whole[i] as number)));
          });
        },
      ),
      { numRuns: 60 },
    );
  });
});
