import { beforeAll, describe, expect, it } from 'vitest';
import { isScalar, parseDocument, visit } from 'yaml';
import { assess } from '../../src/assess.js';
import { loadStore } from '../../src/model/load.js';
import type { StoreText } from '../../src/model/load-types.js';
import { hazardsBehind } from '../../src/query/hazards.js';
import type { ServiceFacts } from '../../src/query/isolate/graph/facts.js';
import { solve } from '../../src/query/isolate/graph/solve.js';
import { isolate } from '../../src/query/isolate/index.js';
import { beforeWelding, rescueSources } from '../../src/query/isolate/rescue.js';
import { behind } from '../../src/query/lookup/behind.js';
import { drainPlan } from '../../src/query/lookup/draining.js';
import { near } from '../../src/query/lookup/near.js';
import { findables } from '../../src/query/lookup/records.js';
import { where } from '../../src/query/lookup/where.js';
import { readStoreText } from '../../src/store/read.js';
import { DEMO } from './store.js';

const SHELL = 'OV-021';
/** What a person may call a thing. `part` of a component is its maker's number; a member's is its name. */
const FREE = new Set(['name', 'note', 'description']);
/** Signed digests cover notes; who signed what is another test. */
const SKIPPED = /signoffs|library\/|shop\.yaml/u;

/** The first demo shell with every name and note put through `change`. */
function withNames(store: StoreText, change: (text: string) => string): StoreText {
  const files = [...store.files].filter(([file]) => !file.startsWith('shells/') || file.startsWith(`shells/${SHELL}/`));
  const noisy = files.map(([file, text]): readonly [string, string] => {
    if (SKIPPED.test(file)) return [file, text];
    const doc = parseDocument(text);
    visit(doc, {
      Pair(_, { key, value }) {
        if (isScalar(key) && FREE.has(String(key.value)) && isScalar(value) && typeof value.value === 'string')
          value.value = change(value.value);
      },
    });
    return [file, doc.toString({ lineWidth: 0 })];
  });
  return { ...store, files: new Map(noisy) };
}

/** Ids, order, steps, panels, hazards, tanks and places, and no word of a name. */
function answers(store: StoreText) {
  const one = loadStore(store).shells.get(SHELL);
  if (!one) throw new Error('no shell');
  const assessment = assess(one.model, one.findings);
  const { shell } = one.model;
  const ids = [...shell.circuits, ...shell.nodes.filter((_, i) => i % 10 === 0), ...shell.components, ...shell.tanks].map(
    ({ id }) => id,
  );
  const panels = shell.panels.filter((panel) => panel.panelKind === 'access').map(({ id }) => id);
  return {
    isolate: ids.map((id) => {
      const found = isolate(assessment, id);
      // A place in words names what stands there by the shop’s own words.
      return found && { ...found, actions: found.actions.map(({ place: _, ...action }) => action), notes: found.notes.length };
    }),
    where: findables(shell)
      .filter((_, i) => i % 25 === 0)
      .flatMap(({ id }) => where(assessment, id).filter((match) => match.id === id))
      .map(({ id, kind, position, panels: reached, path, lengthMm, follow }) => ({
        id,
        kind,
        position,
        reached,
        path,
        lengthMm,
        follow,
      })),
    behind: panels.map((panel) => behind(assessment, panel)),
    hazards: panels.map((panel) => hazardsBehind(shell, behind(assessment, panel) ?? [])),
    near: near(assessment, [2500, -700, 500], 300),
    rescue: rescueSources(shell).map(({ id, group }) => [id, group]),
    welding: beforeWelding(shell).map(({ id }) => id),
    frost: drainPlan(assessment).steps,
    weights: assessment.figures.weights.conditions.map(({ name, totalKg, axles }) => ({ name, totalKg, axles })),
  };
}

describe('answers about the finished demo shell stand on facts', () => {
  let store: StoreText;
  let plain: ReturnType<typeof answers>;
  beforeAll(async () => {
    store = await readStoreText(DEMO);
    plain = answers(store);
  });

  it('not on any name or note: all exchanged for words that say something else', () => {
    const words = [
      'water pump',
      'battery switch',
      'propane',
      'charger',
      'solar',
      'transfer switch',
      'earth',
      'spare',
      'fuse',
      'xq',
    ];
    let next = 0;
    const noisy = answers(withNames(store, (text) => `${words[next++ % words.length]} ${text.length}`));
    for (const [key, answer] of Object.entries(plain)) expect(noisy[key as keyof typeof plain], key).toEqual(answer);
  });

  it('not on any id: with all of them renamed one to one, the answers are the same after mapping', () => {
    const { shell } = (
      loadStore(store).shells.get(SHELL) as NonNullable<ReturnType<ReturnType<typeof loadStore>['shells']['get']>>
    ).model;
    const renamed = new Map([...shell.byId.keys()].map((id, i) => [id, `r${(i * 7919) % 104729}`] as const));
    expect(new Set(renamed.values()).size).toBe(renamed.size);
    const to = (id: string): string => renamed.get(id) ?? id;
    const maybe = (id: string | undefined): string | undefined => (id === undefined ? undefined : to(id));
    const mapped: ServiceFacts = {
      nodes: shell.nodes.map((node) => ({ ...node, id: to(node.id), ...(node.of ? { of: node.of.map(to) } : {}) })),
      runs: shell.runs.map((run) => ({
        ...run,
        id: to(run.id),
        from: to(run.from),
        to: to(run.to),
        circuit: maybe(run.circuit),
      })),
      circuits: shell.circuits.map((one) => ({
        ...one,
        id: to(one.id),
        ...(one.protection ? { protection: { ...one.protection, at: maybe(one.protection.at) } } : {}),
      })),
    };
    for (const { id } of shell.nodes.filter((_, i) => i % 5 === 0)) {
      const [plainly, after] = [
        solve(shell, { nodes: [id], runs: [] }, () => 1),
        solve(mapped, { nodes: [to(id)], runs: [] }, () => 1),
      ];
      expect(after.links.map((link) => link.id)).toEqual(plainly.links.map((link) => to(link.id)));
      expect(after.sources).toEqual(plainly.sources.map(to));
      expect(after.left).toEqual(plainly.left.map(to));
      expect(after.joined).toEqual(plainly.joined.map(to));
    }
  });
});
