import type { Service } from '../coach/service.js';
import { ac } from './ac.js';
import { data } from './data.js';
import { dc } from './dc.js';
import { air, duct, gas, hydraulic } from './gas-air.js';
import { memberText, panelText, weldText } from './structure.js';
import { waste, water } from './water.js';
import { withCheckDigit } from '../vin.js';
import { OPENINGS, shellYaml } from './shell.js';
import { zonesText } from './zones.js';

export const services = (): readonly Service[] => [dc(), ac(), data(), water(), waste(), gas(), air(), hydraulic(), duct()];

export const filesOf021 = (): ReadonlyMap<string, string | Buffer> =>
  new Map([
    ...memberText(),
    ...weldText(),
    ...panelText(),
    ['shell.yaml', shellYaml(withCheckDigit('1Z9FBV5T.T0418021'))],
    ['openings.yaml', OPENINGS],
    ['zones.yaml', zonesText()],
    ...services().map((service) => [`services/${service.file}.yaml`, service.text()] as const),
  ]);
