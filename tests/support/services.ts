/** Records of services, zones and panels from literals. Lengths in mm. */
import type { Vec3 } from '../../src/geometry/vector.js';
import type { Circuit, Component, Member, Panel, Run, ServiceNode, Zone } from '../../src/records/index.js';
import { record } from './build.js';

export const node = (id: string, at: Vec3, more: Partial<ServiceNode> = {}): ServiceNode => ({
  ...record(id),
  service: 's',
  medium: 'dc',
  nodeKind: 'splice',
  at,
  ...more,
});

/** A run between two nodes; its path goes from the first by `via` to the second. */
export const run = (id: string, from: ServiceNode, to: ServiceNode, via: readonly Vec3[] = [], more: Partial<Run> = {}): Run => ({
  ...record(id),
  service: 's',
  medium: from.medium,
  from: from.id,
  to: to.id,
  via,
  path: from.at && to.at ? [from.at, ...via, to.at] : [],
  zones: [],
  grommets: [],
  ...more,
});

export const circuit = (id: string, more: Partial<Circuit> = {}): Circuit => ({
  ...record(id),
  service: 's',
  medium: 'dc',
  name: id,
  ...more,
});

export const zone = (id: string, box: readonly [Vec3, Vec3], more: Partial<Zone> = {}): Zone => ({
  ...record(id),
  name: id,
  box,
  concealed: true,
  closedBy: [],
  carries: [],
  ...more,
});

/** A level panel about a middle, sizes along x and y. */
export const levelPanel = (
  id: string,
  [x, y, z]: Vec3,
  [lengthMm, widthMm]: readonly [number, number],
  more: Partial<Panel> = {},
): Panel => ({
  ...record(id),
  panelKind: 'belly',
  outline: [
    [x - lengthMm / 2, y - widthMm / 2, z],
    [x + lengthMm / 2, y - widthMm / 2, z],
    [x + lengthMm / 2, y + widthMm / 2, z],
    [x - lengthMm / 2, y + widthMm / 2, z],
  ],
  holes: [],
  ...more,
});

/** An access panel in the belly, opened from below; its clear opening along x and y. */
export const accessPanel = (id: string, at: Vec3, openingMm: readonly [number, number], more: Partial<Panel> = {}): Panel =>
  levelPanel(id, at, [openingMm[0] + 50, openingMm[1] + 50], { panelKind: 'access', facing: 'down', openingMm, ...more });

export const lineMember = (id: string, section: string, from: Vec3, to: Vec3, rollDeg = 0): Member => ({
  ...record(id),
  part: id,
  alloy: '6061-T6',
  shape: { kind: 'line', section, from, to, rollDeg },
});

export const component = (id: string, at: Vec3, sizeMm?: Vec3): Component => ({
  ...record(id),
  name: id,
  massKg: 1,
  at,
  basis: 'estimated',
  ...(sizeMm ? { sizeMm } : {}),
});
