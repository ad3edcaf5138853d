/**
 * Writes the bill of materials of what is carried, from package-lock.json: `out/bom.json`, CycloneDX 1.5 (ECMA-424). npm's own leaves out
 * what tests need too.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly optional?: boolean;
}

const read = (name: string) => JSON.parse(readFileSync(new URL(`../${name}`, import.meta.url), 'utf8'));
const { name, version, license } = read('package.json') as { name: string; version: string; license: string };
const { packages } = read('package-lock.json') as { packages: Readonly<Record<string, Locked>> };

/** `@scope/name` as a package URL has it (purl specification, type npm). */
const purl = (of: string, at: string): string => `pkg:npm/${of.replace(/^@/u, '%40')}@${at}`;

/** An SPDX expression stands as such; a single licence by its id. */
const licences = (said: string) =>
  / (?:AND|OR) /u.test(said) ? [{ expression: said.replace(/^\((.*)\)$/u, '$1') }] : [{ license: { id: said } }];

const hashes = (integrity: string | undefined) => {
  const [, base64] = /^sha512-(.+)$/u.exec(integrity ?? '') ?? [];
  return base64 === undefined ? [] : [{ alg: 'SHA-512', content: Buffer.from(base64, 'base64').toString('hex') }];
};

const components = new Map<string, object>();
for (const [place, one] of Object.entries(packages)) {
  if (place === '' || one.dev || (one.devOptional && !one.optional) || one.version === undefined) continue;
  const of = place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length);
  const id = purl(of, one.version);
  components.set(id, {
    type: 'library',
    'bom-ref': id,
    name: of,
    version: one.version,
    scope: one.optional ? 'optional' : 'required',
    purl: id,
    licenses: licences(one.license ?? 'NOASSERTION'),
    hashes: hashes(one.integrity),
  });
}

const bill = {
  $schema: 'http://cyclonedx.org/schema/bom-1.5.schema.json',
  bomFormat: 'CycloneDX',
  specVersion: '1.5',
  version: 1,
  metadata: { component: { type: 'application', 'bom-ref': purl(name, version), name, version, licenses: licences(license) } },
  components: [...components.values()],
};
mkdirSync('out', { recursive: true });
writeFileSync('out/bom.json', `${JSON.stringify(bill, null, 1)}\n`);
