import { type Assessment, assess } from '../../../src/assess.js';
import type { Model } from '../../../src/model/shell.js';
import { buildModel } from '../../support/build.js';

/** A whole assessment of a literal shell. */
export const assessment = (shell: Partial<Model['shell']>, library: Partial<Model['library']> = {}): Assessment =>
  assess(buildModel(shell, library), []);
