import { planarPolygon } from '../geometry/polygon.js';
import type { Vec3 } from '../geometry/vector.js';
import { anchor } from '../model/anchor.js';
import { hazardAct, hazardsBehind, hazardWord } from '../query/hazards.js';
import { isolate, lookupOf } from '../query/lookup/index.js';
import type { Match } from '../query/lookup/types.js';
import { reachAt } from '../query/reach-words.js';
import type { Panel, RecordKind, ServiceNode } from '../records/index.js';
import { colourOf, linesOf, type Of } from './card-lines.js';
import { isolationCard } from './isolation-card.js';
import { cardIds } from './listed.js';
import { photoLinks } from './photo-links.js';
import { spotIn, symbolId, windowOf } from './plan-svg.js';
import { type Behind, type Card, type CardLine, type Locator, linkTo, type Pocket } from './pocket.js';
import { type CoachView, viewKeyOf } from './views.js';

type PhotosOf = (id: string) => readonly string[];

/** A card for each thing that the edition has one for, in the order of the lists. */
export function cardsOf(p: Pocket): readonly Card[] {
  const { shell } = p.assessment.model;
  const ids = cardIds(p);
  const lookup = lookupOf(p.assessment);
  const of: Of = { p, has: (id) => ids.has(id), matchOf: (id) => lookup.match(id) };
  const pictured = photosOf(p);
  return [...ids].flatMap((id): readonly Card[] => {
    const entry = shell.byId.get(id);
    const match = of.matchOf(id);
    return entry && match ? [card(match, entry.record as object, of, pictured)] : [];
  });
}

function photosOf({ assessment: { model }, pictures }: Pocket): PhotosOf {
  const of = new Map<string, string[]>();
  const put = (id: string, photo: string): void => {
    const list = of.get(id);
    if (!list) of.set(id, [photo]);
    else if (!list.includes(photo)) list.push(photo);
  };
  for (const photo of model.shell.photos) if (pictures.has(photo.id)) for (const id of photo.of) put(id, photo.id);
  for (const [id, { record }] of model.shell.byId)
    for (const photo of (record as { readonly photos?: readonly string[] }).photos ?? []) if (pictures.has(photo)) put(id, photo);
  return (id) => of.get(id) ?? [];
}

function card(match: Match, record: object, of: Of, pictured: PhotosOf): Card {
  const { p } = of;
  const { id, kind } = match;
  const isPlanned = (record as { readonly planned?: boolean }).planned === true;
  const said = [kindWords(kind, record, p), isPlanned ? p.say('pocket.card.planned') : ''].filter(Boolean).join(', ');
  const lines = linesOf(match, record, of);
  const panels = match.panels.filter(({ reach }) => reach !== 'beyond').slice(0, 2);
  const hazards = kind === 'panel' ? hazardsAt(id, p) : [];
  const behind = kind === 'panel' && (record as Panel).panelKind === 'access' ? behindOf(id, of) : undefined;
  const photos = photoLinks(p, picturesFor([id, ...panels.map(({ panel }) => panel)], pictured));
  const isolation =
    p.edition === 'service' && ISOLATED.includes(kind) ? isolationCard(p, isolate(p.assessment, id), of.has) : undefined;
  const locator = locatorOf(match, record, p);
  const colour = colourOf(record, p);
  return {
    id,
    recordKind: kind,
    to: anchor(id),
    title: match.name ?? '',
    kind: said,
    lines,
    ...(hazards.length > 0 ? { hazards } : {}),
    ...(behind ? { behind } : {}),
    ...(photos.length > 0 ? { photos } : {}),
    ...(isolation ? { isolation } : {}),
    ...(locator ? { locator } : {}),
    names: [match.marking === id ? undefined : match.marking, colour].filter(Boolean).join(' '),
    more: englishWords(kind, record).join(' '),
  };
}

/** Its own pictures; of what has none those of the panel on the way to it. */
const MOST_PICTURES = 3;
function picturesFor(ids: readonly string[], pictured: PhotosOf): readonly string[] {
  const shown = ids.map(pictured).find((photos) => photos.length > 0) ?? [];
  return shown.slice(0, MOST_PICTURES);
}

/** What a rescue or an isolation is asked of; a wire's stands with its circuit. */
const ISOLATED: readonly RecordKind[] = ['node', 'circuit', 'component', 'tank'];

/** What it is, in English words by which it may be looked for. */
function englishWords(kind: RecordKind, record: object): readonly string[] {
  const { nodeKind, role, medium, panelKind } = record as Partial<ServiceNode & Panel>;
  return [kind, nodeKind, role, medium, panelKind === 'access' ? 'access panel' : panelKind].filter((one) => one !== undefined);
}

function kindWords(kind: RecordKind, record: object, { told }: Pocket): string {
  const { nodeKind, role, panelKind } = record as Partial<ServiceNode & Panel>;
  if (kind === 'node') return told(role ?? nodeKind ?? 'node');
  if (kind === 'panel') return told(panelKind === 'access' ? 'access panel' : (panelKind ?? 'panel'));
  return told(kind);
}

function hazardsAt(panel: string, { assessment, reader }: Pocket): readonly { readonly word: string; readonly act: string }[] {
  return hazardsBehind(assessment.model.shell, assessment.figures.access.behind[panel] ?? []).map((one) => ({
    word: hazardWord(one, reader),
    act: hazardAct(one, reader),
  }));
}

const NEAREST = 10;

function behindOf(panel: string, { p, has, matchOf }: Of): Behind {
  const { say, show, told } = p;
  const all = (p.assessment.figures.access.behind[panel] ?? []).filter(({ kind }) => kind !== 'member' && kind !== 'zone');
  const lines = all.map(
    (one): CardLine => ({
      links: [linkTo(one.id, has)],
      text: [matchOf(one.id)?.name ?? told(one.kind), show.length(one.distanceMm), told(reachAt(one, show))].join(', '),
    }),
  );
  return {
    nearest: lines.slice(0, NEAREST),
    rest: lines.slice(NEAREST),
    restTitle: say('pocket.card.more', { count: Math.max(0, lines.length - NEAREST) }),
    ...(lines.length === 0 ? { nothing: say('pocket.card.nothing') } : {}),
  };
}

/** On the surface of the panel that it is reached through, else in the plan. */
function locatorOf(match: Match, record: object, p: Pocket): Locator | undefined {
  const at: Vec3 | undefined =
    match.kind === 'panel' ? planarPolygon((record as Panel).outline).centroid : (match.position ?? match.path[0]);
  if (!at) return undefined;
  const { shell } = p.assessment.model;
  const through = match.panels.find(({ reach }) => reach !== 'beyond')?.panel;
  const panel = match.kind === 'panel' ? (record as Panel) : shell.panels.find(({ id }) => id === through);
  const wanted = panel && !match.open ? viewKeyOf(panel, p.assessment.model) : 'plan';
  const view: CoachView | undefined = p.views.find(({ key }) => key === wanted) ?? p.views[0];
  if (!view) return undefined;
  const [x, y] = spotIn(view, at);
  const name = p.say(`pocket.view.${view.key}`);
  return {
    symbol: symbolId(view),
    window: windowOf(view),
    x,
    y,
    label: name,
    to: `v-${view.key}`,
  };
}
