/** `tsx tests/support/keep-demo.ts FOLDER`: the demo that was printed in FOLDER, with what it said in `answer` and `messages`, for the tests. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { keepDemo } from './printed-demo.js';

const [top = '.'] = process.argv.slice(2);
const said = (name: string): string => readFileSync(path.join(top, name), 'utf8');
keepDemo(top, { status: 0, answer: said('answer'), messages: said('messages') });
