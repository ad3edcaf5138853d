export type { Model } from '../../src/model/shell.js';
export type { Limits, Material, Section } from '../../src/records/index.js';
