import type { Surface } from '../../compute/access/surfaces.js';
import type { Approach, PanelReach } from '../../compute/access/types.js';
import type { CircuitFigure } from '../../compute/services/types.js';
import type { Answer } from '../../query/lookup/ask.js';
import type { Match, ProtectionFound } from '../../query/lookup/types.js';
import { factsJson } from './facts.js';
import { envelope, type Json, place3 } from './json.js';

export function whereJson(
  shell: string,
  revision: string | null,
  { topics, matches }: Answer,
  pagesOf: (id: string) => readonly number[],
): string {
  return envelope('where', shell, revision, {
    matches: matches.map((one) => matchJson(one, pagesOf(one.id))),
    topics: topics.map(({ topic, question, rows, notes }) => ({
      topic,
      question,
      rows: rows.map((row) => ({ id: row.id, what: row.what, facts: factsJson(row.facts) })),
      notes,
    })),
  });
}

function matchJson(match: Match, pages: readonly number[]): Json {
  return {
    id: match.id,
    kind: match.kind,
    match: match.quality,
    name: match.name,
    marking: match.marking,
    service: match.service,
    position_mm: place3(match.position),
    place: match.place ?? null,
    ...(match.surface ? { surface: surfaceJson(match.surface) } : {}),
    panels: match.panels.map(reachJson),
    open: match.open,
    follow: match.follow,
    protection: match.protection && protectionJson(match.protection),
    path_mm: match.path.map(place3),
    length_mm: match.lengthMm,
    pages,
    facts: factsJson(match.facts),
    ...(match.circuit ? { circuit: circuitJson(match.circuit) } : {}),
  };
}

export const surfaceJson = ({ side, seenFrom }: Surface): Json => ({ side, seen_from: seenFrom });

/** What stands before a panel; `from` is where the person is. */
const approachJson = ({ clear, blockedBy, removeFirst, moveFirst, from }: Approach): Json => ({
  clear,
  blocked_by: blockedBy,
  remove_first: removeFirst,
  move_first: moveFirst,
  from,
});

/** How far in something lies, and what stands before it. */
export const reachedJson = (one: Omit<PanelReach, 'panel'>) => ({
  distance_mm: one.distanceMm,
  reach: one.reach,
  blocked_by: one.blockedBy,
  tolerance_mm: one.toleranceMm,
  with_tool: one.tool ?? false,
  both_hands: one.twoHands ?? false,
  ...(one.approach ? { approach: approachJson(one.approach) } : {}),
});

const reachJson = (one: PanelReach): Json => ({ id: one.panel, ...reachedJson(one) });

const protectionJson = (one: ProtectionFound): Json => ({
  circuit: one.circuit,
  kind: one.kind,
  rating_a: one.ratingA,
  at: one.at,
  open: one.open,
  panels: one.panels.map(reachJson),
});

const circuitJson = (one: CircuitFigure): Json => ({
  length_mm: one.lengthMm,
  drop_v: one.dropV,
  drop_percent: one.drop === undefined ? undefined : one.drop * 100,
  ampacity_a: one.ampacityA,
  protection_a: one.protectionA,
  worst_load: one.worstLoad,
});
