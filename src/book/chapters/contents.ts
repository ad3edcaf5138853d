import { anchor } from '../../model/anchor.js';
import type { Book, Chapter } from '../book.js';

export interface Heading {
  readonly level: number;
  readonly to: string;
  readonly html: string;
}

interface Question {
  readonly ask: string;
  /** Anchors, the first that the book has is used. */
  readonly to: readonly string[];
}

/** What readers ask most, by the words that they use. */
const QUESTIONS: readonly Question[] = [
  { ask: 'Gas, batteries, mains: what do I shut off, and where?', to: ['c-emergency'] },
  { ask: 'Which panel do I open for a splice, valve or fuse?', to: ['c-index'] },
  { ask: 'What is behind this panel before I reach in?', to: ['c-panels'] },
  { ask: 'What protects this circuit, and where does its wire go?', to: ['c-service-dc', 'c-service-ac', 'c-index'] },
  { ask: 'Where is the water shut off and drained?', to: ['c-service-water', 'c-care', 'c-emergency'] },
  { ask: 'Where must I not drill?', to: ['c-nodrill'] },
  { ask: 'What may each axle carry, and what does it carry now?', to: ['h-axles', 'c-weights', 'c-loading'] },
  { ask: 'How much may I put in a bay?', to: ['h-bays', 'c-weights'] },
  { ask: 'Where may I lift, jack or tow?', to: ['h-declared', 'c-glance'] },
  { ask: 'What alloy and filler is this, and may I weld it?', to: ['h-materials', 'c-structure', 'c-materials'] },
  { ask: 'What torque is it, and when is it checked again?', to: ['h-torque', 'c-care'] },
  { ask: 'What was repaired, or changed after delivery?', to: ['h-amendments', 'c-changes', 'c-history'] },
  { ask: 'Is this book complete and genuine?', to: ['h-genuine', 'c-changes'] },
];

/** The contents, made from the headings that the chapters really have. */
export function contentsOf(book: Book, headings: readonly Heading[]): Chapter {
  const known = new Set(headings.map((heading) => heading.to));
  const questions = QUESTIONS.flatMap(({ ask, to }) => {
    const found = to.find((one) => known.has(one));
    return found ? [{ ask, to: found }] : [];
  });
  return {
    key: 'contents',
    title: 'Contents',
    template: 'contents',
    data: {
      questions,
      headings: headings.map((one) => ({ ...one, chapter: one.level === 1 })),
      shell: anchor(book.assessment.model.shell.id),
    },
  };
}
