import { beforeAll, describe, expect, it } from 'vitest';
import { roughPlace } from '../../src/book/chapters/emergency.js';
import { bookDocument } from '../../src/book/document.js';
import type { Edition } from '../../src/book/input.js';
import { FINGERPRINT, HISTORY, smallAssessment } from './small-store.js';

/** Two air lines down through the belly panel, one of them sealed, and an earth stud with its washer. */
const AIR = `
service: Air
medium: air
circuits:
  - {id: AI, name: Air main, size: 1/2 in nylon}
nodes:
  - {id: AI/A, kind: fitting, at: [200 in, 0 in, 8 in]}
  - {id: AI/B, kind: fitting, at: [200 in, 0 in, -8 in]}
  - {id: AI/C, kind: fitting, at: [240 in, 0 in, 8 in]}
  - {id: AI/D, kind: fitting, at: [240 in, 0 in, -8 in]}
runs:
  - {id: AI/1, circuit: AI, from: AI/A, to: AI/B, sealed: [BP-04], grommets: [BP-04], tolerance: 10 mm}
  - {id: AI/2, circuit: AI, from: AI/C, to: AI/D, grommets: [BP-04], tolerance: 10 mm}
`;
const EARTH = `
service: Earth
medium: dc
circuits: [{id: EB, name: Bonding, bonding: yes}]
nodes:
  - {id: FRAME, kind: load, at: [160 in, -9 in, 0 in]}
  - {id: ES-1, kind: terminal, name: earth stud 1, at: [149 in, -9 in, 0 in], torque: 15 N.m, isolator: yes}
runs: [{id: EB/1, circuit: EB, from: FRAME, to: ES-1, tolerance: 10 mm}]
`;

const html = {} as Record<Edition, string>;
const assessment = smallAssessment({
  'shells/T-1/services/air.yaml': AIR,
  'shells/T-1/services/earth.yaml': EARTH,
  'shells/T-1/panels-skin.yaml':
    '- {id: SK-9, kind: skin, alloy: 5052-H32, thickness: 0.125 in, outline: [[60 in, -50 in, 10 in], [90 in, -50 in, 10 in], [90 in, -50 in, 90 in], [60 in, -50 in, 90 in]], stage: walls}\n',
});

beforeAll(async () => {
  for (const edition of ['service', 'owner'] as const) {
    const input = { assessment, edition, fingerprint: FINGERPRINT, history: HISTORY, photoFile: async () => undefined };
    const { html: page } = await bookDocument(input);
    html[edition] = page.slice(page.indexOf('<body>'));
  }
});

const words = (markup: string): string =>
  markup
    .replace(/<[^>]+>/gu, ' ')
    .replace(/\s+/gu, ' ')
    .trim();
/** Text between two places of the service edition. */
const between = (from: string, to: string, edition: Edition = 'service'): string => {
  const start = html[edition].indexOf(from);
  expect(start, from).toBeGreaterThan(0);
  return words(html[edition].slice(start, html[edition].indexOf(to, start)));
};

describe('seals and insulators', () => {
  it('stand in the list of runs, told from those that nothing proves', () => {
    const runs = between('id="h-runs-air"', '</table>');
    expect(runs).toMatch(/AI\/1 .*sealed at BP-04.*AI\/2/u);
    expect(runs).toMatch(/AI\/2 .*sealing not verified at BP-04/u);
  });

  it('stand on the card of the panel that one opens, and in the index', () => {
    const card = between('id="r-AP-11"', 'id="h-panel-plans"');
    expect(card).toMatch(/ES-1 earth stud 1 [^/]*insulator fitted/u);
    const index = between('id="h-by-name"', 'id="h-by-id"');
    expect(index).toMatch(/earth stud 1 terminal, [a-z, ]*, insulator fitted ES-1/u);
    expect(index).toMatch(/Air main circuit, sealed at BP-04; sealing not verified at BP-04/u);
  });

  it('stand where one looks for a leak, for a torque and for an earth', () => {
    const holes = between('Where runs pass the belly', '</table>');
    expect(holes).toMatch(/AI\/1 BP-04 .*sealed/u);
    expect(holes).toMatch(/AI\/2 BP-04 .*not verified/u);
    expect(between('id="h-torques"', 'id="h-earths"')).toContain('terminal, insulator fitted');
    expect(between('id="h-earths"', 'id="h-spare-ways"')).toMatch(/ES-1 .*insulator fitted/u);
  });
});

describe('what has no name', () => {
  it('stands in the owner’s index by kind, side and place', () => {
    expect(between('id="c-index"', '</table>', 'owner')).toContain('access panel, underside, from 11 ft 8 in aft AP-11');
  });
});

describe('the key of lines in the service access index', () => {
  it('names each medium of the shell with its pattern and the page of its drawings', () => {
    const at = html.service.indexOf('class="media-key"');
    const key = html.service.slice(at, html.service.indexOf('</p>', at));
    for (const [medium, name] of [
      ['dc', 'Direct current'],
      ['gas', 'Gas'],
      ['air', 'Compressed air'],
    ]) {
      expect(key).toContain(`href="#h-drawings-${medium}">${name}</a>`);
      expect(html.service).toContain(`id="h-drawings-${medium}"`);
    }
    expect(key.match(/class="sb-swatch"/gu)?.length).toBe(3);
  });
});

describe('a place told in a hurry', () => {
  const at = (x: number, y: number, z: number): string =>
    roughPlace({ assessment } as Parameters<typeof roughPlace>[0], [x, y, z]);
  it('is a third of the length, a side and a height', () => {
    expect(at(500, -1000, -200)).toBe('front, left, under the floor');
    expect(at(4800, 0, 900)).toBe('middle, near the center line, at hand height');
    expect(at(9000, 1100, 100)).toBe('rear, right, low');
  });
});
