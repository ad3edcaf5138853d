import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess.js';
import { weldMap } from '../../src/drawing/index.js';
import { crowds } from '../../src/drawing/weld-map/crowds.js';
import { mapViews } from '../../src/drawing/weld-map/map-views.js';
import type { PlacedPoint } from '../../src/drawing/weld-map/marks.js';
import { weldPoints } from '../../src/drawing/weld-map/points.js';
import type { Weld } from '../../src/records/index.js';
import { judged } from '../demo/store.js';
import { buildModel, record, section } from '../support/build.js';
import { labelBoxes } from './boxes.js';
import { assessmentOf, member } from './sample.js';

/** Text area of a turned letter sheet and of a turned A4 one, less heading and caption, mm. */
const ROOMS = [
  { widthMm: 241, heightMm: 162 },
  { widthMm: 259, heightMm: 156 },
];

const weld = (id: string, joins: Weld['joins'], more: Partial<Weld> = {}): Weld => ({
  ...record(id),
  joins,
  type: 'fillet',
  sizeMm: 5,
  lengthMm: 60,
  sides: 'both',
  process: 'GMAW',
  allRound: false,
  inspections: [],
  ...more,
});

describe.each(['OV-021', 'OV-024'])('the weld map of %s', (shell) => {
  const { assessment } = judged(shell);
  const { welds } = assessment.model.shell;
  const maps = ROOMS.map((room) => weldMap(assessment, room));

  it('shows every weld, each with its number at every joint', () => {
    for (const sheets of maps) {
      const printed = sheets.map(({ svg }) => svg).join('');
      for (const one of welds) {
        const times = printed.split(`>${one.id}</text>`).length - 1;
        expect(times, one.id).toBe(one.joins.length);
        expect(sheets.filter(({ welds: own }) => own.includes(one.id)).length, one.id).toBeGreaterThan(0);
      }
    }
  });

  it('links each number to its weld', () => {
    for (const { svg, welds: own } of maps[0] ?? [])
      for (const id of own) expect(svg).toMatch(new RegExp(`<a href="#r-${id}">(?:<rect[^>]*/>)?<text[^>]*>${id}</text>`, 'u'));
  });

  it('leaves no label out, and lets none overlap or leave its sheet', () => {
    for (const one of maps.flat()) {
      expect(one.leftOut, one.title).toEqual([]);
      const boxes = labelBoxes(one.svg);
      boxes.forEach((box, index) => {
        expect(box.x0).toBeGreaterThanOrEqual(0);
        expect(box.x1).toBeLessThanOrEqual(one.widthMm);
        expect(box.y0).toBeGreaterThanOrEqual(0);
        expect(box.y1).toBeLessThanOrEqual(one.heightMm);
        for (const other of boxes.slice(index + 1)) {
          const over = Math.min(
            Math.min(box.x1, other.x1) - Math.max(box.x0, other.x0),
            Math.min(box.y1, other.y1) - Math.max(box.y0, other.y0),
          );
          expect(over, one.title).toBeLessThan(0.025);
        }
      });
    }
  });

  // ISO 3098-1: the least nominal height of lettering is 1.8 mm (from memory).
  it('has no text smaller than 1.8 mm', () => {
    for (const { svg } of maps.flat())
      for (const [, size] of svg.matchAll(/font-size="([\d.]+)"/gu)) expect(Number(size)).toBeGreaterThanOrEqual(1.8);
  });

  it('draws each symbol that a sheet needs once on it', () => {
    const keyed = /symbol ([A-Z]+)<\/text>/gu;
    for (const { svg } of maps.flat()) {
      const keys = [...svg.matchAll(keyed)].map(([, key]) => key);
      expect(keys.length).toBeGreaterThan(0);
      expect(new Set(keys).size).toBe(keys.length);
    }
  });

  it('comes out the same twice', () => {
    expect(weldMap(assessment, ROOMS[0] as (typeof ROOMS)[number])).toEqual(maps[0]);
  });
});

