import type { Sentence } from './sentence.js';

/** What stands on the label of a panel, beside its hazards. */
export const LABELS = {
  'label.also': { us: 'Also: {hazards}', es: 'También: {hazards}' },
  'label.none': { us: 'Nothing recorded behind it: look first.', es: 'No hay nada registrado detrás: mire primero.' },
  'label.foot': { us: '{side} · {shop} · shell {shell}', es: '{side} · {shop} · carrocería {shell}' },
} as const satisfies Readonly<Record<string, Sentence>>;
