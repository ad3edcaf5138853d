import { anchor } from '../model/anchor.js';
import { answerTopic, TOPICS } from '../query/topics/index.js';
import type { TopicRow } from '../query/topics/topic.js';
import type { WordKey } from '../words/index.js';
import { factLine } from './card-lines.js';
import { type Card, type CardLine, type CardLink, linkTo, type Pocket } from './pocket.js';

/** One screen of the page that is no card: a list, or the answer to a question about the whole coach. */
export interface Screen {
  readonly id: string;
  readonly title: string;
  readonly lead?: string;
  readonly caution?: string;
  readonly groups: readonly ScreenGroup[];
  readonly notes: readonly string[];
  readonly empty?: string;
}

export interface ScreenGroup {
  readonly title?: string;
  readonly rows: readonly Row[];
}

export interface Row {
  readonly links: readonly CardLink[];
  readonly text?: string;
  readonly lines?: readonly CardLine[];
}

/** The topics that are answered on the page, each with the anchor of its screen and the question of its head. */
const TOPIC_SCREENS: readonly (readonly [topic: string, id: string, title: WordKey])[] = [
  ['fuses', 't-fuses', 'ask.fuses'],
  ['live', 't-live', 'ask.live'],
  ['valves', 't-valves', 'ask.valve'],
  ['leak', 't-leak', 'ask.leak'],
  ['spare conduits', 't-spare', 'ask.spare'],
  ['unused wires', 't-unused', 'ask.unused'],
  ['earths', 't-earths', 'ask.earths'],
  ['torque', 't-torque', 'ask.torque'],
  ['tests', 't-tests', 'ask.tests'],
  ['lifting', 't-lift', 'ask.lift'],
  ['hanging', 't-hang', 'ask.hang'],
  ['roof', 't-roof', 'ask.roof'],
  ['repairs', 't-repairs', 'ask.repaired'],
  ['changes', 't-changes', 'ask.changes'],
];

/** Answers about the whole coach, for the edition that asks them. */
export function topicScreens(p: Pocket, has: (id: string) => boolean): readonly Screen[] {
  const wanted = p.edition === 'owner' ? OWNERS : TOPIC_SCREENS.map(([name]) => name);
  return TOPIC_SCREENS.filter(([name]) => wanted.includes(name)).flatMap(([name, id, title]): readonly Screen[] => {
    const topic = TOPICS.find((one) => one.name === name);
    if (!topic) return [];
    const { rows, notes } = answerTopic(p.assessment, topic);
    return [
      {
        id,
        title: p.say(title),
        groups: [{ rows: rows.map((row) => rowOf(row, p, has)) }],
        notes: notes.filter(isForReaders).map(p.told),
        ...(rows.length === 0 ? { empty: p.say('pocket.empty') } : {}),
      },
    ];
  });
}

const OWNERS = ['fuses', 'valves', 'lifting', 'hanging', 'roof', 'changes'];

/** Sentences that name a command are for the terminal. */
const isForReaders = (sentence: string): boolean => !sentence.includes('shellbook ');

/** Where a sentence goes on to a command. */
const TO_TERMINAL = /[:,]? see `shellbook [^`]*`/u;

function rowOf({ id, what, facts }: TopicRow, p: Pocket, has: (id: string) => boolean): Row {
  return {
    links: id === undefined ? [] : [linkTo(id, has)],
    text: p.told(what.replace(TO_TERMINAL, '')),
    lines: facts.map((fact) => factLine(fact, { p, has })),
  };
}

const LISTS: readonly (readonly [id: string, title: WordKey, kinds: readonly Card['recordKind'][]])[] = [
  ['l-panels', 'pocket.list.panels', ['panel']],
  ['l-circuits', 'pocket.list.circuits', ['circuit']],
  ['l-nodes', 'pocket.list.nodes', ['node']],
  ['l-runs', 'pocket.list.runs', ['run']],
  ['l-equipment', 'pocket.list.equipment', ['component', 'tank']],
  ['l-zones', 'pocket.list.zones', ['zone', 'bay', 'opening']],
  ['l-members', 'pocket.list.members', ['member']],
];

/** Every card once, by kind: the way to it without search. */
export function listScreens(p: Pocket, cards: readonly Card[]): readonly Screen[] {
  const access = new Set(p.assessment.model.shell.panels.flatMap((one) => (one.panelKind === 'access' ? one.id : [])));
  return LISTS.flatMap(([id, title, kinds]): readonly Screen[] => {
    const listed = cards.filter(({ recordKind }) => kinds.includes(recordKind));
    if (listed.length === 0) return [];
    const key: WordKey = id === 'l-nodes' && p.edition === 'owner' ? 'pocket.list.shutoffs' : title;
    const groups =
      id === 'l-panels'
        ? [
            { rows: listed.filter((one) => access.has(one.id)).map(listRow) },
            { title: p.say('pocket.list.sheets'), rows: listed.filter((one) => !access.has(one.id)).map(listRow) },
          ]
        : [{ rows: listed.map(listRow) }];
    return [{ id, title: p.say(key), groups: groups.filter(({ rows }) => rows.length > 0), notes: [] }];
  });
}

const listRow = ({ id, title, kind }: Card): Row => ({ links: [{ text: id, to: anchor(id) }], text: title || kind });
