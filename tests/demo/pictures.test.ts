import { readFileSync } from 'node:fs';
import path from 'node:path';
import { deserialize, serialize } from 'node:v8';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { pictureWith } from '../../src/cli/picture-file.js';
import { runProgram } from '../../src/cli/program.js';
import { projectPoint } from '../../src/compute/camera/camera.js';
import { type CameraFitData, cameraFitData, cameraFitOf } from '../../src/compute/camera/fit.js';
import { locateInPhoto } from '../../src/compute/pictures/locate.js';
import { overlay } from '../../src/compute/pictures/overlay.js';
import { solvePhoto } from '../../src/compute/pictures/solve-photo.js';
import { sightedIn } from '../../src/compute/pictures/solved-photos.js';
import { textHeightMm, textWidthMm } from '../../src/drawing/text-width.js';
import { photoOverlay } from '../../src/drawing/views/photo-overlay.js';
import { distance } from '../../src/geometry/vector.js';
import { pictureFacts } from '../../src/store/picture-facts.js';
import { literalIo } from '../cli/literal-io.js';
import { lensOf, type View } from './make/scene.js';
import { DEMO, judged } from './store.js';

const VIEWS = parse(readFileSync(new URL('make/views.yaml', import.meta.url), 'utf8')) as Record<
  string,
  (View & { photo: string })[]
>;

async function solved(shell: string, id: string) {
  const { model } = judged(shell).assessment;
  const photo = model.shell.photos.find((one) => one.id === id);
  const facts = photo && (await pictureFacts(path.join(DEMO, 'shells', shell, 'photos', photo.file)));
  if (!photo || !facts) throw new Error(`no photo ${id}`);
  const view = VIEWS[shell]?.find((one) => one.photo === id);
  return { model, one: solvePhoto(model, photo, facts), lens: view && lensOf(view) };
}

