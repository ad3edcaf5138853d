import type { Book, Chapter, ChapterMaker } from '../book.js';
import type { Edition } from '../input.js';
import { answers } from './answers.js';
import { arrangement } from './arrangement.js';
import { care } from './care.js';
import { changes } from './changes.js';
import { contacts } from './contacts.js';
import { cover } from './cover.js';
import { emergency } from './emergency.js';
import { equipment } from './equipment.js';
import { findings } from './findings.js';
import { glance } from './glance.js';
import { history } from './history.js';
import { materials } from './materials.js';
import { nodrill } from './nodrill.js';
import { ownerIndex } from './owner-index.js';
import { panels, panelsOverview } from './panels.js';
import { photos } from './photos.js';
import { reading } from './reading.js';
import { serviceIndex } from './service-index.js';
import { services } from './services.js';
import { skins } from './skins.js';
import { structure } from './structure.js';
import { tests } from './tests.js';
import { loading, weights } from './weights.js';
import { welds } from './welds.js';

type Makers = readonly (ChapterMaker | ((book: Book) => readonly Chapter[]))[];

/** By trade, last: what the shell is made of and how that was done and proved. */
const TRADE: Makers = [weights, tests, structure, welds, skins, equipment, photos, findings, history];

/** Which chapters each edition has: by question and place first, by system second, by trade last. */
const ORDER: Readonly<Record<Edition, Makers>> = {
  owner: [
    cover,
    reading,
    emergency,
    glance,
    arrangement,
    loading,
    answers,
    panelsOverview,
    care,
    nodrill,
    materials,
    equipment,
    changes,
    contacts,
    ownerIndex,
  ],
  service: [cover, serviceIndex, reading, emergency, glance, answers, arrangement, panels, nodrill, services, ...TRADE],
  shop: [cover, reading, emergency, glance, answers, serviceIndex, arrangement, panels, nodrill, services, ...TRADE],
};

/** One after the other, as they are made. */
export function* chaptersOf(book: Book): Generator<Chapter> {
  for (const make of ORDER[book.edition]) {
    const made = make(book);
    if ('key' in made) yield made;
    else yield* made;
  }
}
