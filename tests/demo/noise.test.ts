import { beforeAll, describe, expect, it } from 'vitest';
import { isScalar, parseDocument, visit } from 'yaml';
import { assess } from '../../src/assess.js';
import { isolateText } from '../../src/cli/report/isolate-text.js';
import { paint } from '../../src/cli/report/paint.js';
import { loadStore } from '../../src/model/load.js';
import type { StoreText } from '../../src/model/load-types.js';
import { hazardsBehind } from '../../src/query/hazards.js';
import { isolate } from '../../src/query/isolate/index.js';
import { beforeWelding, rescueSources } from '../../src/query/isolate/rescue.js';
import type { Isolation } from '../../src/query/isolate/types.js';
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
function answers(store: StoreText, to: (id: string) => string = (id) => id) {
  const one = loadStore(store).shells.get(SHELL);
  if (!one) throw new Error('no shell');
  const assessment = assess(one.model, one.findings);
  const { shell } = one.model;
  const ids = [...shell.circuits, ...shell.nodes.filter((_, i) => i % 10 === 0), ...shell.components, ...shell.tanks].map(
    ({ id }) => id,
  );
  // Sentences wrap where a word ends: compared without their line ends.
  const inLine = (text: string): string => text.replaceAll(/\s+/gu, ' ');
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
    printed: PRINTED.map(to).map((id) => inLine(isolateText(one.model, isolate(assessment, id) as Isolation, PLAIN))),
    weights: assessment.figures.weights.conditions.map(({ name, totalKg, axles }) => ({ name, totalKg, axles })),
  };
}

/** Numbers that look like chance, the same in every run (a linear congruential generator). */
function chance(seed: number): () => number {
  let at = seed;
  return () => {
    at = (at * 1103515245 + 12345) % 2147483648;
    return at / 2147483648;
  };
}

const MISLEADING = [
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

/** Ids of axles, seats and stages are words of the record format too. */
const RENAMED: readonly string[] = [
  'node',
  'run',
  'circuit',
  'component',
  'tank',
  'zone',
  'panel',
  'member',
  'opening',
  'weld',
  'clamp',
];

/** Text keys in which an id may stand without being meant as one. */
const NO_ID = new Set([...FREE, 'marking', 'caption', 'view', 'reason', 'part', 'serial', 'title', 'colour', 'file']);

/** The shell with every id put through `to`: values, lists and keys; what is free text stays. */
function withIds(store: StoreText, to: (id: string) => string): StoreText {
  const files = [...store.files].filter(([file]) => !file.startsWith('shells/') || file.startsWith(`shells/${SHELL}/`));
  const renamed = files.map(([file, text]): readonly [string, string] => {
    if (SKIPPED.test(file)) return [file, text];
    const doc = parseDocument(text);
    visit(doc, {
      Pair: (_, { key }) => (isScalar(key) && NO_ID.has(String(key.value)) ? visit.SKIP : undefined),
      Scalar(_, scalar) {
        if (typeof scalar.value === 'string') scalar.value = to(scalar.value);
      },
    });
    return [file, doc.toString({ lineWidth: 0 })];
  });
  return { ...store, files: new Map(renamed) };
}

const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\/]/gu, String.raw`\$&`);
/** Replaces whole words of a table in one pass, the longest first. */
function replacer(table: ReadonlyMap<string, string>, edge: string): (text: string) => string {
  const words = [...table.keys()].filter((word) => word !== '').sort((a, b) => b.length - a.length);
  const pattern = new RegExp(`(?<!${edge})(?:${words.map(escaped).join('|')})(?!${edge}|\\.${edge})`, 'gu');
  return (text) => text.replaceAll(pattern, (word) => table.get(word) as string);
}
function mapStrings(value: unknown, to: (text: string) => string): unknown {
  if (typeof value === 'string') return to(value);
  if (Array.isArray(value)) return value.map((one) => mapStrings(one, to));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, mapStrings(one, to)]));
}

const PLAIN = paint(false);
const PRINTED = ['CMP-16', 'DCP', 'PUMP', 'AC-03', 'CMP-32', 'GA'];

describe('answers about the finished demo shell stand on facts', () => {
  let store: StoreText;
  let plain: ReturnType<typeof answers>;
  beforeAll(async () => {
    store = await readStoreText(DEMO);
    plain = answers(store);
  });

  it('not on any name or note: all replaced at random by words that say something else; of what is printed these words alone differ', () => {
    const random = chance(20261201);
    const words = new Map<string, string>();
    const named = (text: string): string => {
      const letters = Array.from({ length: 6 }, () => String.fromCharCode(97 + Math.floor(random() * 26))).join('');
      const known = words.get(text) ?? `${MISLEADING[Math.floor(random() * MISLEADING.length)]} ${letters}`;
      words.set(text, known);
      return known;
    };
    const noisy = answers(withNames(store, named));
    for (const [key, answer] of Object.entries(plain))
      if (key !== 'printed') expect(noisy[key as keyof typeof plain], key).toEqual(answer);
    // Every word that was put in is one of a kind: put back, what is printed is as before.
    const back = replacer(new Map([...words].map(([name, word]) => [word, name])), String.raw`[\p{L}\p{N}]`);
    expect(noisy.printed.map(back)).toEqual(plain.printed);
  });

  it('nor on any id: with names exchanged among each other and every id renamed one to one, the answers are the same after mapping', () => {
    const model = loadStore(store).shells.get(SHELL)?.model;
    if (!model) throw new Error('no shell');
    const ids = [...model.shell.byId.values()].flatMap(({ id, kind }) => (RENAMED.includes(kind) ? [id] : []));
    ids.sort((a, b) => (a < b ? -1 : 1));
    const renamed = new Map(ids.map((id, i) => [id, `r${String(i).padStart(5, '0')}`] as const));
    const to = (id: string): string => renamed.get(id) ?? id;
    const names: string[] = [];
    withNames(store, (text) => {
      names.push(text);
      return text;
    });
    // Each record takes the name of another, a third of the list away.
    let next = Math.floor(names.length / 3);
    const exchanged = withNames(store, () => names[next++ % names.length] as string);
    const after = answers(withIds(exchanged, to), to);
    const inText = replacer(renamed, String.raw`[\p{L}\p{N}/_-]`);
    for (const [key, answer] of Object.entries(plain))
      if (key !== 'printed') expect(after[key as keyof typeof plain], key).toEqual(mapStrings(answer, inText));
  });
});
