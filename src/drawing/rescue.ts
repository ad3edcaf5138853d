import type { Vec3 } from '../geometry/vector.js';
import { PLANNED_WORDS } from '../model/planned.js';
import { powerEquipment, RESCUE_GROUPS, type RescueGroup, rescueSources } from '../query/isolate/rescue.js';
import type { Component, ServiceNode, Shell } from '../records/index.js';

export { RESCUE_GROUPS, type RescueGroup } from '../query/isolate/rescue.js';

/** What a rescuer shuts, switches or keeps away from, with its number on the emergency plan and in the list beneath it. */
export interface RescueItem {
  readonly number: number;
  readonly group: RescueGroup;
  readonly id: string;
  readonly name: string;
  /** Absent where its place is not recorded: listed, and not on the plan. */
  readonly at?: Vec3;
  /** Absent: a tank, not a node of a service. */
  readonly node?: ServiceNode;
}

/** The page of a hurry has room to place and draw so many of a group; the others are named. */
const MOST_OF_A_GROUP = 6;

export interface Rescue {
  readonly items: readonly RescueItem[];
  /** Those of a group that found no room on the plan. */
  readonly more: ReadonlyMap<RescueGroup, readonly Named[]>;
}

/** `node` as in a {@link RescueItem}. */
type Named = Pick<RescueItem, 'id' | 'name' | 'node'>;

/** Gas, fuel, AC and batteries of a shell, numbered in the order of the list. Pure: the plan and the list both ask it. */
export function rescueItems(shell: Pick<Shell, 'nodes' | 'runs' | 'circuits' | 'tanks' | 'components'>): Rescue {
  const items: RescueItem[] = [];
  const more = new Map<RescueGroup, readonly Named[]>();
  const things = rescueSources(shell);
  const tanks = new Map(shell.tanks.map((tank) => [tank.id, tank] as const));
  for (const group of RESCUE_GROUPS) {
    const found = things
      .filter((one) => one.group === group)
      .map(({ id, node }): Named => {
        const named = node ? (node.name ?? node.nodeKind) : `${tanks.get(id)?.contents} tank`.replace(/tank tank$/u, 'tank');
        return { id, name: node?.planned ? `${named} ${PLANNED_WORDS}` : named, ...(node ? { node } : {}) };
      });
    for (const one of found.slice(0, MOST_OF_A_GROUP)) {
      const at = one.node?.at ?? tanks.get(one.id)?.at;
      items.push({ number: items.length + 1, group, ...one, ...(at ? { at } : {}) });
    }
    const left = found.slice(MOST_OF_A_GROUP);
    if (left.length > 0) more.set(group, left);
  }
  return { items, more };
}

/** Generators, batteries and inverters, to be drawn as large as they are. */
export function dangerousParts({ components, nodes }: Pick<Shell, 'components' | 'nodes'>): readonly Component[] {
  const power = powerEquipment({ nodes });
  return components.filter((one) => power.has(one.id));
}
