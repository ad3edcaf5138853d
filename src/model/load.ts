import type { Finding } from '../finding.js';
import { roleOf } from '../store/layout.js';
import { Neighbours } from './elsewhere.js';
import { LazyMap } from './lazy-map.js';
import { loadLibrary, loadShop } from './load-library.js';
import { byPlace, loadShell, type ShellText } from './load-shell.js';
import type { LoadedShell, LoadedStore, StoreText } from './load-types.js';

/**
 * Reads a store from its text: form, links, units and datum, with every fault of every file as a finding. A shell is read when it is
 * first asked for. Pure; never throws for what the records say.
 */
export function loadStore(text: StoreText): LoadedStore {
  const findings: Finding[] = [];
  const say = (finding: Finding): void => void findings.push(finding);
  const shop = loadShop(text.files.get('shop.yaml'), say);
  const linked = loadLibrary(text.files, say);
  const strays = straysOf(text);
  findings.push(...strays.filter(({ shell }) => shell === undefined).map(({ finding }) => finding));
  const texts = shellTexts(text);
  const neighbours = new Neighbours(text.files);
  const shells = new LazyMap<LoadedShell>(texts.keys(), (id) => {
    const { model, findings: told } = loadShell(texts.get(id) as ShellText, shop, linked);
    const loaded = { model: { ...model, elsewhere: neighbours.of(id) }, findings: told };
    const own = strays.filter(({ shell }) => shell === id).map(({ finding }) => finding);
    return own.length === 0 ? loaded : { ...loaded, findings: [...loaded.findings, ...own].sort(byPlace) };
  });
  return { shop, library: linked.library, shells, findings: findings.sort(byPlace) };
}

/** Files of each shell, by its folder's name. */
function shellTexts(text: StoreText): ReadonlyMap<string, ShellText> {
  const texts = new Map<string, { id: string; files: Map<string, string>; photos: Set<string> }>();
  const of = (path: string) => {
    const [top, id, rest] = path.split('/');
    if (top !== 'shells' || id === undefined || rest === undefined) return undefined;
    const one = texts.get(id) ?? { id, files: new Map<string, string>(), photos: new Set<string>() };
    texts.set(id, one);
    return one;
  };
  for (const [path, yaml] of text.files) of(path)?.files.set(path, yaml);
  for (const path of text.photos.keys()) of(path)?.photos.add(path);
  return texts;
}

interface Stray {
  /** The shell in whose folder it lies. */
  readonly shell?: string;
  readonly finding: Finding;
}

/** Files that are not read: of a name that the store does not know, or refused by the reader. */
function straysOf(text: StoreText): readonly Stray[] {
  const strays: Stray[] = [];
  for (const path of text.files.keys()) {
    const role = roleOf(path);
    if (role.holds === 'unknown') strays.push({ shell: role.shell, finding: atFile('format.file-name', role.message, path) });
  }
  for (const [path, message] of text.refused ?? []) {
    const [top, shell, rest] = path.split('/');
    const inShell = top === 'shells' && rest !== undefined;
    strays.push({ ...(inShell ? { shell } : {}), finding: atFile('format.unreadable', message, path) });
  }
  return strays;
}

const atFile = (rule: string, message: string, file: string): Finding => ({
  rule,
  severity: 'error',
  message,
  ids: [],
  place: { file, line: 1, column: 1, endLine: 1, endColumn: 2 },
});
