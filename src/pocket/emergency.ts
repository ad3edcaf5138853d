import { emergencyPlan, rescueBadge, rescueItems } from '../drawing/index.js';
import { RESCUE_GROUPS } from '../query/isolate/rescue.js';
import { placesOf } from '../query/place.js';
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
export function emergencyScreen({ assessment, told }: Pocket, has: (id: string) => boolean): EmergencyScreen {
  const { model } = assessment;
  const { items } = rescueItems(model.shell);
  const placeOf = placesOf(model);
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
            badge: rescueBadge(group, number),
            link: linkTo(id, has),
            name: told(name),
            ...(place ? { place: told(place) } : {}),
          };
        }),
    })).filter((one) => one.items.length > 0),
  };
}
