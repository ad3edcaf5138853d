import { assess } from '../assess.js';
import { builtOfAll } from '../closeout/build-progress.js';
import { type Progress, progressOf } from '../closeout/state.js';
import type { Elsewhere } from '../model/elsewhere.js';
import type { LoadedStore } from '../model/load-types.js';
import { type Counts, countFindings, decide } from '../rules/decide.js';

/** What `list` says of a shell, by its records. */
export interface Summary {
  readonly title: string;
  readonly progress: Progress;
  /** Records of what is built, by whether they are in the coach. */
  readonly built: { readonly planned: number; readonly done: number };
  readonly counts: Counts;
  /** Its rules looked into records of other shells. */
  readonly lookedAround: boolean;
}

/** Judges one shell for the list. `uncommitted`: as for the rules. */
export function summaryOf(loaded: LoadedStore, shell: string, uncommitted?: readonly string[]): Summary | undefined {
  const one = loaded.shells.get(shell);
  if (!one) return undefined;
  const watched = watch(one.model.elsewhere);
  const model = { ...one.model, ...(watched ? { elsewhere: watched.elsewhere } : {}) };
  const assessment = assess(model, one.findings, uncommitted ? { uncommitted } : {});
  const counts = countFindings(decide(assessment.findings, model.shell.findings));
  const { title } = model.shell;
  return { title, progress: progressOf(model), built: builtOfAll(model), counts, lookedAround: watched?.asked() ?? false };
}

function watch(elsewhere: Elsewhere | undefined): { readonly elsewhere: Elsewhere; asked(): boolean } | undefined {
  if (!elsewhere) return undefined;
  let asked = false;
  const noting = <T>(answer: T): T => {
    asked = true;
    return answer;
  };
  return {
    elsewhere: {
      records: (list, words, least) => noting(elsewhere.records(list, words, least)),
      withVin: (vin) => noting(elsewhere.withVin(vin)),
      beganBefore: (other) => noting(elsewhere.beganBefore(other)),
    },
    asked: () => asked,
  };
}
