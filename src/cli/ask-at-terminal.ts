import process from 'node:process';
import { LineAsker } from './line-asker.js';

/** Asks at the terminal of this process. Questions are messages: answers of the program alone go to standard output. */
export const asker = new LineAsker(process.stdin, process.stderr);
