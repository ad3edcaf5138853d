import { emergencyPlan, rescueBadge, rescueItems } from '../drawing/index.js';
import { RESCUE_GROUPS } from '../query/isolate/rescue.js';
import { type CardLink, linkTo, type Pocket } from './pocket.js';

export interface EmergencyScreen {
  readonly svg: string;
  readonly groups: readonly {
    readonly title: string;
    readonly items: readonly {
      readonly badge: string;
      readonly link: CardLink;
      readonly name: string;
      readonly place?: string;
    }[];
  }[];
  readonly none: boolean;
}

/** Width of the plan, mm: its lettering is then as large as the page's on a phone held across. */
const WIDTH_MM = 190;
const HEIGHT_MM = 150;

/** What is shut, switched off or kept away from, by number on a plan. */
export function emergencyScreen({ assessment, told, placeOf }: Pocket, has: (id: string) => boolean): EmergencyScreen {
  const { model } = assessment;
  const { items } = rescueItems(model.shell);
  const tanks = new Set(model.shell.tanks.map(({ id }) => id));
  const plan =
    items.length > 0
      ? emergencyPlan(assessment, { widthMm: WIDTH_MM, heightMm: HEIGHT_MM }, { linkable: () => false })
      : undefined;
  return {
    svg: plan?.svg ?? '',
    none: items.length === 0,
    groups: RESCUE_GROUPS.map((group) => ({
      title: told(group),
      items: items
        .filter((item) => item.group === group)
        .map(({ number, id, name }) => {
          const place = placeOf(id);
          return {
            badge: rescueBadge(group, number, told(group)),
            link: linkTo(id, has),
            // A tank is called by what is in it; all else as the shop calls it.
            name: tanks.has(id) ? told(name) : name,
            ...(place ? { place } : {}),
          };
        }),
    })).filter((one) => one.items.length > 0),
  };
}
