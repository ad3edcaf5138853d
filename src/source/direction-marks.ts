/**
 * Marks that turn the direction of text about, as the inside of a pattern's brackets: with one of them a name reads as another
 * (Unicode Standard Annex #9, explicit marks, embeddings, overrides and isolates).
 */
export const DIRECTION_MARKS = '\\u061c\\u200e\\u200f\\u202a-\\u202e\\u2066-\\u2069';
