import type { Assessment, Figures } from '../assess.js';
import type { PictureOf } from '../compute/figures-of.js';
import type { LoadedShell } from '../model/load-types.js';
import type { Model } from '../model/shell.js';
import type { Outside, RuleArea } from '../rules/rule.js';
import type { GitStanding } from '../store/history.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import type { OpenStore } from './open-store.js';
import { shownPath } from './shown-path.js';

export type { BookSource, OpenStore } from './open-store.js';

/** One shell, judged. */
export interface OpenShell {
  readonly store: OpenStore;
  readonly assessment: Assessment;
  /** Null outside Git. */
  readonly standing: GitStanding | null;
}

export async function openStoreFor(context: Context): Promise<OpenStore> {
  if (context.settings.book !== undefined) {
    const { openFromBook } = await import('./open-from-book.js');
    return openFromBook(context.settings.book, context);
  }
  const { findStore } = await import('../store/find.js');
  const root = findStore(context.io.cwd, context.settings.store);
  context.progress(`Reading ${shownPath(root, context)}`);
  const [{ readStoreText }, { loadStore }, { History }] = await Promise.all([
    import('../store/read.js'),
    import('../model/load.js'),
    import('../store/history.js'),
  ]);
  // A repository that cannot be read says so before anything is begun that nobody would hear of.
  const history = await History.open(root);
  const text = await readStoreText(root);
  return { root, text, loaded: loadStore(text), history };
}

/** Throws {@link UserError} with the nearest names where the store has no such shell. */
export async function requireShell(store: OpenStore, shell: string, context: Context): Promise<LoadedShell> {
  const found = store.loaded.shells.get(shell);
  if (!found) throw new UserError(await noSuchShell(store, shell, context));
  return found;
}

export async function openShell(
  store: OpenStore,
  shell: string,
  context: Context,
  areas?: readonly RuleArea[],
  more: Outside = {},
  figures?: Figures,
): Promise<OpenShell> {
  const found = await requireShell(store, shell, context);
  const { assess } = await import('../assess.js');
  const standing = (await store.history?.standing(shell)) ?? null;
  const model = await withChanges(store, found.model, standing, areas);
  context.progress(`Computing ${shell}`);
  const outside = standing ? { uncommitted: standing.uncommitted, ...(await lapses(store, found, areas)) } : {};
  const pictures = await markedPictures(store, found);
  const all = { ...outside, ...(pictures ? { pictures } : {}), ...more };
  const known = figures ?? (await figuresKept(store, model, all, context));
  const assessment = assess(model, found.findings, all, areas, known);
  return { store, assessment, standing };
}

/** Fewer members and panels are computed sooner than they are read again. */
const WORTH_KEEPING = 60;

/** The dear figures by what they were computed of; undefined outside Git, for a book, and for a small shell. */
async function figuresKept(
  { root, history, book }: OpenStore,
  model: Model,
  outside: Outside,
  context: Context,
): Promise<Figures | undefined> {
  const { members, panels, id } = model.shell;
  if (!history || book || members.length + panels.length < WORTH_KEEPING) return undefined;
  const [{ pictureAt }, { figuresByContents }, { keptByContents }, { Sections }, { programFiles }] = await Promise.all([
    import('../assess.js'),
    import('./kept-by-contents.js'),
    import('../store/kept-answers.js'),
    import('../store/sections.js'),
    import('./program-files.js'),
  ]);
  const kept = Sections.open(keptByContents(history.gitDir, `${root}\n${id}`, programFiles()));
  const pictureOf: PictureOf = (file) => pictureAt(outside, file);
  const { figures, save } = figuresByContents(model, pictureOf, kept);
  context.later(save);
  return figures;
}

/** The model with what the history says of changes, for commands whose answer rests on evidence. */
async function withChanges(
  store: OpenStore,
  model: Model,
  standing: GitStanding | null,
  areas?: readonly RuleArea[],
): Promise<Model> {
  if (!standing || !store.history || (areas && !areas.includes('order'))) return model;
  const { changesOf } = await import('./changed-on.js');
  const { enteredBy } = await import('../store/entered.js');
  const [{ changes, builtSincePlanned, sharedCommits }, entered] = await Promise.all([
    changesOf(store.root, model.shell.id, store.text.files, standing.uncommitted),
    enteredBy(store.root, model.shell.id),
  ]);
  const { withoutSigned } = await import('../closeout/signed-since.js');
  const told = { changes: withoutSigned(model, changes), entered, builtSincePlanned };
  return { ...model, ...told, ...(sharedCommits === undefined ? {} : { sharedCommits }) };
}

/** Size and lens of the pictures that have marked points. */
async function markedPictures({ root, text }: OpenStore, { model }: LoadedShell): Promise<Outside['pictures']> {
  const files = model.shell.photos.flatMap(({ file, seen }) =>
    seen === undefined ? [] : [`shells/${model.shell.id}/photos/${file}`].filter((one) => text.photos.has(one)),
  );
  if (files.length === 0) return undefined;
  const { pictureFactsOf } = await import('../store/picture-facts.js');
  return pictureFactsOf(root, files);
}

async function lapses(
  store: OpenStore,
  { model }: LoadedShell,
  areas?: readonly RuleArea[],
): Promise<Pick<Outside, 'lapsedBy' | 'signings'>> {
  if (areas && !areas.includes('signoff')) return {};
  const [{ lapsedBy }, { signingsOf }] = await Promise.all([import('./lapsed-by.js'), import('./signings.js')]);
  const [reasons, signings] = await Promise.all([
    lapsedBy(store.root, model),
    signingsOf(store.root, model.shell.id, model.library.people.values()),
  ]);
  return { lapsedBy: reasons, signings };
}

/**
 * Opens the store and one shell, and says on standard error when its records have errors. For commands that answer from figures:
 * `areas` are those whose rules touch the answer (none: only errors of reading do); absent, every rule counts.
 */
export async function openForAnswer(shell: string, context: Context, areas?: readonly RuleArea[]): Promise<OpenShell> {
  const opened = await openShell(await openStoreFor(context), shell, context, areas);
  const [{ decide }, { shadowText }] = await Promise.all([import('../rules/decide.js'), import('./report/findings.js')]);
  const said = shadowText(shell, decide(opened.assessment.findings, opened.assessment.model.shell.findings));
  if (said) context.tell(said);
  return opened;
}

export { revisionOf } from './revision-of.js';

async function noSuchShell(store: OpenStore, shell: string, context: Context): Promise<string> {
  const known = [...store.loaded.shells.keys()];
  const where = shownPath(store.root, context);
  if (known.length === 0) return `No shell ${shell} in ${where}: it has no shells yet. Start one: shellbook new-shell ${shell}`;
  const { nearest } = await import('../source/nearest.js');
  const close = nearest(shell, known);
  const listed = known.length <= 8 ? `It has ${known.join(', ')}` : 'See: shellbook list';
  return `No shell ${shell} in ${where}. ${close.length > 0 ? `Did you mean ${close.join(' or ')}?` : `${listed}.`}`;
}
