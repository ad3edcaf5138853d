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

/** In the page of a hurry there is room for so many of a group; the rest is in the chapters. */
const MOST_OF_A_GROUP = 6;

export interface Rescue {
  readonly items: readonly RescueItem[];
  /** How many of a group found no room. */
  readonly more: ReadonlyMap<RescueGroup, number>;
}

/** Gas, fuel, AC and batteries of a shell, numbered in the order of the list. Pure: the plan and the list both ask it. */
export function rescueItems(shell: Pick<Shell, 'nodes' | 'runs' | 'circuits' | 'tanks' | 'components'>): Rescue {
  const items: RescueItem[] = [];
  const more = new Map<RescueGroup, number>();
  const things = rescueSources(shell);
  const tanks = new Map(shell.tanks.map((tank) => [tank.id, tank] as const));
  for (const group of RESCUE_GROUPS) {
    const found = things.filter((one) => one.group === group);
    for (const { id, node } of found.slice(0, MOST_OF_A_GROUP)) {
      const at = node?.at ?? tanks.get(id)?.at;
      const named = node ? (node.name ?? node.nodeKind) : `${tanks.get(id)?.contents} tank`.replace(/tank tank$/u, 'tank');
      const name = node?.planned ? `${named} ${PLANNED_WORDS}` : named;
      items.push({ number: items.length + 1, group, id, name, ...(at ? { at } : {}), ...(node ? { node } : {}) });
    }
    if (found.length > MOST_OF_A_GROUP) more.set(group, found.length - MOST_OF_A_GROUP);
  }
  return { items, more };
}

/** Generators, batteries and inverters, to be drawn as large as they are. */
export function dangerousParts({ components, nodes }: Pick<Shell, 'components' | 'nodes'>): readonly Component[] {
  const power = powerEquipment({ nodes });
  return components.filter((one) => power.has(one.id));
}
