import type { Edition } from '../../book/input.js';
import { isClear } from '../../compute/access/sight.js';
import { surfaceWords } from '../../compute/access/surfaces.js';
import type { Approach, PanelReach } from '../../compute/access/types.js';
import type { CircuitFigure } from '../../compute/services/types.js';
import { amps, ampsDown, length, number, percent, positionWords, type UnitSystem } from '../../quantity/format.js';
import type { Answer } from '../../query/lookup/ask.js';
import { factHead } from '../../query/lookup/fact-head.js';
import type { Match, ProtectionFound } from '../../query/lookup/types.js';
import { reachWords } from '../../query/reach-words.js';
import type { RecordKind } from '../../records/index.js';
import { factText } from './facts.js';
import type { TerminalPaint } from './paint.js';
import { topicText } from './topic-text.js';
import { counted, paragraph } from './wrap.js';

/** More than these a person does not read: the query wants to be longer. */
const SHOWN = 8;
const PANELS = 4;
/** Suggested for a query that finds nothing. */
const CLOSEST = 5;

/** What the answer is written with. */
export interface AnswerStyle {
  readonly units: UnitSystem;
  /** Names of the services, by id. */
  readonly services: ReadonlyMap<string, string>;
  /** Which book the page numbers are of, where it is not the service edition. */
  readonly edition?: Edition;
}

export function whereText(
  { units, services, edition = 'service' }: AnswerStyle,
  { topics, matches, alsoNamed }: Answer,
  pagesOf: (id: string) => readonly number[],
  paint: TerminalPaint,
): string {
  if (topics.length > 0) {
    const byId = new Map(matches.map((match) => [match.id, match] as const));
    const told = topics.map((topic) => topicText(topic, byId, pagesOf, units, paint));
    if (alsoNamed > 0)
      told.push(
        paint.faint(`${counted(alsoNamed, 'more record')} ${alsoNamed === 1 ? 'has' : 'have'} that name: type more of it`),
      );
    return told.join('\n\n');
  }
  if (matches[0]?.quality === 'close') return ['No match. Closest:', ...matches.slice(0, CLOSEST).map(closestLine)].join('\n');
  const parts = matches
    .slice(0, SHOWN)
    .map((match) => matchText(match, services, { edition, pages: pagesOf(match.id) }, units, paint));
  if (matches.length > SHOWN) parts.push(paint.faint(`and ${matches.length - SHOWN} more: ask for more of the name`));
  return parts.join('\n\n');
}

const closestLine = ({ id, kind, name }: Match): string => `  ${id}  ${kind}${name ? ` ${name}` : ''}`;

function matchText(
  match: Match,
  services: ReadonlyMap<string, string>,
  { edition, pages }: { readonly edition: Edition; readonly pages: readonly number[] },
  units: UnitSystem,
  paint: TerminalPaint,
): string {
  const service = match.service === undefined ? '' : `, ${services.get(match.service) ?? match.service}`;
  const lines = [paragraph(`${paint.strong(match.id)}  ${match.kind}${match.name ? ` ${match.name}` : ''}${service}`)];
  const line = (head: string, text: string): void => void lines.push(paragraph(text, `  ${head.padEnd(9)} `));
  if (match.place) line('place', match.place);
  else if (match.surface) line('on', surfaceWords(match.surface));
  if (match.position) line('at', positionWords(match.position, units));
  else if (PLACED.has(match.kind)) line('at', match.kind === 'run' ? 'way not recorded' : 'place not recorded');
  if (match.lengthMm !== undefined) line('length', length(match.lengthMm, units));
  else if (match.kind === 'run' || match.kind === 'circuit') line('length', 'not recorded');
  if (JUDGED.has(match.kind) || match.panels.length > 0) line('reach', reachText(match, units));
  if (match.follow.length > 1) line('follow', `open ${match.follow.join(', ')} to follow the whole way`);
  if (match.protection) line('protected', protectionText(match.protection, units));
  if (match.circuit) line('circuit', circuitText(match.circuit));
  for (const fact of match.facts) line(factHead(fact), factText(fact, units));
  if (pages.length > 0) line('book', `${edition} edition, page ${pages.join(', ')}`);
  return lines.join('\n');
}

/** Kinds that cannot be found without a place. */
const PLACED: ReadonlySet<RecordKind> = new Set(['node', 'run']);

/** Kinds whose reach is worked out; of the others, as a lifting point or a seat, nobody has looked whether a panel opens onto them. */
const JUDGED: ReadonlySet<RecordKind> = new Set(['node', 'run', 'circuit', 'member', 'weld', 'component', 'tank', 'zone']);

function reachText(match: Match, units: UnitSystem): string {
  if (match.open) return 'exposed, no panel needed';
  if (!match.position && PLACED.has(match.kind)) return 'not known without a place';
  if (match.panels.length === 0) return 'no access panel reaches it';
  // With a panel that opens clear onto it, nobody goes round by a blocked one.
  const clear = match.panels.filter(isClear);
  const best = clear.length > 0 ? clear : match.panels;
  const more = best.length > PANELS ? `; and ${best.length - PANELS} more` : '';
  return `${best
    .slice(0, PANELS)
    .map((one) => panelText(one, units))
    .join('; ')}${more}`;
}

function panelText(
  { panel, distanceMm, reach, blockedBy, toleranceMm, tool, twoHands, approach }: PanelReach,
  units: UnitSystem,
): string {
  const how = reachWords(reach);
  const behind = blockedBy.length > 0 ? `, blocked by ${blockedBy.join(', ')}` : '';
  const blocked = `${approachText(approach)}${behind}`;
  const known = toleranceMm === undefined ? '' : ` ±${length(toleranceMm, units)}`;
  const work = twoHands ? ', room for both hands' : tool ? ', room for a tool' : '';
  return `${panel} ${how}, ${length(distanceMm, units)}${known}${work}${blocked}`;
}

/** `, FUEL stands before it`; `, take BP-01 off first`. */
function approachText(approach: Approach | undefined): string {
  if (!approach) return '';
  const { blockedBy, removeFirst, moveFirst } = approach;
  return [
    blockedBy.length > 0 ? `, ${blockedBy.join(', ')} stands before it` : '',
    removeFirst.length > 0 ? `, take ${removeFirst.join(', ')} off first` : '',
    moveFirst.length > 0 ? `, run slide-out ${moveFirst.join(', ')} first` : '',
  ].join('');
}

function protectionText(found: ProtectionFound, units: UnitSystem): string {
  const rating = found.ratingA === undefined ? '' : ` ${amps(found.ratingA)}`;
  const at = found.at === undefined ? ', place not recorded' : ` at ${found.at}`;
  const reach = found.open ? ', exposed' : found.panels[0] ? `, through ${panelText(found.panels[0], units)}` : '';
  return `${found.kind}${rating}${at}${reach}`;
}

function circuitText(circuit: CircuitFigure): string {
  const parts = [
    circuit.dropV === undefined
      ? circuit.lengthMm === undefined
        ? 'drop not known, as the length of a run is not recorded'
        : ''
      : `drop ${number(circuit.dropV, 2)} V${circuit.drop === undefined ? '' : ` (${percent(circuit.drop)})`}`,
    circuit.worstLoad === undefined ? '' : `worst at ${circuit.worstLoad}`,
    circuit.ampacityA === undefined ? '' : `conductor good for ${ampsDown(circuit.ampacityA)}`,
  ].filter((part) => part !== '');
  return parts.length > 0 ? parts.join(', ') : 'not enough recorded for voltage drop and ampacity';
}
