import path from 'node:path';
import type { Assessment } from '../assess.js';
import type { Edition } from '../book/input.js';
import type { Finding } from '../finding.js';
import type { Model } from '../model/shell.js';
import type { DerivedName } from '../query/derived.js';
import type { RuleArea } from '../rules/rule.js';
import type { ClosedAs } from '../store/closed-as.js';
import { findStore } from '../store/find.js';
import { keptAt } from '../store/kept-answers.js';
import { Sections } from '../store/sections.js';
import type { Context } from './context.js';
import { keepFigures, keptFigures } from './kept-figures.js';
import { keepModel, keptModel } from './kept-model.js';
import { localDay } from './local-day.js';
import type { OpenShell } from './open.js';
import { programFiles } from './program-files.js';

/** What a look-up answers from: a shell that was read and judged just now, or what was kept of it when that was done. */
export interface Answering {
  readonly assessment: Assessment;
  /** The last commit that touched its record; null outside Git. */
  readonly revision: string | null;
  /** Which book the records come from, where they come from one. */
  readonly edition?: Edition;
  /** Where a record stands in the printed book of exactly these records. */
  pages(): Promise<(id: string) => readonly number[]>;
  closed(): Promise<ClosedAs | undefined>;
  /** What an answer takes time over: made once a state of the records, and kept by that name. Plain data. */
  once<T>(name: string, make: () => Promise<T>): Promise<T>;
}

/** Which rules' findings look-ups ask for; the others are judged by all. */
type Areas = readonly RuleArea[] | undefined;
const ASKED: readonly Areas[] = [[], ['shell', 'weight'], ['member', 'panel'], undefined];

/** What is not committed is taken as changed today. */
const findingsOf = (areas: Areas): string => `findings ${areas?.join(' ') ?? `of all on ${localDay(new Date())}`}`;

interface Head {
  readonly revision: string | null;
  readonly edition?: Edition;
  /** Why nobody is proved to stand for the book, in words. */
  readonly unproved?: string;
}

/**
 * Opens one shell for an answer and says on standard error when its records have errors. `areas` are those whose rules touch the answer
 * (none: only errors of reading do); absent, every rule counts. The first question of a state of the records computes and keeps every
 * figure; the next ones read what they need.
 */
export async function answering(shell: string, context: Context, areas?: readonly RuleArea[]): Promise<Answering> {
  const kept = await sectionsOf(shell, context);
  const found = kept && (await fromKept(kept, context, areas));
  if (found) return found;
  const { openForAnswer, revisionOf } = await import('./open.js');
  const opened = await openForAnswer(shell, context, areas);
  if (kept) context.later(() => keepAll(kept, opened, context));
  const { book } = opened.store;
  return {
    assessment: opened.assessment,
    revision: revisionOf(opened),
    ...(book ? { edition: book.edition } : {}),
    pages: async () => (await import('./book-pages.js')).bookPages(opened),
    closed: async () => (await import('./closed-of.js')).closedOf(opened),
    once: (name, make) => (kept ? onceIn(kept, name, make) : make()),
  };
}

/** Undefined outside Git. */
async function sectionsOf(shell: string, context: Context): Promise<Sections | undefined> {
  const { io, settings } = context;
  if (settings.book !== undefined) return (await import('./kept-book.js')).sectionsOfBook(settings.book, shell, context);
  const at = await keptAt(findStore(io.cwd, settings.store), {
    room: 'figures',
    question: shell,
    program: programFiles(),
    inGit: ['refs/tags'],
    standing: true,
  });
  return at && Sections.open(at);
}

