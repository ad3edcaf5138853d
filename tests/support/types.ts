export type { Limits, Material, Section } from '../../src/model/library.js';
export type { Model } from '../../src/model/shell.js';
