/** Walks a printed book as a reader does: a line of the contents or of the index, then link after link, and never more than three. */
import type { ReadPdf } from './read-pdf.js';

export interface Trail {
  /** What the reader wants to know. */
  readonly question: string;
  /** Words under the links to follow, the first on a page of the contents or of the index. At most three. */
  readonly steps: readonly RegExp[];
  /** What the last page must say, or the one overleaf: all of it. */
  readonly answer: readonly RegExp[];
}

export interface Walk {
  /** Numbers of the pages, from the one of the first link to the one with the answer. */
  readonly pages: readonly number[];
  /** What went wrong, for the one who mends the book. */
  readonly lost?: string;
}

const FRONT = /^(?:Contents|Service access index|Index)\b/u;

/** The trail of pages of one question, or where it is lost. */
export function walk(pdf: ReadPdf, { steps, answer }: Trail): Walk {
  let from = pdf.pages.flatMap((page, at) => (FRONT.test(page.text.trim()) ? [at + 1] : []));
  const pages: number[] = [];
  for (const [step, words] of steps.entries()) {
    const found = from.flatMap((page) => (pdf.pages[page - 1]?.links ?? []).map((link) => ({ page, link })));
    const next = found.find(({ link }) => words.test(link.text.replace(/[,;.]$/u, '')) && link.page > 0);
    if (!next) return { pages, lost: `step ${step + 1}: no link ${words} on page ${from.slice(0, 3).join(', ')}` };
    if (step === 0) pages.push(next.page);
    pages.push(next.link.page);
    from = [next.link.page];
  }
  // A table that begins there may go on overleaf.
  const last = pages.at(-1) as number;
  const text = `${pdf.pages[last - 1]?.text} ${pdf.pages[last]?.text ?? ''}`;
  const missing = answer.find((one) => !one.test(text));
  return missing ? { pages, lost: `page ${pages.at(-1)} does not say ${missing}` } : { pages };
}

