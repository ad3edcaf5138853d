import { createHash } from 'node:crypto';
import { forEdition, historyFor } from '../book/editions.js';
import { hiddenFrom } from '../book/redact/hidden.js';
import { cleanMarkup } from '../book/redact/markup.js';
import { cleanText } from '../book/redact/text.js';
import { render, templateText } from '../book/templates.js';
import { MEDIUM_STYLES } from '../drawing/media.js';
import type { PocketData } from '../page/pocket-data.js';
import type { Medium } from '../records/index.js';
import { MEDIA } from '../records/index.js';
import { TAPPED, type WordKey } from '../words/index.js';
import { cardsOf } from './cards.js';
import { emergencyScreen } from './emergency.js';
import type { PocketInput } from './input.js';
import { cardIds, hasMemberCards } from './listed.js';
import { loadingData, nearData } from './near-data.js';
import { overlaySvg } from './overlay-svg.js';
import { ownerScreens } from './owner-screens.js';
import { photoLink } from './photo-links.js';
import { pagePictures, pictureId } from './pictures.js';
import { planDrawing, windowOf } from './plan-svg.js';
import { type Card, type Pocket, pocketOf, xml } from './pocket.js';
import { OWNER_QUESTIONS, POCKET_QUESTIONS } from './questions.js';
import { listScreens, topicScreens } from './screens.js';
import { specialScreens } from './special-screens.js';
import { coachViews } from './views.js';

/** What the page calls itself. */
const EDITION_NAME = { owner: 'pocket.owner', service: 'pocket.service' } as const;

/** After so many months a page asks for a newer one. Project default. */
const OLD_MONTHS = 12;

export interface PocketPage {
  readonly html: string;
  readonly cards: number;
  readonly pictures: number;
  /** Pictures that are not on it. */
  readonly picturesLeft: number;
}

/** One file for a phone: whole without scripts, without any request, and nothing in it that its edition may not show. */
export async function pocketPage(input: PocketInput): Promise<PocketPage> {
  const hidden = hiddenFrom(input.assessment.model, input.edition);
  const { model, figures } = input.assessment;
  // No finding stands on the page, and to judge them would take longer than all else.
  const assessment = forEdition({ model, figures, findings: [] }, input.edition);
  const { all: pictures, left } = await pagePictures(assessment.model.shell.photos, input.photoFile);
  const p = pocketOf({
    ...input,
    assessment,
    history: historyFor(input.history, input.assessment.model, input.edition),
    views: coachViews(assessment.model),
    pictures: new Map(pictures.map((one) => [one.photo.id, one])),
  });
  const ids = cardIds(p);
  const has = (id: string): boolean => ids.has(id);
  const cards = cardsOf(p);
  const data = pageData(p, cards);
  // Within a script element nothing may look like its end.
  const clean = (_key: string, value: unknown): unknown => (typeof value === 'string' ? cleanText(value, hidden) : value);
  const { near, loading, ...spoken } = data;
  // Places and figures by public ids: there is no text in them.
  const bare = JSON.stringify({ near, ...(loading ? { loading } : {}) });
  const json = `${JSON.stringify(spoken, clean).slice(0, -1)},${bare.slice(1)}`.replaceAll('<', '\\u003c');
  const style = `${templateText('pocket.css')}${mediaStyle()}`;
  const script = input.script.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
  const markup = render('pocket', { ...parts(p, cards, has, left), reader: p.reader });
  const { shell } = assessment.model;
  const title = p.say('pocket.title', { shell: shell.id, edition: p.say(EDITION_NAME[input.edition]) });
  const html = [
    `<!doctype html>\n<html lang="${p.reader.language}">\n<head>\n<meta charset="utf-8">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src '${hashOf(style)}'; script-src '${hashOf(FIRST_SCRIPT)}' '${hashOf(script)}'; base-uri 'none'; form-action 'none'">`,
    '<meta name="referrer" content="no-referrer">',
    '<meta name="format-detection" content="telephone=no">',
    `<title>${xml(cleanText(title, hidden))}</title>`,
    `<style>${style}</style>\n<script>${FIRST_SCRIPT}</script>\n</head>`,
    cleanMarkup(markup, hidden),
    symbols(p),
    `<script type="application/json" id="data">${json}</script>`,
    `<script>${script}</script>\n</body>\n</html>\n`,
  ].join('\n');
  return { html, cards: cards.length, pictures: pictures.length, picturesLeft: left };
}

