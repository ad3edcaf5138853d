import { readFileSync } from 'node:fs';
import path from 'node:path';
import v8 from 'node:v8';
import vm from 'node:vm';
import sharp from 'sharp';
import { overlay } from '../../src/compute/pictures/overlay.js';
import { solvePhoto } from '../../src/compute/pictures/solve-photo.js';
import { pictureFacts } from '../../src/store/picture-facts.js';
import { DEMO, judged } from '../demo/store.js';
import { measureWaiting } from './measure.js';
import { ratio, tell, told } from './tell.js';

const ROUNDS = 7;
/** As a phone takes it: the demo's own are small, and are scaled up so that decoding costs what it does. */
const PHONE = { width: 4032, height: 3024 };
const THUMBNAIL_PX = 320;
const MANY = 1000;
/** Pictures of one run: the next is opened while this one is drawn on, as when a whole folder is. */
const FOLDER = 12;
const MB = 1024 * 1024;

/** What it costs to tie pictures to the coach and draw on them, beside opening them at all. */
export async function benchPictures(): Promise<void> {
  const { model } = judged('OV-021').assessment;
  const photo = model.shell.photos.find(({ id }) => id === 'PH-053');
  if (!photo) throw new Error('The demo has no photo PH-053');
  const file = readFileSync(path.join(DEMO, 'shells/OV-021/photos', photo.file));
  const facts = await pictureFacts(file);
  if (!facts) throw new Error('PH-053 is no picture');
  const large = await sharp(file)
    .resize({ ...PHONE, fit: 'fill' })
    .jpeg({ quality: 85 })
    .toBuffer();
  const thumbnail = (): Promise<Buffer> => sharp(large).rotate().resize(THUMBNAIL_PX).raw().toBuffer();
  const whole = (): Promise<Buffer> => sharp(large).raw().toBuffer();
  const solved = solvePhoto(model, photo, facts);
  const list = await measureWaiting(
    {
      'decode a thumbnail': thumbnail,
      'tie a picture to the coach': () => solvePhoto(model, photo, facts),
      [`decode ${FOLDER} pictures`]: async () => {
        for (let i = 0; i < FOLDER; i++) await whole();
      },
      [`decode ${FOLDER} pictures, solve and overlay each`]: async () => {
        let next = whole();
        for (let i = 0; i < FOLDER; i++) {
          await next;
          if (i + 1 < FOLDER) next = whole();
          overlay(model, solvePhoto(model, photo, facts));
        }
      },
    },
    ROUNDS,
  );
  tell(`Pictures, median of ${ROUNDS}`, list);
  ratio(list, 'tie a picture to the coach', 'decode a thumbnail', 1);
  ratio(list, `decode ${FOLDER} pictures, solve and overlay each`, `decode ${FOLDER} pictures`, 1.5);
  // Without it what nobody holds any more would be counted as kept.
  v8.setFlagsFromString('--expose-gc');
  const collect = vm.runInNewContext('gc') as () => void;
  collect();
  const before = process.memoryUsage().heapUsed;
  for (let i = 0; i < MANY; i++) overlay(model, solved);
  collect();
  told(`heap after ${MANY} overlays, MB more`, Math.max(0, process.memoryUsage().heapUsed - before) / MB, 50);
}
