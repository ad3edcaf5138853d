import { oneOf, text } from './fields.js';
import { part } from './kind.js';
import { MEDIA } from './names.js';
import { SHARED } from './shared.js';

const LINE_CONTENTS = ['water', 'coolant'] as const;
export type LineContents = (typeof LINE_CONTENTS)[number];

/** The head of services/*.yaml; its three lists are read record by record. */
export const service = part('service', {
  ...SHARED,
  service: text('Name of the service, as House 12 V').required(),
  medium: oneOf(MEDIA, 'What runs in it').required(),
  contents: oneOf(LINE_CONTENTS, 'Of a water service: water, or coolant that stays in its lines').describes(),
});