/** Says that scripts run before anything is painted: the page then shows one screen at a time. */
const FIRST_SCRIPT = "document.documentElement.classList.add('js')";

const hashOf = (text: string): string => `sha256-${createHash('sha256').update(text).digest('base64')}`;

/** CardLine patterns and colours of the services, as in the book’s drawings; widths and patterns grow to the coach’s millimetres. */
const mediaStyle = (): string =>
  MEDIA.map((medium) => {
    const { colour, dash } = MEDIUM_STYLES[medium].pen;
    const pattern = dash ? `;stroke-dasharray:${dash.map((mm) => Math.round(mm * DRAWN_TIMES)).join(' ')}` : '';
    return `.ly-${medium}{stroke:${colour}}.ly-${medium} .ru{${pattern.slice(1)}}`;
  }).join('');
const DRAWN_TIMES = 30;

/** Pictures, each once: cards show them again by name. */
const symbols = ({ pictures }: Pocket): string =>
  `<svg class="store" aria-hidden="true" focusable="false">${[...pictures.values()]
    .map(
      ({ photo, widthPx, heightPx, jpeg }) =>
        `<symbol id="${pictureId(photo.id)}" viewBox="0 0 ${widthPx} ${heightPx}"><image width="${widthPx}" height="${heightPx}" href="data:image/jpeg;base64,${jpeg.toString('base64')}"/></symbol>`,
    )
    .join('')}</svg>`;

function pageData(p: Pocket, cards: readonly Card[]): PocketData {
  const { assessment, edition, fingerprint, history, reader } = p;
  const { shell, shop } = assessment.model;
  const date = history.revisionDate?.slice(0, 10);
  const loading = loadingData(assessment);
  return {
    shell: shell.id,
    edition,
    revision: history.revision ?? null,
    fingerprint,
    ...(date ? { date } : {}),
    oldAfterMonths: OLD_MONTHS,
    units: shop.units,
    words: {
      ...Object.fromEntries((Object.keys(TAPPED) as WordKey[]).map((key) => [key, unfilled(p, key)])),
      ...Object.fromEntries(NEAR_KINDS.map((kind) => [`kind.${kind}`, p.told(kind)])),
      language: reader.language,
    },
    search: cards.map(({ id, title, kind, names, more }) => [id, title, kind, names, more]),
    views: p.views.map(({ tap }) => tap),
    near: nearData(assessment),
    ...(loading ? { loading } : {}),
  };
}

const NEAR_KINDS = ['run', 'node', 'member', 'panel', 'component', 'tank', 'bay', 'rail', 'zone', 'weld'] as const;

/** A sentence with its blanks still in braces: the script fills them. */
const unfilled = (p: Pocket, key: WordKey): string => p.say(key);

function parts(p: Pocket, cards: readonly Card[], has: (id: string) => boolean, left: number) {
  const { assessment, edition, history, say, show } = p;
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
    trust: [
      { head: say('pocket.trust.shell'), text: [shell.id, shell.title].filter(Boolean).join(', ') },
      ...(shell.vin ? [{ head: say('pocket.trust.vin'), text: shell.vin }] : []),
      { head: say('pocket.trust.edition'), text: say(EDITION_NAME[edition]) },
      {
        head: say('pocket.trust.revision'),
        text: [history.revision?.slice(0, 10) ?? say('pocket.trust.none'), history.tag, p.dirty ? say('pocket.trust.dirty') : '']
          .filter(Boolean)
          .join(', '),
      },
      ...(history.revisionDate ? [{ head: say('pocket.trust.date'), text: show.date(history.revisionDate) }] : []),
      { head: say('pocket.trust.fingerprint'), text: p.fingerprint.slice(0, 12) },
    ],
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
    unit: p.told(show.system === 'metric' ? 'millimeters' : 'inches'),
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
