import type { WordKey } from '../words/index.js';

/** What people ask, what may hurt somebody first, and the screens that answer it: the first that the page has. */
export const POCKET_QUESTIONS: readonly (readonly [ask: WordKey, to: readonly string[]])[] = [
  ['ask.emergency', ['emergency']],
  ['ask.live', ['t-live']],
  ['ask.valve', ['t-valves', 'l-nodes']],
  ['ask.panel', ['l-panels']],
  ['ask.behind', ['l-panels']],
  ['ask.feeds', ['l-circuits']],
  ['ask.fuses', ['t-fuses']],
  ['ask.run', ['l-runs']],
  ['ask.wire', ['l-runs']],
  ['ask.unused', ['t-unused']],
  ['ask.drill', ['coach']],
  ['ask.heater', ['t-heater']],
  ['ask.leak', ['t-leak']],
  ['ask.frost', ['winter']],
  ['ask.slide', ['t-slide']],
  ['ask.lift', ['t-lift']],
  ['ask.hang', ['t-hang']],
  ['ask.roof', ['t-roof']],
  ['ask.weld', ['t-weld']],
  ['ask.skin', ['t-skin']],
  ['ask.torque', ['t-torque']],
  ['ask.tests', ['t-tests']],
  ['ask.axles', ['loading']],
  ['ask.bay', ['loading']],
  ['ask.tyres', ['tyres']],
  ['ask.repaired', ['t-repairs']],
  ['ask.spare', ['t-spare']],
  ['ask.earths', ['t-earths']],
  ['ask.changes', ['t-changes']],
  ['ask.care', ['care']],
  ['ask.who', ['contacts']],
  ['ask.right', ['trust']],
];

/** Those that an owner asks, in the owner’s order. */
export const OWNER_QUESTIONS: readonly WordKey[] = [
  ...(['ask.emergency', 'ask.valve', 'ask.bay', 'ask.axles', 'ask.tyres', 'ask.frost', 'ask.care', 'ask.fuses'] as const),
  ...(['ask.slide', 'ask.heater', 'ask.lift', 'ask.hang', 'ask.roof', 'ask.drill', 'ask.panel', 'ask.changes'] as const),
  ...(['ask.who', 'ask.right'] as const),
];
