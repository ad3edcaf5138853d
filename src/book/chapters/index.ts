import type { Book, Chapter, ChapterMaker } from '../book.js';
import type { Edition } from '../input.js';
import { ownerPanels } from '../owner/access.js';
import { coachPage } from '../owner/coach.js';
import { drill } from '../owner/drill.js';
import { ownerEmergency } from '../owner/emergency.js';
import { fuses } from '../owner/fuses.js';
import { keep } from '../owner/keep.js';
import { ownerLoading } from '../owner/loading.js';
import { papers } from '../owner/papers.js';
import { parked } from '../owner/parked.js';
import { past } from '../owner/past.js';
import { road } from '../owner/road.js';
import { shutoffs } from '../owner/shutoffs.js';
import { things } from '../owner/things.js';
import { winter } from '../owner/winter.js';
import { answers } from './answers.js';
import { arrangement } from './arrangement.js';
import { cover } from './cover.js';
import { emergencyChapter } from './emergency.js';
import { equipment } from './equipment.js';
import { findings } from './findings.js';
import { glance } from './glance.js';
import { history } from './history.js';
import { nodrill } from './nodrill.js';
import { whatIsOpen } from './open.js';
import { ownerIndex } from './owner-index.js';
import { panels } from './panels.js';
import { parts } from './parts.js';
import { photos } from './photos.js';
import { reading } from './reading.js';
import { serviceIndex } from './service-index.js';
import { servicesChapter } from './services.js';
import { skins } from './skins.js';
import { structure } from './structure.js';
import { tests } from './tests.js';
import { weightsChapter } from './weights.js';
import { welds } from './welds.js';

type Makers = readonly (ChapterMaker | ((book: Book) => readonly Chapter[]))[];

/** By trade, last: what the shell is made of and how that was done and proved. */
const TRADE: Makers = [weightsChapter, tests, structure, welds, skins, equipment, photos, findings, history];
/** The same for a technician: like parts once, and no weld by itself. */
const FOR_SERVICE: Makers = [weightsChapter, tests, parts, skins, equipment, photos, findings, history];

/** Which chapters each edition has: by question and place first, by system second, by trade last. */
const ORDER: Readonly<Record<Edition, Makers>> = {
  owner: [
    cover,
    ownerEmergency,
    coachPage,
    road,
    ownerLoading,
    parked,
    fuses,
    shutoffs,
    winter,
    ownerPanels,
    drill,
    keep,
    papers,
    things,
    past,
    ownerIndex,
  ],
  service: [
    cover,
    emergencyChapter,
    serviceIndex,
    reading,
    glance,
    answers,
    arrangement,
    panels,
    nodrill,
    servicesChapter,
    ...FOR_SERVICE,
  ],
  shop: [
    cover,
    whatIsOpen,
    reading,
    emergencyChapter,
    glance,
    answers,
    serviceIndex,
    arrangement,
    panels,
    nodrill,
    servicesChapter,
    ...TRADE,
  ],
};

/** One after the other, as they are made. */
export function* chaptersOf(book: Book): Generator<Chapter> {
  for (const make of ORDER[book.edition]) {
    const made = make(book);
    if ('key' in made) yield made;
    else yield* made;
  }
}
