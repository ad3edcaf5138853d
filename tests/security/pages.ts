import type { Assessment } from '../../src/assess.js';
import { bookDocument } from '../../src/book/document.js';
import type { Edition } from '../../src/book/input.js';
import { labelDocument } from '../../src/book/labels/document.js';
import type { BookDocument } from '../../src/book/print/document.js';
import { FINGERPRINT, HISTORY } from '../book/small-store.js';

/** One edition as it goes to the browser, without pictures. */
export const bookPage = (assessment: Assessment, edition: Edition, history: typeof HISTORY = HISTORY): Promise<BookDocument> =>
  bookDocument({ assessment, edition, fingerprint: FINGERPRINT, history, photoFile: async () => undefined });

export const labelPage = (assessment: Assessment): BookDocument =>
  labelDocument({
    assessment,
    edition: 'shop',
    pages: new Map(),
    uncommitted: false,
    date: '2026-07-02',
    fingerprint: FINGERPRINT,
    first: 1,
    withMarkers: true,
  }).document;
