/**
 * shellbook as a library: read a store, check it, compute with it.
 *
 * ```ts
 * import { openStore } from 'shellbook';
 *
 * const store = await openStore('records');
 * for (const id of store.shells) {
 *   const { findings, figures } = store.assess(id);
 *   console.log(id, findings.length, figures.takeOff.total.massKg);
 * }
 * ```
 *
 * Inside everything is SI with the unit in the name: lengths in mm, masses in kg, pressures in Pa, temperatures in K. Places are
 * `[x, y, z]` in the shell's datum: x rearward from the front axle's centre line, y right, z up from the top of the frame rail.
 * Nothing here writes, prints or reads Git.
 */
import { type Assessment, assess } from './assess.js';
import type { Finding } from './finding.js';
import { loadStore } from './model/load.js';
import type { LoadedStore, StoreText } from './model/load-types.js';
import { decide } from './rules/decide.js';
import type { Outside } from './rules/rule.js';
import { nearest } from './source/nearest.js';
import { readStoreText } from './store/read.js';
import { UserError } from './user-error.js';

/** A store read from its folder, or from text. */
export interface Store {
  /** Numbers of its shells, in the order of their folders. */
  readonly shells: readonly string[];
  /** Shop file, library and every shell, as read and linked. */
  readonly loaded: LoadedStore;
  /** Findings in shop.yaml and the library: form and links. */
  readonly findings: readonly Finding[];
  /**
   * One shell, judged: its model, the figures (each computed when first asked for) and every finding.
   * @param outside What only the world knows, as which files differ from the last commit; rules that ask for it are silent without.
   * @throws {UserError} where the store has no such shell.
   */
  assess(shell: string, outside?: Outside): Assessment;
}

/**
 * Reads every YAML file below a folder. Links that lead out of it, files over 20 MB and files that are no UTF-8 are findings, not read.
 * @throws {UserError} where the folder cannot be read.
 */
export const openStore = async (folder: string): Promise<Store> => storeOf(await readStoreText(folder));

/** A store from text alone: path relative to the store, with forward slashes → YAML. Pure. */
export const storeFromText = (files: Readonly<Record<string, string>>): Store =>
  storeOf({ root: '', files: new Map(Object.entries(files)), photos: new Map() });

function storeOf(text: StoreText): Store {
  const loaded = loadStore(text);
  const shells = [...loaded.shells.keys()];
  return {
    shells,
    loaded,
    findings: loaded.findings,
    assess(shell, outside) {
      const found = loaded.shells.get(shell);
      if (found) return assess(found.model, found.findings, outside);
      const [close] = nearest(shell, shells, 1);
      throw new UserError(`No shell ${shell} in this store${close === undefined ? '' : `, did you mean ${close}`}`);
    },
  };
}

/** The findings of an assessment with the finding records that decide them; what `check` shows. */
export const decided = ({ findings, model }: Assessment) => decide(findings, model.shell.findings);

export type { Assessment, Figures } from './assess.js';
export type * from './compute/access/types.js';
export type * from './compute/services/types.js';
export type * from './compute/structure/types.js';
export type * from './compute/takeoff/types.js';
export type * from './compute/weights/types.js';
export type { Finding, Place, Severity } from './finding.js';
export type { Vec3 } from './geometry/vector.js';
export type { LoadedStore, StoreText } from './model/load-types.js';
export type * from './model/shell.js';
export { parseQuantity } from './quantity/parse.js';
export { behind, isolate, near, where } from './query/lookup/index.js';
export type * from './records/index.js';
export type { DecidedFinding } from './rules/decide.js';
export { RULES } from './rules/index.js';
export { LEGAL_FIGURES, type LegalFigure } from './rules/legal.js';
export type { Outside, Rule } from './rules/rule.js';
export { UserError } from './user-error.js';
