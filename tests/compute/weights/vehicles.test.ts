import { describe, expect, it } from 'vitest';
import { weights } from '../../../src/compute/weights/index.js';
import type { Weights } from '../../../src/compute/weights/types.js';
import { axle, bareOf, bay, item, seat, takeOffOf, tank, twoAxles, vehicle } from './support.js';

const loads = (answer: Weights, name: string) =>
  answer.conditions.find((one) => one.name === name)?.axles.map((one) => Number(one.loadKg.toFixed(6)));
const left = (answer: Weights) => answer.budget.map((one) => [one.axle, one.condition, one.leftKg]);

// Whole vehicles through every figure, by the lever rule on paper: statics, sum of moments. The tag coach stands in conditions.test.ts.

describe('a two-axle shell', () => {
  // Wheelbase 5,000 mm. Of 1,000 kg at 3,000 mm the front takes 2/5; of water at 4,000 mm 1/5; a bay at 6,000 mm lifts it by 1/5.
  const answer = () =>
    weights(
      vehicle(
        {
          gvwrKg: 12000,
          gcwrKg: 16000,
          axles: twoAxles().map((one) => ({ ...one, gawrKg: one.id === 'front' ? 4500 : 8000 })),
          bare: bareOf({ front: 3000, rear: 4000 }),
        },
        {
          tanks: [tank('FRESH', 'water', 200, 4000)],
          seats: [seat('driver', 0), seat('passenger', 0)],
          bays: [bay('B1', 6000, 300)],
        },
      ),
      takeOffOf([item('C', 1000, 3000)]),
    );
  it('stands as the lever rule says', () => {
    expect(loads(answer(), 'unladen')).toEqual([3400, 4600]);
    expect(loads(answer(), 'occupants')).toEqual([3536, 4600]);
    expect(loads(answer(), 'water')).toEqual([3576, 4760]);
    expect(loads(answer(), 'loaded')).toEqual([3516, 5120]);
  });
  it('may carry 12,000 − 8,000 kg, less two seats and 200 kg of water', () => {
    expect([answer().uvwKg, answer().occcKg, answer().cccKg]).toEqual([8000, 4000, 3664]);
  });
  it('leaves 16,000 − 8,636 kg of its GCWR for a trailer', () => {
    expect(answer().trailerKg).toBeCloseTo(7364, 9);
  });
  it('leaves the next trade what is under 90 % of each rating and its uncertainty, in the worst condition for that axle', () => {
    // Each bare reading ± 1 % as a rectangle, k = 2: 34.64 kg of 3,000, 46.19 kg of 4,000.
    expect(left(answer())).toEqual([
      ['front', 'water', expect.closeTo(474 - 34.641, 3)],
      ['rear', 'loaded', expect.closeTo(2080 - 46.188, 3)],
    ]);
  });
  it('is judged by its bare chassis, each reading ± 1 %', () => {
    // Front: 1 % of 3,000 kg as a rectangle, k = 2: 34.64 kg.
    const front = answer().conditions.find((one) => one.name === 'unladen')?.axles[0];
    expect(front).toMatchObject({ verdict: 'within', uncertaintyKg: expect.closeTo((2 * 30) / Math.sqrt(3), 6) });
  });
});

