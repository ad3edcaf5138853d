import type { Assessment } from '../../assess.js';
import { OCCUPANT_KG, OCCUPANT_LB } from '../../model/occupant.js';
import { number } from '../../quantity/format.js';
import { KG_PER_LB, PA_PER_PSI } from '../../quantity/units.js';
import type { Axle } from '../../records/index.js';

export interface WeightFigure {
  readonly name: string;
  readonly value: string;
  readonly how: string;
}

/** Below this a figure is whole: what a conversion there and back leaves behind. */
const DUST = 1e-6;
const NOT_KNOWN = 'not verified';

const down = (value: number): string => number(Math.floor(value + DUST));
const up = (value: number): string => number(Math.ceil(value - DUST));
const pair = (kg: number, lb: number): string => `${number(kg)} kg (${number(lb)} lb)`;
const both = (round: (value: number) => string, kg: number): string => `${round(kg)} kg (${round(kg / KG_PER_LB)} lb)`;

/** Wheels’ rating, by wheel or by axle; nothing where none is recorded. */
function wheelFigure(axle: Axle, count: number | undefined): readonly WeightFigure[] {
  if (axle.wheelsKg === undefined) return [];
  const rating = both(down, axle.wheelsKg);
  return [
    {
      name: `Wheels, ${axle.id}`,
      value: count === undefined ? `${rating} for the axle` : `${count} × ${rating}`,
      how: axle.wheelsBy === undefined ? 'as recorded, taken as the rating of each wheel' : 'as recorded',
    },
  ];
}

/**
 * The figures that the certifying maker needs for the vehicle's weight labels, in kilograms and pounds, each unit rounded by itself to
 * the safe side: what may be loaded and what a part may carry down, what is already there and pressures up.
 */
export function weightFigures({ model: { shell }, figures: { weights } }: Assessment): readonly WeightFigure[] {
  const { chassis } = shell;
  const { label, uvwKg } = weights;
  const belted = shell.seats.filter((seat) => seat.belted).length;
  return [
    {
      name: 'Gross vehicle weight rating (GVWR)',
      value: chassis.gvwrKg === undefined ? 'not recorded' : both(down, chassis.gvwrKg),
      how: 'as the chassis maker’s document states it',
    },
    ...chassis.axles.flatMap((axle) => {
      const { tyres } = axle;
      const pressure = tyres?.inflationPa;
      return [
        {
          name: `Axle rating (GAWR), ${axle.id}`,
          value: axle.gawrKg === undefined ? 'not recorded' : both(down, axle.gawrKg),
          how: 'as the chassis maker’s document states it',
        },
        {
          name: `Tires, ${axle.id}`,
          value: [
            tyres ? `${tyres.count} × ${tyres.size ?? 'size not recorded'}${axle.dual ? ', dual' : ''}` : 'not recorded',
            pressure === undefined
              ? 'cold pressure not recorded'
              : `${up(pressure / 1000)} kPa (${up(pressure / PA_PER_PSI)} psi) cold`,
          ].join(', '),
          how: 'as recorded; pressure rounded up',
        },
        ...wheelFigure(axle, weights.ratings.find((one) => one.axle === axle.id)?.wheelCount),
      ];
    }),
    {
      name: 'Unloaded vehicle weight (UVW)',
      value: label ? pair(label.uvwKg, label.uvwLb) : uvwKg === undefined ? NOT_KNOWN : both(up, uvwKg),
      how: {
        ticket: `weighed, ticket ${(weights.basisTickets.length > 0 ? weights.basisTickets : [weights.basisTicket]).join(', ')}, rounded up`,
        prediction: 'predicted from parts, never weighed: not verified',
        none: 'nothing is weighed or recorded to add up',
      }[weights.basis],
    },
    {
      name: 'Occupants and cargo together, at most (OCCC)',
      value: label ? pair(label.occcKg, label.occcLb) : NOT_KNOWN,
      how: 'GVWR less UVW, rounded down',
    },
    {
      name: 'Seats with belts',
      value: label ? `${label.seats}, together ${pair(label.seatsKg, label.seatsLb)}` : String(belted),
      how: `${OCCUPANT_KG} kg (${OCCUPANT_LB} lb) a seat`,
    },
    {
      name: 'Fresh water, full',
      value: label ? pair(label.waterKg, label.waterLb) : both(up, weights.fullWaterKg),
      how: '1 kg a liter (8.3 lb a gallon), rounded up',
    },
    {
      name: 'Cargo with every belted seat taken and water full (CCC)',
      value: label ? pair(label.cccKg, label.cccLb) : NOT_KNOWN,
      how: 'the figures above: OCCC less seats less water',
    },
  ];
}
