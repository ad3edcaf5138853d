/** Every drawing that the books of the demo's finished shell print, as it is finished on its sheet. */
import { chaptersOf } from '../../src/book/chapters/index.js';
import { editionBook } from '../../src/book/document.js';
import type { Drawings } from '../../src/book/drawings.js';
import { EDITIONS, type Edition } from '../../src/book/input.js';
import { projectDrawings } from '../../src/book/project-drawings.js';
import type { Drawing } from '../../src/drawing/index.js';
import { judged } from '../demo/store.js';

export interface Sheet {
  readonly edition: Edition;
  /** The name that chapters ask for it by: `services`, `panelFace`. */
  readonly kind: keyof Drawings;
  readonly drawing: Drawing;
}

const isDrawing = (made: unknown): made is Drawing =>
  typeof made === 'object' && made !== null && 'svg' in made && 'widthMm' in made && 'alt' in made;

/** What a drawer gave, whatever list or record it came in. */
function drawingsIn(made: unknown): readonly Drawing[] {
  if (isDrawing(made)) return [made];
  if (Array.isArray(made)) return made.flatMap(drawingsIn);
  if (typeof made === 'object' && made !== null) return Object.values(made).flatMap(drawingsIn);
  return [];
}

/** What is drawn and how large, without the record and what was computed of it. */
const asked = (given: readonly unknown[]): string =>
  JSON.stringify(
    given
      .slice(1)
      .filter(
        (one) => typeof one === 'string' || (typeof one === 'object' && one !== null && ('widthMm' in one || 'side' in one)),
      ),
  );

/** The drawings that the chapters of one edition ask for, in their order. `known`: those that need not be drawn again. */
export async function sheetsOf(edition: Edition, known = new Map<string, unknown>()): Promise<readonly Sheet[]> {
  const sheets: Sheet[] = [];
  const watched = Object.fromEntries(
    Object.entries(projectDrawings).map(([kind, draw]) => [
      kind,
      (...given: unknown[]): unknown => {
        const key = `${kind} ${asked(given)}`;
        if (known.has(key)) return known.get(key);
        const made = (draw as (...given: unknown[]) => unknown)(...given);
        known.set(key, made);
        for (const drawing of drawingsIn(made)) sheets.push({ edition, kind: kind as keyof Drawings, drawing });
        return made;
      },
    ]),
  ) as unknown as Drawings;
  const book = await editionBook({
    assessment: judged('OV-021').assessment,
    edition,
    fingerprint: '0'.repeat(64),
    history: { commits: [] },
    photoFile: async () => undefined,
    drawings: watched,
  });
  for (const chapter of chaptersOf(book)) if (chapter.key === '') throw new Error('a chapter without a key');
  return sheets;
}

/** Of all editions. What two of them draw of the same thing in the same size is drawn once: an edition hides names, no metal and no wire. */
export async function allSheets(): Promise<readonly Sheet[]> {
  const known = new Map<string, unknown>();
  const sheets: Sheet[] = [];
  for (const edition of EDITIONS) sheets.push(...(await sheetsOf(edition, known)));
  return sheets;
}
