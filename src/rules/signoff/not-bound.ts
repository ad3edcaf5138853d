import { mayNotSign, newestCovered, signers } from '../../closeout/bound.js';
import { signedStages } from '../../closeout/signed.js';
import type { Model } from '../../model/shell.js';
import { dayOf, daysBetween } from '../../quantity/day.js';
import type { Signoff } from '../../records/index.js';
import { readPersonKey } from '../../signing/person-key.js';
import type { CommitSignature, Rule, RuleFinding, SigningEntry, Signings } from '../rule.js';

export const notBound: Rule = {
  name: 'signoff.not-bound',
  severity: 'error',
  asks: 'defect',
  duty: 'inspector',
  finds:
    'A sign-off by somebody who may not give it, entered under another identity or without the signature of their key, or dated before what it covers. A note while library/people.yaml does not say who signs what, and for one that came into Git late.',
  why: 'A name in a file is nobody’s signature until it is tied to the person who gives it, on the day that they give it.',
  source: 'common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: A, section: RT4x2, alloy: 6061-T6, from: [0 m, 0 m, 0 m], to: [2 m, 0 m, 0 m], stage: floor}
# signoffs.yaml
`,
    fails: `
- {stage: floor, role: inspector, by: J2, date: 2026-03-31, digest: c1-0000000000000000000000000000000000000000000000000000000000000000}
`,
    passes: `
# not signed
`,
  },
  check({ model, outside }) {
    const latest = signedStages(model).map(({ signoff }) => signoff);
    const [first] = latest;
    if (!first) return [];
    if (signers(model).length === 0) {
      return [
        {
          severity: 'note',
          message:
            'No sign-off is tied to a person: anybody can type a name. Say in library/people.yaml who signs what and under which address they commit: `signs: [floor, close], git: [name@example.org]`',
          ids: latest.map(({ id }) => id),
          place: first.source.place('by'),
        },
      ];
    }
    return latest.flatMap((signoff) => judge(signoff, model, outside?.signings));
  },
};

function judge(signoff: Signoff, model: Model, signings: Signings | undefined): readonly RuleFinding[] {
  const entry = signoff.digest === undefined ? undefined : signings?.entries.get(signoff.digest);
  // What was signed before the shop named its signers stands as it was; what is not committed yet is signed now.
  if (!signings || (entry && (signings.since === undefined || entry.date < signings.since))) return [];
  const name = `Sign-off of stage ${signoff.stage} by ${signoff.by} of ${signoff.date}`;
  const told = (message: string, key: Key, severity: 'error' | 'note' = 'error', ids: readonly string[] = []): RuleFinding => ({
    severity,
    message: `${name} ${message}`,
    ids: [signoff.id, ...ids],
    place: signoff.source.place(key),
  });
  const found: RuleFinding[] = [];
  const refused = mayNotSign(model, signoff.by, signoff.stage);
  if (refused) found.push(told(`is not theirs to give: ${refused}`, 'by'));
  const newest = newestCovered(model, signoff.stage, dayOf(signoff.date));
  if (newest && newest.day > dayOf(signoff.date))
    found.push(
      told(
        `is dated before what it covers: ${newest.id} is from ${newest.day}. Sign again on the day you look`,
        'date',
        'error',
        [newest.id],
      ),
    );
  if (entry) found.push(...identity(signoff, entry, signings, model, told), ...late(signoff, entry.date, model, told));
  return found;
}

type Key = 'by' | 'date' | 'entered_by';
type ReportFinding = (message: string, key: Key, severity?: 'error' | 'note') => RuleFinding;

/** By the key of whoever signs, from the day that it is on record; else by the address that they commit under. */
function identity(
  signoff: Signoff,
  entry: SigningEntry,
  signings: Signings,
  model: Model,
  told: ReportFinding,
): readonly RuleFinding[] {
  const person = model.library.people.get(signoff.by);
  const keySince = signings.keysSince?.get(signoff.by);
  if (person?.key !== undefined && readPersonKey(person.key) === undefined)
    return [
      told(
        `is tied to no key: \`key\` of ${signoff.by} in library/people.yaml is not a public key such as \`ssh-ed25519 AAAA…\``,
        'by',
      ),
    ];
  if (entry.signature && keySince !== undefined && entry.date >= keySince) return byKey(signoff, entry.signature, told);
  return byAddress(signoff, entry, person?.git ?? [], told);
}

function byKey(signoff: Signoff, { is, by }: CommitSignature, told: ReportFinding): readonly RuleFinding[] {
  if (is === 'known' && by === signoff.by) return [];
  const found = {
    none: 'is not signed',
    known: `is signed with the key of ${by}`,
    unknown: 'is signed with a key that nobody in library/people.yaml has',
    bad: 'has a signature that does not hold',
  }[is];
  if (signoff.enteredBy !== undefined && is === 'known' && by === signoff.enteredBy)
    return [told(`was entered by ${signoff.enteredBy}, under their key and not the signer’s`, 'entered_by', 'note')];
  return [
    told(
      `came into Git in a commit that ${found}, expected the key of ${signoff.by}: sign again, and commit with \`git commit -S\``,
      'by',
    ),
  ];
}

function byAddress(signoff: Signoff, entry: SigningEntry, own: readonly string[], told: ReportFinding): readonly RuleFinding[] {
  if (own.some((address) => address.toLowerCase() === entry.email.toLowerCase())) return [];
  if (signoff.enteredBy !== undefined)
    return [told(`was entered by ${signoff.enteredBy} under another identity than the signer’s`, 'entered_by', 'note')];
  if (own.length === 0)
    return [told(`is tied to no identity: ${signoff.by} has no \`git\` address in library/people.yaml`, 'by')];
  return [
    told(
      `came into Git under an identity that is not ${signoff.by}’s: have ${signoff.by} commit it, or say who typed it with \`entered_by\``,
      'by',
    ),
  ];
}

function late(signoff: Signoff, entered: string, { shop }: Model, told: ReportFinding): readonly RuleFinding[] {
  const days = daysBetween(signoff.date, entered);
  if (days <= shop.limits.lateEntryDays) return [];
  return [told(`came into Git on ${dayOf(entered)}, ${days} days later`, 'date', 'note')];
}