/** The questions of a service shop, each asked of one thing in the demo's finished shell. */
export const TRAILS: readonly Trail[] = [
  {
    question: 'Where does this wire go?',
    steps: [/^DC-25$/u, /^DC-25\/1$/u],
    answer: [/DC-25\/1[\s\S]*DC-25\/F/u, /DC-25\/S1/u, /Drawn to scale|Panels to follow it/u, /AP-\d/u],
  },
  { question: 'Where is its route drawn?', steps: [/^DC-25$/u, /^DC-25\/1$/u], answer: [/TC\b|RC-L\b/u] },
  {
    question: 'Which panel do I open for splice DC-25/S1?',
    steps: [/^DC-25\/S1$/u, /^AP-\d+$/u],
    answer: [/Fasteners \d+ screws/u, /Tool/u, /Torque/u, /Order/u, /Seal to renew/u],
  },
  { question: 'What fuse feeds it?', steps: [/^DC-25$/u], answer: [/DC-25\b/u, /press lamps/u, /fuse 10 A/u] },
  {
    question: 'What fuse feeds it, and what is before that?',
    steps: [/^Where are all fuses/u],
    answer: [/Every fuse, breaker/u, /Fed through/u],
  },
  {
    question: 'What is live if I open the main?',
    steps: [/^What is still live/u],
    answer: [/Panel still fed by/u, /Still live at the switch/u, /To make it dead switch off every one/u, /BAT\/MD/u],
  },
  {
    question: 'Where are all fuses?',
    steps: [/^Where are all fuses/u],
    answer: [/Where the fuses, breakers and other protection are/u],
  },
  {
    question: 'Where is the valve WV-1?',
    steps: [/^WV-1$/u],
    answer: [/WV-1/u, /tank shut-off/u, /normally open/u, /exposed|by hand/u],
  },
  {
    question: 'How do I drain it for frost?',
    steps: [/^How do I winterize/u],
    answer: [/Draining against frost/u, /until no more comes/u, /CW-D1|WV-/u],
  },
  {
    question: 'Where may I drill, and how deep?',
    steps: [/^Where may I drill/u],
    answer: [/Before drilling/u, /mm|in/u],
  },
  {
    question: 'How long may a screw be?',
    steps: [/^how deep$/u],
    answer: [/How long a screw/u, /Longest safe screw/u, /IP-L-1|CL-1/u],
  },
  { question: 'What is behind panel AP-08?', steps: [/^AP-08$/u], answer: [/AP-08/u, /Behind it/u, /CW-D1/u] },
  {
    question: 'Where may I jack, lift, tie down, tow?',
    steps: [/^Where may I jack/u],
    answer: [/LIFT-1/u, /36 kN/u, /Jack/u, /not declared/u],
  },
  { question: 'What may I hang here?', steps: [/^What may I hang/u], answer: [/MOUNT-1/u, /24 kN/u, /Marrowleigh-Ossby/u] },
  {
    question: 'May I walk on the roof?',
    steps: [/^May I walk/u],
    answer: [/ROOF-1/u, /2\.5 kN/u, /Trusses stand/u, /solar/u],
  },
  {
    question: 'What alloy and filler is this, may I weld here?',
    steps: [/^What alloy and filler/u],
    answer: [/6061-T6/u, /ER5356|ER4043/u, /Disconnect/u, /Adhesive behind/u],
  },
  {
    question: 'What is the torque?',
    steps: [/^What is the torque/u],
    answer: [/U-bolt/u, /14[89] ft·lb|15\d ft·lb/u, /Electrical: terminals/u],
  },
  {
    question: 'What pressure was it tested to?',
    steps: [/^What pressure or voltage/u],
    answer: [/TS-00\d/u, /Limit/u, /Measured/u],
  },
  {
    question: 'What does each axle owe?',
    steps: [/^What does each axle/u],
    answer: [/steer/u, /Limit/u, /Margin/u],
  },
  { question: 'At what tyre pressure?', steps: [/^t[iy]re pressure$/u], answer: [/Tire pressure/u, /GAWR/u, /120/u] },
  { question: 'Was it repaired before?', steps: [/^Was this repaired/u], answer: [/NC-0\d/u, /AM-0\d/u] },
  { question: 'Where will a leak show?', steps: [/^A stain or a leak/u], answer: [/Shows at/u, /BP-L-1/u, /CW-T1/u] },
  {
    question: 'The slide-out sticks?',
    steps: [/^The slide-out sticks/u],
    answer: [/handle/u, /2,000 psi/u, /ISO VG 32/u, /DC-26 fuse 80 A/u],
  },
  {
    question: 'May I plug in a heater of 1,500 W?',
    steps: [/^May I plug this in/u],
    answer: [/AC-01/u, /2,400.?W/u, /1,920.?W/u],
  },
  { question: 'What is this red and black wire?', steps: [/^What is this wire/u], answer: [/red\/black/u, /DC-30/u, /TC/u] },
  {
    question: 'How is a cracked skin replaced?',
    steps: [/^How do I replace a cracked skin/u],
    answer: [/5052-H32/u, /0\.100 in/u, /two-part structural/u, /30 min/u, /24 h/u],
  },
  { question: 'How high is it?', steps: [/^How high, long and wide/u], answer: [/12 ft 5 in/u] },
  {
    question: 'Is there a spare way or cord?',
    steps: [/^Is there a spare conduit/u],
    answer: [/TC/u, /two 3\/4 in conduits/u, /cord/iu, /Free/u],
  },
  { question: 'Where are the earths?', steps: [/^Where are the grounds/u], answer: [/ES-1/u, /AP-01/u, /washer/iu] },
  {
    question: 'Which wires are abandoned or spare?',
    steps: [/^Which wires are spare/u],
    answer: [/Spare and abandoned runs/u, /DC-SP/u, /abandoned/u],
  },
  {
    question: 'What changed since the book?',
    steps: [/^What was changed after/u],
    answer: [/AM-02/u, /second solar regulator/u],
  },
  {
    question: 'In an emergency?',
    steps: [/^In an emergency/u],
    answer: [/Gas/u, /BAT\/MD|battery disconnect/u, /Do not cut/u, /shore/u],
  },
  {
    question: 'Whom do I call?',
    steps: [/^Who do I call/u],
    answer: [/Ondervale Coachcraft/u, /chassis maker/iu, /Appliances/u, /signed off/u],
  },
  {
    question: 'Is this the right book?',
    steps: [/^Is this the right book/u],
    answer: [/Fingerprint \( ?SHA-256/u, /Revision/u, /OV-021/u, /1Z9FBV5T7Z0418021/u],
  },
];
