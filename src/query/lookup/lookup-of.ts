import type { Computed } from '../../compute/figures.js';
import { extentOf } from '../place-words.js';
import { answerTopic, TOPICS } from '../topics/index.js';
import type { Lookup } from './ask.js';
import { findables } from './records.js';
import { matcher } from './where.js';

/** Everything that can be asked of an assessment, each answer computed when it is asked for. */
export function lookupOf(assessment: Computed): Lookup {
  const { shell } = assessment.model;
  const all = findables(shell);
  const byId = new Map(all.map((one) => [one.id, one] as const));
  const match = matcher(assessment);
  const bounds = extentOf(shell);
  return {
    findables: all,
    ...(bounds ? { bounds } : {}),
    topics: TOPICS,
    match(id) {
      const one = byId.get(id);
      return one && match(one, 'exact');
    },
    topic(name) {
      const topic = TOPICS.find((one) => one.name === name);
      return topic && answerTopic(assessment, topic);
    },
  };
}
