import { jsonOneOf, shape, whole } from './shape.js';

/** Findings, by how grave; `decided` are those of them that a finding record decides. */
export const counts = shape({ error: whole, warning: whole, note: whole, decided: whole });

export const state = jsonOneOf('in build', 'signed off', 'closed', 'amended');
