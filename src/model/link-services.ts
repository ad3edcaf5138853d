import type { Links } from './links.js';
import type { Conductor, Run } from './services.js';
import type { Shell } from './shell.js';

/** References of zones, circuits, nodes and runs. */
export function linkServices(shell: Shell, links: Links): void {
  for (const zone of shell.zones) links.all(zone, ['panel'], zone.closedBy, 'closed_by');
  for (const circuit of shell.circuits) {
    links.to(circuit, ['node'], circuit.protection?.at, 'protection', 'at');
    linkWire(circuit, circuit.conductor, links);
  }
  for (const node of shell.nodes) {
    links.to(node, ['panel'], node.panel, 'panel');
    links.to(node, ['circuit'], node.circuit, 'circuit');
  }
  for (const run of shell.runs) linkRun(run, links);
}

function linkRun(run: Run, links: Links): void {
  links.to(run, ['node'], run.from, 'from');
  links.to(run, ['node'], run.to, 'to');
  links.to(run, ['circuit'], run.circuit, 'circuit');
  links.all(run, ['zone'], run.zones, 'zones');
  run.grommets.forEach((one, i) => {
    if (typeof one === 'string') links.to(run, ['member', 'panel', 'zone'], one, 'grommets', i);
  });
  linkWire(run, run.conductor, links);
}

function linkWire(from: Shell['circuits'][number] | Run, wire: Conductor | undefined, links: Links): void {
  links.toLibrary(from, 'conductor', wire?.type, 'conductor', 'type');
}
