import { wetAboveCeiling } from '../../query/topics/rain.js';
import { whoAnswers } from '../answers/contacts.js';
import { frostAnswer } from '../answers/frost.js';
import { hangingAnswer, liftingAnswer, roofAnswer, roofLines } from '../answers/loads.js';
import { liveAnswer, protectionsAnswer } from '../answers/protections.js';
import { rainAnswer } from '../answers/rain.js';
import { coloursAnswer, skinRepairAnswer } from '../answers/repair.js';
import { repairsAnswer } from '../answers/repairs.js';
import { torquesAnswer } from '../answers/torques.js';
import { drainHoles, leaksAnswer, outsideHoles } from '../answers/water.js';
import { earthsAnswer, spareSpacesAnswer, spareWaysAnswer, unusedAnswer } from '../answers/ways.js';
import { weldingOn } from '../answers/welding.js';
import type { ChapterMaker } from '../book.js';
import { powerAnswer, slidesAnswer } from '../owner/parked.js';
import { trappedTable } from './services.js';

/** What is asked across all systems at once, each in one place: every fuse, every torque, what stays live, where a leak shows … */
export const answers: ChapterMaker = (book) => {
  const { shell } = book.assessment.model;
  const wet = new Set(shell.runs.filter((run) => ['water', 'drain'].includes(run.medium)).map((run) => run.id));
  const technician = book.edition !== 'owner';
  return {
    key: 'answers',
    title: 'Across all systems',
    template: 'answers',
    data: {
      technician,
      protections: protectionsAnswer(book),
      lifting: liftingAnswer(book),
      hanging: hangingAnswer(book),
      roof: roofAnswer(book),
      roofLines: roofLines(book),
      ...(technician
        ? {
            live: liveAnswer(book),
            torques: torquesAnswer(book),
            earths: earthsAnswer(book),
            spareWays: spareWaysAnswer(book),
            spareSpaces: spareSpacesAnswer(book),
            unused: unusedAnswer(book),
            rain: rainAnswer(book),
            overhead: wetAboveCeiling(book.assessment.model),
            leaks: leaksAnswer(book),
            drainHoles: drainHoles(book),
            outsideHoles: outsideHoles(book),
            frost: frostAnswer(book),
            trapped: trappedTable(book, wet),
            welding: weldingOn(book),
            repairs: repairsAnswer(book),
            colours: coloursAnswer(book),
            skinRepair: skinRepairAnswer(book),
            slides: slidesAnswer(book),
            power: powerAnswer(book),
            who: whoAnswers(book),
          }
        : {}),
    },
  };
};
