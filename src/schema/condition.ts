import { z } from 'zod';
import { found } from '../source/shown.js';
import { type Fields, field } from './fields.js';

const occupant = (f: Fields) =>
  z.union([
    f.id('Seat'),
    z.strictObject({ seat: f.id('Seat'), mass: f.quantity('mass', 'Mass of the person', 'above zero').optional() }),
  ]);

/** A tank’s level, or `up` or `down` for a liftable axle. */
const levelOrLift = (f: Fields) =>
  field<number | 'up' | 'down'>(
    (typed, say) => {
      if (typed === 'up' || typed === 'down') return typed;
      if (typeof typed !== 'string' && typeof typed !== 'number') {
        return void say({ found: found(typed), expected: 'a level as `3/4` for a tank, `up` or `down` for an axle' });
      }
      return f.readLevel(typed, say);
    },
    'Level of a tank by its id or its contents, as fuel: 3/4; up or down for a liftable axle',
    { type: ['string', 'number'] },
  );

/** What was in and on the vehicle. */
export const condition = (f: Fields) =>
  z
    .object({
      occupants: z.array(occupant(f)).meta({ description: 'Seats taken: 68 kg each, or {seat: driver, mass: 82 kg}' }).optional(),
      aboard: z
        .array(
          z.strictObject({
            name: f.text('What it is'),
            mass: f.quantity('mass', 'Its mass'),
            at: f.position('Where it stood'),
          }),
        )
        .meta({ description: 'What was aboard and does not belong to the coach' })
        .optional(),
      missing: f.ids('Components that were not yet in').optional(),
      bays: z.record(z.string(), f.quantity('mass', 'Load')).meta({ description: 'Load in each bay' }).optional(),
    })
    .catchall(levelOrLift(f))
    .meta({ description: 'What was in and on the vehicle: levels of tanks by name, occupants, what was aboard or missing' });

const reading = (f: Fields) => {
  const end = (help: string) => f.quantity('mass', help);
  const whole = end('The whole axle, where it was read as well').optional();
  const ends = z.strictObject({ left: end('Left end'), right: end('Right end'), axle: whole });
  return z.union([f.quantity('mass', 'The whole axle'), ends]);
};

/** Axle id to its reading. */
export const readings = (f: Fields) =>
  z.record(z.string(), reading(f)).meta({ description: 'Scale reading of each axle: the whole, or {left: …, right: …}' });