describe('where a weld is', () => {
  const tube = section('RT4', { shape: 'rectangular tube', depthMm: 101.6, widthMm: 50.8, wallMm: 6.35, cornerRadiusMm: 0 });
  const rail = member('A', 'subframe', 'RT4', [0, 0, 0], [100, 0, 0]);
  const post = member('B', 'walls', 'RT4', [50, 0, 2], [50, 0, 80]);
  const far = member('C', 'walls', 'RT4', [50, 30, 2], [50, 30, 80]);
  const of = (welds: readonly Weld[]): Assessment =>
    assessmentOf(buildModel({ members: [rail, post, far], welds }, { sections: new Map([['RT4', tube]]) }), {
      joints: {
        joints: [{ members: ['A', 'B'], at: [1270, 0, 50], gapMm: 0, welds: [] }],
        found: 1,
        recorded: 0,
        missing: [],
        withoutJoint: [],
      },
    });

  it('is as recorded, else at the contact, else between the two, else nowhere', () => {
    const places = weldPoints(
      of([
        weld('W-1', [['B', 'A']]),
        weld('W-2', [['A', 'B']], { at: [1300, 0, 40] }),
        weld('W-3', [['B', 'C']]),
        weld('W-4', [['X', 'Y']]),
      ]),
    );
    expect(places.map((one) => [one.weld.id, one.at.map(Math.round)])).toEqual([
      ['W-1', [1270, 0, 50]],
      ['W-2', [1300, 0, 40]],
      ['W-3', [1270, 381, 1041]],
    ]);
  });

  it('goes with the later of its two parts', () => {
    const a = of([weld('W-1', [['B', 'A']])]);
    const { views } = mapViews(a.model, weldPoints(a));
    expect(views.map(({ stage, points, joined }) => [stage, points.length, joined.map(({ id }) => id)])).toEqual([
      ['walls', 1, ['A']],
    ]);
  });
});

describe('a long wall', () => {
  it('is cut into as many sheets as its numbers need, and loses none', () => {
    const count = 200;
    const rails = [
      member('BOT', 'walls', 'RT4', [0, 0, 0], [count * 15, 0, 0]),
      member('TOP', 'walls', 'RT4', [0, 0, 100], [count * 15, 0, 100]),
    ];
    const posts = Array.from({ length: count }, (_, k) =>
      member(`P${k}`, 'walls', 'RT4', [10 + k * 15, 0, 2], [10 + k * 15, 0, 98]),
    );
    const tube = section('RT4', { shape: 'rectangular tube', depthMm: 101.6, widthMm: 50.8, wallMm: 6, cornerRadiusMm: 0 });
    const welds = posts.flatMap(({ id }) => [weld(`B-${id}`, [['BOT', id]]), weld(`T-${id}`, [['TOP', id]])]);
    const model = buildModel({ members: [...rails, ...posts], welds }, { sections: new Map([['RT4', tube]]) });
    const sheets = weldMap(assessmentOf(model), ROOMS[0] as (typeof ROOMS)[number]);
    expect(sheets.length).toBeGreaterThan(6);
    expect(sheets.flatMap(({ leftOut }) => leftOut)).toEqual([]);
    const shown = sheets.flatMap((one) => one.welds);
    expect(shown.length).toBe(2 * count);
    expect(new Set(shown).size).toBe(2 * count);
  });
});

describe('crowded places', () => {
  const at = (x: number, y: number): PlacedPoint => ({
    point: { weld: weld(`W-${x}-${y}`, []), pair: ['A', 'B'], at: [0, 0, 0] },
    at: [x, y],
  });

  it('are four welds and more within a small circle, each weld in one of them', () => {
    const near = [at(10, 10), at(12, 10), at(10, 12), at(12, 12)];
    expect(crowds([...near, at(60, 60), at(63, 60), at(66, 60)])).toEqual([near]);
    expect(crowds(near.slice(1))).toEqual([]);
    const more = [...near, at(14, 14), at(40, 40), at(41, 40), at(40, 41), at(41, 41)];
    const found = crowds(more);
    expect(found.map(({ length }) => length)).toEqual([5, 4]);
    expect(new Set(found.flat()).size).toBe(9);
  });
});
