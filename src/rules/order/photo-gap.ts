import { PHOTOS_OF_A_JOINT, type PhotoCoverage, type PhotoGap } from '../../compute/access/photos.js';
import { length } from '../../quantity/format.js';
import type { Zone } from '../../records/index.js';
import { CONCEALED_RUN } from '../example-records.js';
import type { Case, Rule, RuleFinding } from '../rule.js';

export const photoGap: Rule = {
  name: 'order.photo-gap',
  severity: 'note',
  asks: 'missing',
  duty: 'trade',
  finds:
    'Lengths of run in a concealed cavity that no picture of before close-in shows, and joints in fewer than two. A note for each cavity still open, one for all that are closed.',
  why: 'A repair years later relies on the picture, and nobody can take it once the panel is on.',
  source: 'two pictures of each joint: common practice, no source',
  examples: {
    given: `
${CONCEALED_RUN}
# pictures
shells/X-1/photos/a.jpg: {sha256: ab}
# photos/photos.yaml
`,
    fails: `
- {id: P-1, file: a.jpg, of: [TC], taken: 2026-04-17, shows: [[0 m, -0.5 m, 0 m], [1 m, 0.5 m, 0.3 m]]}
`,
    passes: `
- {id: P-1, file: a.jpg, of: [TC], taken: 2026-04-17, shows: [[-1 m, -0.5 m, 0 m], [5 m, 0.5 m, 0.3 m]]}
`,
  },
  check(given) {
    const { shell } = given.model;
    const short = shell.zones.filter((zone) => zone.concealed).filter((zone) => isShort(missingIn(zone, given.figures.photos)));
    const closed = short.filter((zone) => missingIn(zone, given.figures.photos).closed);
    const open = short.filter((zone) => !closed.includes(zone));
    return [...open.map((zone) => openNote(zone, given)), ...(closed.length > 0 ? [closedNote(closed, given)] : [])];
  },
};

interface Missing {
  readonly gaps: readonly PhotoGap[];
  readonly joints: readonly string[];
  readonly closed: boolean;
}

const isShort = ({ gaps, joints }: Missing): boolean => gaps.length > 0 || joints.length > 0;

function missingIn({ id }: Zone, photos: PhotoCoverage): Missing {
  const gaps = photos.gaps.filter(({ zones }) => zones.includes(id));
  const joints = photos.joints.filter((joint) => joint.zones.includes(id) && joint.photos.length < PHOTOS_OF_A_JOINT);
  return { gaps, joints: joints.map((joint) => joint.id), closed: photos.closed.includes(id) };
}

function openNote(zone: Zone, given: Case): RuleFinding {
  const before = zone.closedBy.length > 0 ? zone.closedBy.join(', ') : 'it';
  return {
    message: `In ${zone.id}, ${said(missingIn(zone, given.figures.photos), given)}, expected before ${before} is closed: take them, and write \`shows\` or \`camera\` beside each`,
    ids: [zone.id],
    place: zone.source.place(),
  };
}

function closedNote(zones: readonly Zone[], given: Case): RuleFinding {
  const each = zones.map((zone) => missingIn(zone, given.figures.photos));
  const gaps = [...new Set(each.flatMap((one) => one.gaps))];
  const joints = [...new Set(each.flatMap((one) => one.joints))];
  return {
    message: `Closed in, ${said({ gaps, joints, closed: true }, given)} (${few(zones.map(({ id }) => id))}): picture them when a panel is next off`,
    ids: zones.map(({ id }) => id),
    place: (zones[0] as Zone).source.place(),
  };
}

function said({ gaps, joints }: Missing, { model: { shop } }: Case): string {
  const mm = gaps.reduce((total, gap) => total + gap.toMm - gap.fromMm, 0);
  const runs = [...new Set(gaps.map((gap) => gap.run))];
  return [
    gaps.length > 0 && `${length(mm, shop.units)} of run is in no picture (${few(runs)})`,
    joints.length > 0 && `${few(joints)} in fewer than two`,
  ]
    .filter(Boolean)
    .join(' and ');
}

const MOST = 4;
const few = (ids: readonly string[]): string =>
  ids.length > MOST ? `${ids.slice(0, MOST).join(', ')} and ${ids.length - MOST} more` : ids.join(', ');