describe('a picture of the demo', () => {
  it('is tied as before, to the last digit, where its camera was kept as plain data', async () => {
    const { model, one } = await solved('OV-021', 'PH-011');
    if (one.fit?.method !== 'camera') throw new Error('no camera');
    const kept = cameraFitOf(deserialize(serialize(cameraFitData(one.fit))) as CameraFitData);
    const found = locateInPhoto(model, one, [809, 577], 'CB-10');
    expect(found).toHaveProperty('at');
    expect(locateInPhoto(model, { ...one, fit: kept }, [809, 577], 'CB-10')).toEqual(found);
    const changed = [1e-3, 2e-3, -1e-3, 4, -5, 6, 1e-2, 1e-2];
    expect({ ...kept.with(changed), with: 0 }).toEqual({ ...one.fit.with(changed), with: 0 });
  });

  it.each(['PH-011', 'PH-013', 'PH-014', 'PH-053', 'PH-055'])(
    '%s is tied to where its lens stood, which no record says',
    async (id) => {
      const { one, lens } = await solved('OV-021', id);
      expect(one.usable).toBe(true);
      expect(one.leftOutMm).toBeLessThan(20);
      const { fit } = one;
      if (fit?.method !== 'camera' || !lens) throw new Error('no camera');
      // The renderer’s camera is the truth: its lens bends, which so few points cannot tell, so the place is good to a few centimetres.
      expect(distance(fit.camera.centre, lens.centre)).toBeLessThan(60);
    },
  );

  it('shows recorded things where the renderer painted them, and reads their places back', async () => {
    const { model, one, lens } = await solved('OV-021', 'PH-053');
    if (!lens) throw new Error('no lens');
    const made = overlay(model, one);
    const valve = model.shell.nodes.find(({ id }) => id === 'GV-1');
    const painted = valve?.at && projectPoint(lens, valve.at)?.px;
    const drawn = made.drawn.find(({ id }) => id === 'GV-1')?.stretches[0]?.px[0];
    if (!painted || !drawn) throw new Error('GV-1 is not drawn');
    expect(Math.hypot(drawn[0] - painted[0], drawn[1] - painted[1])).toBeLessThan(4);
    // On the belly’s skin under the valve: straight down the same line of sight.
    const found = locateInPhoto(model, one, painted, 'AP-10');
    if (!('at' in found)) throw new Error(found.why);
    expect(found.uncertaintyMm).toBeLessThan(25);
    const back = projectPoint(lens, found.at)?.px;
    expect(Math.hypot((back?.[0] ?? 0) - painted[0], (back?.[1] ?? 0) - painted[1])).toBeLessThan(4);
  });

  it('proves what is in its frame and plain to see, and nothing else', async () => {
    const { model, one } = await solved('OV-021', 'PH-053');
    const sighted = sightedIn(model, one);
    const of = (id: string) => sighted?.(model.shell.nodes.find((node) => node.id === id)?.at ?? [0, 0, 0], new Set([id]));
    expect(of('CW-T3')).toBe('seen');
    // Above the plywood floor, which was laid by then: the renderer leaves floors out, the record does not.
    expect(of('GV-1')).toEqual({ hiddenBy: 'CMP-03' });
    expect(of('BAT/MD')).toBe('outside');
  });

  it('with a wrong point names that one; with four points is of no use', async () => {
    const wrong = (await solved('OV-024', 'PH-004')).one;
    expect(wrong.usable).toBe(true);
    expect(wrong.points.flatMap(({ leftOut }, i) => (leftOut ? [wrong.photo.seen?.[i]?.is] : []))).toEqual(['FT-B']);
    const hopeless = (await solved('OV-024', 'PH-002')).one;
    expect([hopeless.usable, hopeless.notes[0]?.what, overlay((await solved('OV-024', 'PH-002')).model, hopeless).drawn]).toEqual(
      [false, 'too few', []],
    );
  });

  it('has labels that cover neither each other nor leave the picture', async () => {
    const { model, one } = await solved('OV-021', 'PH-053');
    const scene = photoOverlay(model, overlay(model, one), 180);
    const boxes = scene.marks.flatMap((mark) => {
      if (mark.kind !== 'text' || mark.layer !== 'labels') return [];
      const [half, high] = [textWidthMm(mark.text, mark.style) / 2, textHeightMm(mark.style) / 2];
      return [{ text: mark.text, x0: mark.at[0] - half, x1: mark.at[0] + half, y0: mark.at[1] - high, y1: mark.at[1] + high }];
    });
    expect(boxes.length).toBeGreaterThan(10);
    for (const [i, a] of boxes.entries()) {
      expect(a.x0 >= 0 && a.x1 <= scene.widthMm && a.y0 >= 0 && a.y1 <= scene.heightMm, a.text).toBe(true);
      for (const b of boxes.slice(i + 1))
        expect(a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1, `${a.text} ${b.text}`).toBe(false);
    }
    const bytes = readFileSync(path.join(DEMO, 'shells/OV-021/photos', one.photo.file));
    const { width, height, exif } = await sharp(await pictureWith(bytes, scene)).metadata();
    expect([width, height, exif]).toEqual([900, 675, undefined]);
  });

  it('is answered in JSON with the promised keys', async () => {
    const io = literalIo();
    expect(await runProgram(['overlay', 'OV-021', 'PH-053', '--store', DEMO, '--json', '--quiet'], io)).toBe(0);
    const json = JSON.parse(io.answer());
    expect(json).toMatchObject({ command: 'overlay', photo: 'PH-053', method: 'camera', usable: true });
    expect(Object.keys(json.points[0])).toEqual(['px', 'at_mm', 'residual_px', 'residual_mm', 'left_out']);
    expect(Object.keys(json.drawn[0])).toEqual(expect.arrayContaining(['id', 'kind', 'px']));
    const where = literalIo();
    expect(
      await runProgram(['locate', 'OV-021', 'PH-053', '450,300', '--on', 'BP-L-2', '--store', DEMO, '--json', '--quiet'], where),
    ).toBe(0);
    expect(JSON.parse(where.answer())).toMatchObject({
      command: 'locate',
      photo: 'PH-053',
      px: [450, 300],
      on: 'BP-L-2',
      uncertainty_mm: expect.any(Number),
    });
    const added = literalIo();
    const point = ['--on-photo', 'PH-053', '450,300', '--on', 'AP-10', '--into', 'dc-house', '--dry-run'];
    expect(
      await runProgram(
        ['add', 'node', '--shell', 'OV-021', '--id', 'NEW-1', '--kind', 'splice', ...point, '--store', DEMO, '--quiet'],
        added,
      ),
    ).toBe(0);
    expect(added.answer()).toMatch(/\{id: NEW-1, kind: splice, at: \[-?\d+ mm, -?\d+ mm, -?\d+ mm\], tolerance: \d+ mm\}/u);
    const bad = literalIo();
    expect(await runProgram(['locate', 'OV-024', 'PH-002', '450,300', '--on', 'BP-L-1', '--store', DEMO, '--quiet'], bad)).toBe(
      1,
    );
    expect(bad.answer()).toContain('mark 5 or more under `seen`');
  });
});
