import { change, type Plant } from './plant.js';

/** Tickets, tyres and the number on the plate. */
export const WEIGHTS: readonly Plant[] = [
  {
    rule: 'weight.ticket-not-verified',
    id: 'T-2',
    file: 'weights.yaml',
    what: 'no condition on the ticket',
    spoil: change('T-2', { condition: undefined }),
  },
  {
    rule: 'weight.scale-out-of-calibration',
    id: 'T-3',
    file: 'weights.yaml',
    what: 'own pads, four weeks past their date',
    spoil: change('T-3', { scale: 'SC-1', ticket: '26-109' }),
  },
  { rule: 'weight.unexplained', id: 'T-1', file: 'weights.yaml', what: 'a pad read 600 lb high', spoil: (records) => records },
  {
    rule: 'weight.tyres-below-gawr',
    id: 'steer',
    file: 'shell.yaml',
    what: 'load index 140 under an axle of 12,000 lb',
    spoil: (records) => records,
  },
  {
    rule: 'shell.vin-check-digit',
    id: 'OV-024',
    file: 'shell.yaml',
    what: 'two characters exchanged when it was typed',
    spoil: (records) => records,
  },
];
