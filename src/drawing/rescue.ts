import type { Vec3 } from '../geometry/vector.js';
import { distance } from '../geometry/vector.js';
import type { Medium, ServiceNode } from '../model/services.js';
import type { Component, Shell } from '../model/shell.js';

/** What a rescuer shuts, switches or keeps away from, with its number on the emergency plan and in the list beneath it. */
export interface RescueItem {
  readonly number: number;
  readonly group: RescueGroup;
  readonly id: string;
  readonly name: string;
  readonly at: Vec3;
  /** Absent: a tank or a part, not a node of a service. */
  readonly node?: ServiceNode;
}

/** What is shut or switched first stands first. */
export const RESCUE_GROUPS = ['Gas', 'Fuel', 'Mains, generator and inverter', 'Batteries and direct current'] as const;
export type RescueGroup = (typeof RESCUE_GROUPS)[number];

interface Kind {
  readonly group: RescueGroup;
  readonly medium: Medium;
  /** In the order of the list. */
  readonly kinds: readonly ServiceNode['nodeKind'][];
  readonly named: RegExp;
}

/** A node counts by its kind, or by what it is called. */
const KINDS: readonly Kind[] = [
  { group: 'Gas', medium: 'gas', kinds: ['source', 'valve'], named: /shut-?off|emergency|master/iu },
  {
    group: 'Mains, generator and inverter',
    medium: 'ac',
    kinds: ['source', 'panel'],
    named: /shore|generator|inverter|disconnect|isolat|emergency|master/iu,
  },
  {
    group: 'Batteries and direct current',
    medium: 'dc',
    kinds: ['source', 'panel'],
    named: /batter.*(?:disconnect|isolat|switch)|disconnect|emergency|master/iu,
  },
];

const FUEL = /diesel|petrol|gasoline|\bfuel\b|kerosene/iu;
/** Urea solution for the exhaust: named after diesel, but it does not burn. */
const NOT_FUEL = /exhaust|\bdef\b|urea/iu;
const GAS = /propane|butane|\blpg?\b|\bgas\b|hydrogen/iu;
const PART_GROUPS: readonly (readonly [RescueGroup, RegExp])[] = [
  ['Mains, generator and inverter', /generator|inverter/iu],
  ['Batteries and direct current', /\bbatter(?:y|ies)\b/iu],
];
/** A part is not `battery` for being a cable, a box or a charger of one. */
const NOT_SOURCE = /switchgear|fuse|charger|cable|panel/iu;
/** Feeds as long as the sun shines; nobody shuts it first. */
const LAST = /solar/iu;
/** Nearer than this to an item of its group, a tank or a part is that item, mm. */
const SAME_MM = 1200;
/** In the page of a hurry there is room for so many of a group; the rest is in the chapters. */
export const MOST_OF_A_GROUP = 6;

export interface Rescue {
  readonly items: readonly RescueItem[];
  /** How many of a group found no room. */
  readonly more: ReadonlyMap<RescueGroup, number>;
}

/** Gas, fuel, mains and batteries of a shell, numbered in the order of the list. Pure: the plan and the list both ask it. */
export function rescueItems(shell: Pick<Shell, 'nodes' | 'tanks' | 'components'>): Rescue {
  const items: RescueItem[] = [];
  const more = new Map<RescueGroup, number>();
  for (const group of RESCUE_GROUPS) {
    const found: Omit<RescueItem, 'number' | 'group'>[] = KINDS.filter((kind) => kind.group === group).flatMap((kind) =>
      nodesOf(shell.nodes, kind).map((node) => ({ id: node.id, name: node.name ?? node.nodeKind, at: node.at, node })),
    );
    const others = [...tanksOf(shell, group), ...partsOf(shell, group)];
    for (const other of others) if (found.every((one) => distance(one.at, other.at) > SAME_MM)) found.push(other);
    for (const one of found.slice(0, MOST_OF_A_GROUP)) items.push({ number: items.length + 1, group, ...one });
    if (found.length > MOST_OF_A_GROUP) more.set(group, found.length - MOST_OF_A_GROUP);
  }
  return { items, more };
}

function nodesOf(nodes: readonly ServiceNode[], { medium, kinds, named }: Kind): readonly ServiceNode[] {
  const rank = (node: ServiceNode): number => {
    const kind = kinds.indexOf(node.nodeKind);
    // What is switched by hand comes right after the source.
    if (kind < 0) return 0.5;
    return LAST.test(node.name ?? '') ? kinds.length : kind;
  };
  return nodes
    .filter((node) => node.medium === medium && (kinds.includes(node.nodeKind) || named.test(node.name ?? '')))
    .filter((node) => kinds.includes(node.nodeKind) || ['device', 'junction', 'valve'].includes(node.nodeKind))
    .map((node, index) => ({ node, index }))
    .sort((a, b) => rank(a.node) - rank(b.node) || a.index - b.index)
    .map(({ node }) => node);
}

function tanksOf({ tanks }: Pick<Shell, 'tanks'>, group: RescueGroup) {
  const burns = (contents: string): boolean =>
    group === 'Gas' ? GAS.test(contents) : group === 'Fuel' && FUEL.test(contents) && !NOT_FUEL.test(contents);
  return tanks
    .filter(({ contents }) => burns(contents))
    .map(({ id, contents, at }) => ({ id, name: `${contents} tank`.replace(/tank tank$/u, 'tank'), at }));
}

const isOf =
  (words: RegExp) =>
  ({ name }: Pick<Component, 'name'>): boolean =>
    words.test(name) && !NOT_SOURCE.test(name);

function partsOf({ components }: Pick<Shell, 'components'>, group: RescueGroup) {
  return PART_GROUPS.filter(([of]) => of === group).flatMap(([, words]) =>
    components.filter(isOf(words)).map(({ id, name, at }) => ({ id, name, at })),
  );
}

/** Generators and batteries, to be drawn as large as they are. */
export const dangerousParts = ({ components }: Pick<Shell, 'components'>): readonly Component[] =>
  components.filter((one) => PART_GROUPS.some(([, words]) => isOf(words)(one)));
