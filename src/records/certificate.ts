import { id, oneOf, text, texts } from './fields.js';
import { kind, type RecordOf } from './kind.js';

const CERTIFICATE_TYPES = ['2.1', '2.2', '3.1', '3.2'] as const;

/**
 * library/certificates.yaml: what a mill or dealer says of some heats, EN 10204. 2.1 and 2.2 speak of the order, 3.1 and 3.2 of the
 * heat itself.
 */
export const certificate = kind(
  'certificate',
  { in: 'library', list: 'certificates' },
  {
    heats: texts('Heats or lots it covers').required(),
    alloy: id('Alloy and temper that it certifies, as in library/materials.yaml').required().names('material').asLast(),
    type: oneOf(CERTIFICATE_TYPES, 'Type of document, EN 10204').required().asLast(),
    document: text('Its number, and where the paper is').traced('certificate'),
  },
  { stands: 'kept up' },
);

export type Certificate = RecordOf<typeof certificate>;
