import { assess } from '../../../src/assess.js';
import type { Finding } from '../../../src/finding.js';
import type { Model } from '../../../src/model/shell.js';
import { buildModel } from '../../support/build.js';

/** Findings of one rule over a whole assessment of a literal shell. */
export function judged(
  rule: string,
  shell: Partial<Model['shell']>,
  { library = {}, shop = {} }: { readonly library?: Partial<Model['library']>; readonly shop?: Partial<Model['shop']> } = {},
): readonly Finding[] {
  return assess(buildModel(shell, library, shop), []).findings.filter((finding) => finding.rule === rule);
}