describe('a tandem shell', () => {
  // Two drive axles at 6,000 and 7,300 mm share alike: one support at 6,650 mm.
  const tyres = (count: number, loadIndex: readonly number[]) => ({ tyres: { count, loadIndex } });
  const answer = () =>
    weights(
      vehicle(
        {
          gvwrKg: 24000,
          axles: [
            axle('steer', 0, { gawrKg: 7300, steered: true, ...tyres(2, [152]) }),
            axle('drive 1', 6000, { gawrKg: 9500, dual: true, ...tyres(4, [148, 145]) }),
            axle('drive 2', 7300, {
              gawrKg: 9500,
              dual: true,
              share: { with: 'drive 1', fraction: 0.5 },
              ...tyres(4, [148, 145]),
            }),
          ],
          bare: bareOf({ steer: 4000, 'drive 1': 3500, 'drive 2': 3500 }),
        },
        {
          tanks: [tank('FRESH', 'water', 250, 1330)],
          seats: [seat('driver', 0)],
          bays: [bay('B1', 8645, 500)],
        },
      ),
      takeOffOf([item('C', 1330, 3325)]),
    );
  it('stands as the lever rule says, half of the group on each drive axle', () => {
    expect(loads(answer(), 'unladen')).toEqual([4665, 3832.5, 3832.5]);
    expect(loads(answer(), 'water')).toEqual([4933, 3857.5, 3857.5]);
    // The bay stands at 1.3 of the way: 650 of its 500 kg on the group, 150 off the front.
    expect(loads(answer(), 'loaded')).toEqual([4783, 4182.5, 4182.5]);
  });
  it('is limited by the front tyres: load index 152 is 3,550 kg', () => {
    // LI rows: ISO 4223-1
    expect(answer().ratings.map((one) => [one.limitKg, one.limitedBy])).toEqual([
      [7100, 'tyres'],
      [9500, 'gawr'],
      [9500, 'gawr'],
    ]);
  });
  it('counts its drive axles as a tandem on the road: 34,000 lb', () => {
    // BRG-02
    const tandem = answer().roadLimits.find((one) => one.kind === 'tandem');
    expect(tandem).toMatchObject({ axles: ['drive 1', 'drive 2'], loadKg: 8365, limitKg: expect.closeTo(15422.14, 2) });
  });
  it('splits 100 kg over the first drive axle: 9.77 to the front, the rest alike', () => {
    // 1 − 6000/6650 = 0.09774
    const at = answer().influence.find(({ xMm }) => xMm === 6000)?.addsKg;
    expect(at?.steer).toBeCloseTo(9.7744, 4);
    expect(at?.['drive 1']).toBeCloseTo(45.1128, 4);
    expect(at?.['drive 2']).toBeCloseTo(45.1128, 4);
  });
});

describe('a twin-steer shell', () => {
  // Steered axles at 0 and 1,800 mm share alike: one support at 900 mm; the drive axle at 7,000 mm; base 6,100 mm.
  const answer = () =>
    weights(
      vehicle(
        {
          gvwrKg: 13000,
          axles: [
            axle('steer 1', 0, { gawrKg: 3500, steered: true }),
            axle('steer 2', 1800, { gawrKg: 3500, steered: true, share: { with: 'steer 1', fraction: 0.5 } }),
            axle('drive', 7000, { gawrKg: 5500 }),
          ],
          bare: bareOf({ 'steer 1': 2500, 'steer 2': 2500, drive: 4000 }),
        },
        { seats: [seat('driver', 900), seat('passenger', 900)], bays: [bay('B1', 8220, 1000)] },
      ),
      takeOffOf([item('C', 610, 3950)]),
    );
  it('stands as the lever rule says, half of the pair on each', () => {
    expect(loads(answer(), 'unladen')).toEqual([2652.5, 2652.5, 4305]);
    expect(loads(answer(), 'occupants')).toEqual([2720.5, 2720.5, 4305]);
    // The bay stands at 1.2 of the base: 1,200 of its 1,000 kg on the drive axle, 200 off the pair.
    expect(loads(answer(), 'loaded')).toEqual([2620.5, 2620.5, 5505]);
  });
  it('is over on the drive axle by 5 kg, loaded to its stated limit', () => {
    const drive = answer().conditions.find((one) => one.name === 'loaded')?.axles[2];
    expect(drive).toMatchObject({ verdict: 'over', marginKg: expect.closeTo(-5, 6) });
  });
  it('so its bay may take 995.8 kg: 1,195 left on the drive axle ÷ 1.2', () => {
    expect(answer().bays[0]).toMatchObject({
      allowanceKg: expect.closeTo(995.833, 3),
      limitedBy: expect.stringContaining('drive'),
    });
  });
  it('counts both steered axles in the share that steers', () => {
    expect(answer().conditions.find((one) => one.name === 'loaded')?.steerShare).toBeCloseTo(5241 / 10746, 9);
  });
});
