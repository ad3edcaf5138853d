import { drainPlan } from '../lookup/draining.js';
import { facts, type Topic, type TopicRow } from './topic.js';

export const frost: Topic = {
  name: 'frost',
  ask: 'find.winter',
  words: [
    'frost',
    'drain',
    'draining',
    'drained',
    'winter',
    'winterise',
    'winterize',
    'winterising',
    'winterizing',
    'freeze',
    'freezing',
    'empty',
    'water',
    'order',
    'sequence',
  ],
  answer(assessment) {
    const plan = drainPlan(assessment);
    const named = new Map(assessment.model.shell.nodes.map((node) => [node.id, node.name ?? node.nodeKind] as const));
    const steps = plan.steps.map(
      (one, i): TopicRow => ({
        id: one.id,
        what: `${i + 1}. ${one.do}: ${named.get(one.id)} (${one.why})`,
        facts: facts(['comes out', one.litres, 'l']),
      }),
    );
    const kept = plan.kept.map(
      (one): TopicRow => ({
        id: one.runs[0] as string,
        what: `holds water${one.noOutlet ? ', no drain at all' : ''}`,
        facts: facts(['level', one.levelLitres, 'l'], ['on a 3 % slope', one.slopeLitres, 'l']),
      }),
    );
    return { rows: [...steps, ...kept], notes: plan.notes };
  },
};
