import { change, type Plant } from './plant.js';

/** Lengths, heats, alloys, spacing and clamps. */
export const MEMBERS: readonly Plant[] = [
  {
    rule: 'member.length-differs',
    id: 'CB-05',
    file: 'members-floor.yaml',
    what: 'cut an inch short on paper',
    spoil: change('CB-05', { cut_length: '7 ft 11 in' }),
  },
  {
    rule: 'member.heat-missing',
    id: 'P-R-10',
    file: 'members-walls.yaml',
    what: 'offcut without its heat',
    spoil: change('P-R-10', { heat: undefined }),
  },
  {
    rule: 'member.alloy-swapped',
    id: 'G-02',
    file: 'members-walls.yaml',
    what: 'skin alloy on the card, heat of the gusset plate',
    spoil: change('G-02', { alloy: '5052-H32' }),
  },
  {
    rule: 'member.spacing',
    id: 'P-R-12',
    file: 'members-walls.yaml',
    what: 'post 11 of the right wall was left out, see plan.ts',
    spoil: (records) => records,
  },
  {
    rule: 'member.offcut-heat',
    id: 'P-L-04D',
    file: 'members-walls.yaml',
    what: 'cut from post 12, marked with the heat of the roof corners',
    spoil: change('P-L-04D', { heat: 'D44-0318', offcut_of: 'P-L-12' }),
  },
  {
    rule: 'member.certificate-missing',
    id: 'HD-DR-1',
    file: 'members-walls.yaml',
    what: 'only a test report on the order for heat H-6415',
    spoil: (records) => records,
  },
  {
    rule: 'member.bare-contact',
    id: 'UB-05',
    file: 'clamps.yaml',
    what: 'nobody wrote whether a pad lies under this U-bolt',
    spoil: change('UB-05', { isolator: undefined }),
  },
  {
    rule: 'member.clamp-torque-missing',
    id: 'UB-08',
    file: 'clamps.yaml',
    what: 'tightened and not written down',
    spoil: change('UB-08', { torque: undefined }),
  },
];
