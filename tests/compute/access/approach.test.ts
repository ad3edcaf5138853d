import { describe, expect, it } from 'vitest';
import { access } from '../../../src/compute/access/index.js';
import { standing } from '../../../src/compute/access/standing.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Model } from '../../../src/model/shell.js';
import type { Chassis, Tank } from '../../../src/records/index.js';
import { buildModel } from '../../support/build.js';
import { accessPanel, component, levelPanel, node, zone } from '../../support/services.js';

/** A trough of 4 m over a belly at z = 0, 1 m above the ground, opened by a panel of 300 × 250 at x = 1 m. */
const trough = zone('TROUGH', [
  [0, -400, 0],
  [4000, 400, 600],
]);
const belly = levelPanel('BP', [2000, 0, 0], [4000, 2400]);
const panel = accessPanel('AP', [1000, 0, 0], [300, 250], { of: 'BP' });
const axle = { id: 'drive', xMm: 4000, dual: true, lift: false, steered: false };
const chassis = (frame: Chassis['frame'] = {}): Chassis => ({ axles: [axle], frame: { railTopAboveGroundMm: 1000, ...frame } });

const look = (shell: Partial<Model['shell']>) =>
  access(
    buildModel({ chassis: chassis(), zones: [trough], panels: [belly, panel], nodes: [node('N', [1000, 0, 200])], ...shell }),
  );
const tank = (at: Vec3, sizeMm?: Vec3, capacityM3 = 0.2): Tank => ({
  id: 'FUEL',
  contents: 'diesel',
  capacityM3,
  at,
  densityKgM3: 840,
  ...(sizeMm ? { body: { sizeMm } } : {}),
});

describe('what stands before a panel', () => {
  it('nothing: it is clear, and the person lies under the coach', () => {
    const found = look({});
    expect(found.approaches.AP).toEqual({
      clear: true,
      blockedBy: [],
      removeFirst: [],
      moveFirst: [],
      from: 'under the coach',
    });
    expect(found.nodes[0]?.inReach).toBe(true);
  });

  it('a tank 38 mm (1-1/2 in) under it blocks it and everything behind it, by name', () => {
    const found = look({ tanks: [tank([1000, 0, -38 - 250], [1400, 1400, 500])] });
    expect(found.approaches.AP).toMatchObject({ clear: false, blockedBy: ['FUEL'] });
    expect(found.nodes[0]?.inReach).toBe(false);
    expect(found.nodes[0]?.panels[0]).toMatchObject({ reach: 'forearm', blockedBy: [], approach: { clear: false } });
    expect(found.behind.AP?.find(({ id }) => id === 'N')?.approach?.clear).toBe(false);
  });

  it('the same tank as deep as an arm needs to slant in does not', () => {
    // At 60° from straight a forearm of 404 mm needs 202 mm, and half a hand.
    const at = (gap: number): Tank => tank([1000, 0, -gap - 150], [700, 700, 300]);
    expect(look({ tanks: [at(150)] }).approaches.AP?.clear).toBe(false);
    expect(look({ tanks: [at(240)] }).approaches.AP?.clear).toBe(true);
  });

  it('a tank before one half of the opening leaves the other half', () => {
    const found = look({ tanks: [tank([1000 - 700, 0, -300], [1380, 3000, 560])] });
    expect(found.approaches.AP?.clear).toBe(true);
    expect(found.nodes[0]?.inReach).toBe(true);
  });

  it('a tank without a size is a cube of its capacity, and that is said', () => {
    const model = buildModel({ chassis: chassis(), tanks: [tank([0, 0, 0], undefined, 0.125)] });
    expect(standing(model).solids[0]?.box.half).toEqual([250, 250, 250]);
    expect(standing(model).assumptions.join('\n')).toContain(
      'FUEL: no size recorded; taken as a cube of its capacity, 500 mm a side',
    );
  });

  it('a tank that is of a component with a size shares its solid', () => {
    const shared = { ...tank([0, 0, 0]), of: 'C' };
    const model = buildModel({ tanks: [shared], components: [component('C', [0, 0, 0], [600, 600, 600])] });
    expect(standing(model).solids.map(({ id }) => id)).toEqual(['C']);
  });

  it('a lid held by screws comes off first; a glued one blocks', () => {
    const lid = (method: string) => levelPanel('LID', [1000, 0, -60], [1600, 1600], { panelKind: 'cap', fixing: { method } });
    expect(look({ panels: [belly, panel, lid('screws')] }).approaches.AP).toMatchObject({ clear: true, removeFirst: ['LID'] });
    expect(look({ panels: [belly, panel, lid('bonded')] }).approaches.AP).toMatchObject({ clear: false, blockedBy: ['LID'] });
  });

  it('what rides on a slide-out is run out of the way', () => {
    const box = { ...component('BOX', [1000, 0, -300], [1600, 1600, 500]), ridesOn: 'SO-1' };
    expect(look({ components: [box] }).approaches.AP).toMatchObject({ clear: true, moveFirst: ['SO-1'] });
  });

  it('nobody gets under a coach that stands too low, or is full of tanks below: supine work space 510 mm, MIL-STD-1472, from memory', () => {
    const around = [-1200, 0, 1200].map((x, i) => component(`T${i}`, [1000 + x, 0, -800], [1190, 4000, 380]));
    expect(look({ components: around }).approaches.AP?.clear).toBe(false);
    expect(look({ components: around.slice(0, 1) }).approaches.AP?.clear).toBe(true);
  });
});