/** Undefined where something that this answer needs is not kept. */
async function fromKept(kept: Sections, context: Context, areas: Areas): Promise<Answering | undefined> {
  const name = findingsOf(areas);
  if (!['head', 'closed', name].every((one) => kept.has(one))) return undefined;
  if (context.settings.book !== undefined && !kept.has('pages')) return undefined;
  const [model, figures] = [keptModel(kept), keptFigures(kept)];
  if (!model || !figures) return undefined;
  const { keepOf } = await import('../compute/lazy.js');
  keepOf(model, kept);
  const assessment: Assessment = { model, kept, figures, findings: kept.get(name) as readonly Finding[] };
  const { revision, edition, unproved } = kept.get('head') as Head;
  const { book } = context.settings;
  if (book !== undefined && unproved !== undefined) {
    const [{ reportUnproved }, { shownPath }] = await Promise.all([import('./read-book.js'), import('./shown-path.js')]);
    reportUnproved(shownPath(path.resolve(context.io.cwd, book), context), unproved, context);
  }
  if (assessment.findings.some(({ severity }) => severity === 'error')) await warn(assessment, context);
  context.later(() => kept.save());
  return {
    assessment,
    revision,
    ...(edition ? { edition } : {}),
    pages: () => pagesOf(kept, model, context),
    closed: async () => (kept.get('closed') as { readonly closed?: ClosedAs }).closed,
    once: (name, make) => onceIn(kept, name, make),
  };
}

async function onceIn<T>(kept: Sections, name: string, make: () => Promise<T>): Promise<T> {
  if (!kept.has(name)) kept.put(name, await make());
  return kept.get(name) as T;
}

async function warn({ findings, model: { shell } }: Assessment, context: Context): Promise<void> {
  const [{ decide }, { shadowText }] = await Promise.all([import('../rules/decide.js'), import('./report/findings.js')]);
  const said = shadowText(shell.id, decide(findings, shell.findings));
  if (said) context.tell(said);
}

async function keepAll(kept: Sections, opened: OpenShell, context: Context): Promise<void> {
  const [{ openShell, revisionOf }, { closedOf }] = await Promise.all([import('./open.js'), import('./closed-of.js')]);
  const { model, figures } = opened.assessment;
  const { book } = opened.store;
  const head: Head = {
    revision: revisionOf(opened),
    ...(book ? { edition: book.edition } : {}),
    ...(book?.unproved === undefined ? {} : { unproved: book.unproved }),
  };
  kept.put('head', head);
  if (book) kept.put('pages', book.pages);
  keepModel(kept, model);
  kept.put('closed', { closed: await closedOf(opened) });
  keepFigures(kept, figures);
  const { keepAllOf } = await import('../compute/lazy.js');
  keepAllOf(model, kept);
  const { DERIVED, derived } = await import('../query/derived.js');
  for (const name of Object.keys(DERIVED) as DerivedName[]) derived({ model, figures, kept }, name);
  for (const areas of ASKED) {
    const { assessment } = await openShell(opened.store, model.shell.id, context, areas, {}, figures);
    kept.put(findingsOf(areas), assessment.findings);
  }
  await kept.save();
}

/** Pages of the book that the records come from, else of the service edition that was printed of exactly these records. */
async function pagesOf(kept: Sections, model: Model, { io, settings }: Context): Promise<(id: string) => readonly number[]> {
  if (settings.book !== undefined) return (await import('./book-pages.js')).pagesIn(kept.get('pages') as Map<string, number>);
  const [{ repositoryOf }, { keptMaps, readPageMap }, { pagesIn }] = await Promise.all([
    import('../store/git/repository.js'),
    import('../store/page-map.js'),
    import('./book-pages.js'),
  ]);
  const root = findStore(io.cwd, settings.store);
  const gitDir = repositoryOf(root)?.gitDir;
  if (gitDir === undefined || !keptMaps(gitDir)) return () => [];
  if (!kept.has('fingerprint')) {
    const [{ readStoreText }, { fingerprintIn }] = await Promise.all([import('../store/read.js'), import('./fingerprint-of.js')]);
    kept.put('fingerprint', (await fingerprintIn(await readStoreText(root, model.shell.id), model)).fingerprint);
  }
  return pagesIn(readPageMap(gitDir, kept.get('fingerprint') as string, 'service'));
}
