import type { Service } from '../coach/service.js';
import { libraryFiles } from '../library-files.js';
import { withCheckDigit } from '../vin.js';
import { readingsFor } from '../weigh.js';
import { ac } from './ac.js';
import { clampsText, declaredText } from './clamps.js';
import { componentsText } from './components.js';
import { data } from './data.js';
import { dc } from './dc.js';
import { air, duct, gas, hydraulic } from './gas-air.js';
import { amendmentsText, findingsText, signoffsText } from './paper.js';
import { SHELL } from './plan.js';
import { OPENINGS, shellYaml } from './shell.js';
import { memberText, panelText, weldText } from './structure.js';
import { testsText } from './tests.js';
import { ticketsText, WEIGHINGS } from './tickets.js';
import { waste, water } from './water.js';
import { zonesText } from './zones.js';

export const services = (): readonly Service[] => [dc(), ac(), data(), water(), waste(), gas(), air(), hydraulic(), duct()];

const VIN = withCheckDigit('1Z9FBV5T.T0418021');

/** Every file of the shell but its photos. */
export function filesOf021(): ReadonlyMap<string, string> {
  const all = services();
  const files = new Map<string, string>([
    ['shell.yaml', shellYaml(VIN)],
    ...memberText(),
    ...weldText(),
    ...panelText(),
    ['openings.yaml', OPENINGS],
    ['zones.yaml', zonesText()],
    ...all.map((service) => [`services/${service.file}.yaml`, service.text()] as const),
    ['components.yaml', componentsText()],
    ['tests.yaml', testsText(all)],
    ['findings.yaml', findingsText()],
    ['signoffs.yaml', signoffsText()],
    ['amendments.yaml', amendmentsText()],
    ['clamps.yaml', clampsText()],
    ['declared.yaml', declaredText()],
  ]);
  const inStore = new Map([...libraryFiles(), ...[...files].map(([name, text]) => [`shells/${SHELL}/${name}`, text] as const)]);
  const readings = readingsFor(SHELL, inStore, WEIGHINGS, ['steer', 'drive', 'tag'], 31);
  return new Map([...files, ['weights.yaml', ticketsText(WEIGHINGS, readings)]]);
}