describe('chassis rails', () => {
  const frame = { railSpacingMm: 864, railDepthMm: 260, railWidthMm: 80, lengthMm: 9000 };

  it('stand where the frame says, outside to outside, and block a panel over a rail', () => {
    const over = accessPanel('AP', [1000, -392, 0], [300, 60], { of: 'BP' });
    const found = look({ chassis: chassis(frame), panels: [belly, over], nodes: [node('N', [1000, -392, 150])] });
    expect(found.approaches.AP).toMatchObject({ clear: false, blockedBy: ['chassis rail left'] });
    const rails = standing(buildModel({ chassis: chassis(frame) })).solids;
    expect(rails.map(({ box }) => [box.center[1], box.half[1], box.center[2], box.half[2]])).toEqual([
      [-392, 40, -130, 130],
      [392, 40, -130, 130],
    ]);
  });

  it('without a depth are in nobody’s way, and that is said', () => {
    const model = buildModel({
      chassis: chassis({ railSpacingMm: 864 }),
    });
    expect(standing(model).solids).toEqual([]);
    expect(standing(model).assumptions.join(' ')).toContain('`rail_depth`, `rail_width`');
  });
});

describe('a floor', () => {
  it('keeps a hand from below off what stands on it, and what stands on it is exposed', () => {
    const floor = component('FLOOR', [2000, 0, 300], [4000, 2400, 19]);
    const valve = node('V', [1000, 0, 330]);
    const low = zone('LANE', [
      [0, -400, 0],
      [4000, 400, 280],
    ]);
    const found = look({ components: [floor], zones: [low], nodes: [valve] });
    expect(found.nodes[0]?.open).toBe(true);
    expect(found.nodes[0]?.panels[0]?.blockedBy).toEqual(['FLOOR']);
  });

  it('what is closed in on all sides without a zone is not exposed', () => {
    const shut = [
      levelPanel('LOW', [1000, 0, 900], [1200, 1200]),
      levelPanel('HIGH', [1000, 0, 940], [1200, 1200], { panelKind: 'interior' }),
    ];
    const found = look({ zones: [], panels: [belly, panel, ...shut], nodes: [node('V', [1000, 0, 920])] });
    expect(found.nodes[0]?.open).toBe(false);
    expect(found.coverage.nodesInReach).toBe(0);
  });
});
