import { MEDIUM_STYLES } from '../drawing/media.js';
import { MEDIA, type Medium } from '../records/index.js';
import { emergencyScreen } from './emergency.js';
import { hasMemberCards } from './listed.js';
import { overlaySvg } from './overlay-svg.js';
import { ownerScreens } from './owner-screens.js';
import { OLD_MONTHS } from './page-data.js';
import { photoLink } from './photo-links.js';
import { planDrawing, windowOf } from './plan-svg.js';
import type { Card, CardLine, Pocket } from './pocket.js';
import { OWNER_QUESTIONS, POCKET_QUESTIONS } from './questions.js';
import { listScreens, topicScreens } from './screens.js';
import { specialScreens } from './special-screens.js';

/** What the page calls itself. */
export const EDITION_NAME = { owner: 'pocket.owner', service: 'pocket.service' } as const;

/** What the page's template shows. `left`: pictures that are not on the page. */
export function pageParts(p: Pocket, cards: readonly Card[], has: (id: string) => boolean, left: number) {
  const { assessment, edition, say } = p;
  const { shell } = assessment.model;
  const lists = listScreens(p, cards);
  const screens = [...topicScreens(p, has), ...specialScreens(p, has)];
  const there = new Set([...FIXED, ...lists.map(({ id }) => id), ...screens.map(({ id }) => id)]);
  const asked = edition === 'owner' ? OWNER_QUESTIONS : POCKET_QUESTIONS.map(([ask]) => ask);
  const media = new Set<Medium>();
  const views = p.views.map((view) => {
    const drawing = planDrawing(assessment.model, view, has);
    for (const medium of drawing.media) media.add(medium);
    return { key: view.key, id: `v-${view.key}`, title: say(`pocket.view.${view.key}`), window: windowOf(view), ...drawing };
  });
  return {
    shell: shell.id,
    title: shell.title,
    edition: say(EDITION_NAME[edition]),
    isOwner: edition === 'owner',
    trust: trustLines(p),
    oldMonths: OLD_MONTHS,
    questions: POCKET_QUESTIONS.filter(([ask]) => asked.includes(ask)).flatMap(([ask, to]) => {
      const found = to.find((one) => there.has(one));
      return found === undefined ? [] : [{ ask: say(ask), to: found }];
    }),
    lists,
    screens: [...screens, ...lists],
    emergency: emergencyScreen(p, has),
    isEnglish: p.reader.language === 'en',
    views,
    unit: say(assessment.model.shop.units === 'metric' ? 'tap.mm' : 'tap.inches'),
    layers: MEDIA.filter((medium) => media.has(medium)).map((medium) => ({
      medium,
      letter: MEDIUM_STYLES[medium].letter,
      name: p.told(MEDIUM_STYLES[medium].name),
    })),
    own: ownerScreens(p, has),
    canLoad: assessment.figures.weights.loadLines.length > 0,
    cards,
    photos: [...p.pictures.values()].map((picture) => ({
      ...photoLink(picture, p),
      overlay: overlaySvg(p, picture.photo.id),
    })),
    membersLeft:
      edition === 'service' && !hasMemberCards(p) ? say('pocket.members.left', { count: shell.members.length }) : undefined,
    photosLeft: left > 0 ? say('pocket.photos.left', { count: left }) : undefined,
  };
}

const FIXED = ['emergency', 'coach', 'winter', 'care', 'tyres', 'loading', 'contacts', 'trust', 'notes'];

/** What the page is of, and how to tell that it is the right one. */
function trustLines({ assessment, edition, fingerprint, history, dirty, say, show }: Pocket): readonly CardLine[] {
  const { shell } = assessment.model;
  return [
    { head: say('pocket.trust.shell'), text: [shell.id, shell.title].filter(Boolean).join(', ') },
    ...(shell.vin ? [{ head: say('pocket.trust.vin'), text: shell.vin }] : []),
    { head: say('pocket.trust.edition'), text: say(EDITION_NAME[edition]) },
    {
      head: say('pocket.trust.revision'),
      text: [history.revision?.slice(0, 10) ?? say('pocket.trust.none'), history.tag, dirty ? say('pocket.trust.dirty') : '']
        .filter(Boolean)
        .join(', '),
    },
    ...(history.revisionDate ? [{ head: say('pocket.trust.date'), text: show.date(history.revisionDate) }] : []),
    { head: say('pocket.trust.fingerprint'), text: fingerprint.slice(0, 12) },
  ];
}
