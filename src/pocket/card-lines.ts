import type { PanelReach } from '../compute/access/types.js';
import { MEDIUM_STYLES } from '../drawing/media.js';
import { factHead } from '../query/lookup/fact-head.js';
import type { Match } from '../query/lookup/types.js';
import { reachAt } from '../query/reach-words.js';
import type { Fact } from '../query/topics/topic.js';
import type { Circuit, Medium, Opening, Panel, RecordKind, Run } from '../records/index.js';
import { type CardLine, type CardLink, linkTo, type Pocket } from './pocket.js';

/** What the lines of a card are made with. */
export interface Of {
  readonly p: Pocket;
  /** Whether a record has a card to link to. */
  readonly has: (id: string) => boolean;
  readonly matchOf: (id: string) => Match | undefined;
}

/** What a card says of a record: where it is, how to get there, what protects it, and what is recorded. */
export function linesOf(match: Match, record: object, of: Of): readonly CardLine[] {
  const { p, has } = of;
  const { say, told, show } = p;
  const at = match.position;
  // A circuit is where it begins.
  const place = p.placeOf(match.circuit?.root ?? match.id);
  const links = (ids: readonly string[]): readonly CardLink[] => ids.map((id) => linkTo(id, has));
  const { circuit } = record as Partial<Run>;
  const medium = (record as { readonly medium?: Medium }).medium;
  const colour = colourOf(record, p);
  return [
    ...(place ? [{ head: say('pocket.card.place'), text: place }] : []),
    ...(at && match.kind !== 'member' ? [{ head: say('pocket.card.position'), text: show.position(at) }] : []),
    ...(match.marking && match.marking !== match.id ? [{ head: say('pocket.card.marking'), text: match.marking }] : []),
    ...(colour ? [{ head: say('pocket.card.colour'), text: told(colour) }] : []),
    ...(medium ? [{ head: say('pocket.card.service'), text: told(MEDIUM_STYLES[medium].name) }] : []),
    ...wayLines(match, of),
    ...protectionLines(match, of),
    ...(match.kind === 'run' && circuit !== undefined ? [{ head: say('pocket.card.of-circuit'), links: links([circuit]) }] : []),
    ...(match.kind === 'opening' ? slideLines(record as Opening, of.p) : []),
    ...(match.kind === 'panel' ? panelLines(record as Panel, of) : []),
    ...match.facts
      .filter(({ head }) => !SAID_ELSEWHERE.has(head) && !(head === 'circuit' && match.kind === 'run'))
      .map((fact) => factLine(fact, of)),
  ];
}

/** Facts that a card shows in its own way, or that one screen says for all. */
const SAID_ELSEWHERE = new Set(['photos', 'before welding', 'colour', 'color', 'marking']);

/** What somebody wants to get at. */
const GOT_AT: readonly (RecordKind | undefined)[] = ['node', 'run', 'circuit', 'component', 'tank', 'member', 'zone'];

function wayLines({ open, panels, follow, kind }: Match, of: Of): readonly CardLine[] {
  const { say } = of.p;
  if (!GOT_AT.includes(kind)) return [];
  const head = say('pocket.card.way');
  if (open) return [{ head, text: say('pocket.card.open') }];
  const reached = panels.filter(({ reach }) => reach !== 'beyond').slice(0, 3);
  if (reached.length === 0) return kind === 'node' || kind === 'run' ? [{ head, text: say('pocket.card.unreached') }] : [];
  return [
    ...reached.map((one, i) => ({ ...(i === 0 ? { head } : {}), links: [linkTo(one.panel, of.has)], text: wayText(one, of.p) })),
    ...(follow.length > 1 ? [{ head: say('pocket.card.follow'), links: follow.map((id) => linkTo(id, of.has)) }] : []),
  ];
}

function wayText(one: PanelReach, { say, told, show }: Pocket): string {
  const { removeFirst = [], moveFirst = [], blockedBy = [], clear = true } = one.approach ?? {};
  const listed = (key: Parameters<typeof say>[0], ids: readonly string[]): string =>
    ids.length > 0 ? say(key, { ids: ids.join(', ') }) : '';
  return [
    told(reachAt(one, show)),
    listed('pocket.card.first', removeFirst),
    listed('pocket.card.move', moveFirst),
    clear ? '' : listed('pocket.card.before', blockedBy),
    listed('pocket.card.behind', one.blockedBy),
  ]
    .filter(Boolean)
    .join('. ');
}

function protectionLines({ protection }: Match, { p, has }: Of): readonly CardLine[] {
  if (!protection) return [];
  const { say, told } = p;
  const what = told(
    [protection.kind, protection.ratingA === undefined ? '' : `${protection.ratingA} A`].filter(Boolean).join(' '),
  );
  const place = protection.at === undefined ? undefined : p.placeOf(protection.at);
  return [
    {
      head: say('pocket.card.protection'),
      text: place ? say('pocket.card.at', { what, place }) : what,
      links: protection.at === undefined ? [] : [linkTo(protection.at, has)],
    },
  ];
}

function panelLines({ openingMm }: Panel, { p: { say, show } }: Of): readonly CardLine[] {
  return openingMm ? [{ head: say('pocket.card.opens'), text: openingMm.map((mm) => show.length(mm)).join(' × ') }] : [];
}

export function factLine({ head: name, value, in: unit }: Fact, { p, has }: Pick<Of, 'p' | 'has'>): CardLine {
  const named = p.told(name);
  const head = capital(named === name ? factHead({ head: name }) : named);
  if (typeof value === 'object') {
    if (value.every((one) => has(one))) return { head, links: value.map((id) => linkTo(id, has)) };
    return { head, text: value.map(p.told).join('; ') };
  }
  if (typeof value === 'string') return has(value) ? { head, links: [linkTo(value, has)] } : { head, text: p.told(value) };
  return { head, text: figure(value, unit, p) };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function figure(value: number, unit: Fact['in'], { show }: Pocket): string {
  switch (unit) {
    case 'mm':
      return show.length(value);
    case 'nm':
      return show.torque(value);
    case 'l':
      return show.volume(value / 1000);
    case 'fraction':
      return show.percent(value);
    case 'a':
      return `${Math.round(value * 10) / 10} A`;
    default:
      return String(value);
  }
}

/** Its own color, else its circuit's. */
export const colourOf = (record: object, { assessment }: Pocket): string | undefined => {
  const { colour, circuit } = record as Partial<Run & Circuit>;
  return colour ?? assessment.model.shell.circuits.find((one) => one.id === circuit)?.colour;
};

/** How a slide-out is moved by hand, step by step, and what is in its hydraulics. */
export const slideLines = ({ byHand = [], fluid }: Opening, { say }: Pocket): readonly CardLine[] => [
  ...byHand.map((step, i) => ({ ...(i === 0 ? { head: say('pocket.slide.hand') } : {}), text: `${i + 1}. ${step}` })),
  ...(fluid === undefined ? [] : [{ head: say('pocket.slide.fluid'), text: fluid }]),
];
