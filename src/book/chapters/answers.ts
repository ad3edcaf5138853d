import { whoAnswers } from '../answers/contacts.js';
import { frost } from '../answers/frost.js';
import { hanging, lifting, roof, roofLines } from '../answers/loads.js';
import { live, protections } from '../answers/protections.js';
import { repairs } from '../answers/repairs.js';
import { torques } from '../answers/torques.js';
import { drainHoles, leaks, outsideHoles } from '../answers/water.js';
import { earths, spareWays, unused } from '../answers/ways.js';
import { weldingOn } from '../answers/welding.js';
import type { ChapterMaker } from '../book.js';
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
      protections: protections(book),
      lifting: lifting(book),
      hanging: hanging(book),
      roof: roof(book),
      roofLines: roofLines(book),
      ...(technician
        ? {
            live: live(book),
            torques: torques(book),
            earths: earths(book),
            spareWays: spareWays(book),
            unused: unused(book),
            leaks: leaks(book),
            drainHoles: drainHoles(book),
            outsideHoles: outsideHoles(book),
            frost: frost(book),
            trapped: trappedTable(book, wet),
            welding: weldingOn(book),
            repairs: repairs(book),
            who: whoAnswers(book),
          }
        : {}),
    },
  };
};
