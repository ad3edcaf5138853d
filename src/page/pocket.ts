/** The page for a phone: search, the coach to tap, ticks, loading and notes. Without this script the page is whole, and only longer. */
import { dataOf } from './dom.js';
import { openKeep } from './keep.js';
import { sayAge } from './pocket/age.js';
import { type Coach, coach } from './pocket/coach.js';
import { findAsTyped } from './pocket/find.js';
import { showGauges } from './pocket/gauges.js';
import { takeNotes } from './pocket/notes.js';
import { unfoldOnPaper } from './pocket/on-paper.js';
import { route } from './pocket/router.js';
import { screenStore } from './pocket/screen-store.js';
import { keepTicks } from './pocket/ticks.js';
import { chooseUnits } from './pocket/units.js';
import { type NearData, type PocketData, searchEntries } from './pocket-data.js';
import { wordsFrom } from './words.js';

const data = dataOf<PocketData>('data');
const words = wordsFrom(data.words);
const keep = openKeep(`shellbook ${data.shell} ${data.edition} `);
/** Steps of another record are other steps. */
const keepOfRecord = openKeep(`shellbook ${data.fingerprint} `);

const store = screenStore();
const units = chooseUnits(data, keep, store);
const notes = takeNotes(data, keep, words);
let coachDrawings: Coach | undefined;
const drawings = (): Coach => {
  coachDrawings ??= coach(data, () => dataOf<NearData>('near'), { words, units });
  return coachDrawings;
};
let spot: readonly [number, number] | undefined;
document.addEventListener('click', ({ target }) => {
  const link = target instanceof Element ? target.closest<HTMLElement>('a.spot') : null;
  const ring = link?.querySelector('circle');
  spot = ring ? [ring.cx.baseVal.value, ring.cy.baseVal.value] : undefined;
});
keepTicks(keepOfRecord, store);
route(store, (id) => {
  if (id === 'coach') drawings().show('plan');
  else if (id.startsWith('v-')) drawings().show(id.slice(2), spot);
  spot = undefined;
  notes.under(id);
});
findAsTyped(searchEntries(data), words, store);
showGauges(data, { words, units });
unfoldOnPaper();
sayAge(data.date, data.oldAfterMonths, words);
