import type { Assessment } from '../../../assess.js';
import { slipsBetween } from '../../../source/nearest.js';
import { hanging, lifting, roof } from './declared.js';
import { earths } from './earths.js';
import { frost } from './frost.js';
import { leaks } from './leaks.js';
import { emergency, live } from './live.js';
import { contacts, pointers, rightBook } from './papers.js';
import { protections } from './protections.js';
import { changes, repairs } from './repairs.js';
import { spareWays } from './spare-ways.js';
import { tested } from './tested.js';
import type { Topic, TopicAnswer } from './topic.js';
import { torques } from './torques.js';
import { unused } from './unused.js';
import { valves } from './valves.js';

/** Every question about the whole shell that `where` understands, by its words. */
export const TOPICS: readonly Topic[] = [
  protections,
  live,
  valves,
  frost,
  leaks,
  spareWays,
  unused,
  earths,
  torques,
  tested,
  lifting,
  hanging,
  roof,
  repairs,
  changes,
  emergency,
  contacts,
  rightBook,
  ...pointers,
];

/** Words that a question has around the one that matters. */
const FILLER = new Set(
  'a all an and any are be before can do does for from given have how i if in is it its list may me my of on or please show that the there this to was what when where which will with you'.split(
    ' ',
  ),
);

/** One slip in a word of five letters and more. */
const isWord = (typed: string, word: string): boolean =>
  typed === word || (typed.length >= 5 && word.length >= 5 && slipsBetween(typed, word) <= 1);

/** The topics that every word of a question belongs to; filling words do not count. */
export function topicsOf(query: string): readonly Topic[] {
  const typed = query
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s/-]/gu, ' ')
    .replace(/(\w)-(?=\w)/gu, '$1')
    .split(/\s+/u)
    .filter((word) => word !== '' && !FILLER.has(word));
  if (typed.length === 0) return [];
  return TOPICS.filter((topic) => typed.every((one) => topic.words.some((word) => isWord(one, word))));
}

/** Answers to a question about the whole shell; empty where it is about one record. */
export const askTopics = (assessment: Assessment, query: string): readonly TopicAnswer[] =>
  topicsOf(query).map((topic) => ({ topic: topic.name, question: topic.question, ...topic.answer(assessment) }));
