import type { Signing } from '../../closeout/sign.js';
import { dayOf } from '../../quantity/day.js';
import type { Library } from '../../records/index.js';
import { nearest } from '../../source/nearest.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { localDay } from '../local-day.js';
import { openShell, openStoreFor, revisionOf } from '../open.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly stage: string;
  readonly by: string;
  readonly role?: string;
  readonly date?: string;
  readonly all: boolean;
}

export function declareSignoff(registry: Registry): void {
  registry
    .add('signoff <shell> <stage>', 'signs a stage off if its hold points are met, or says what is missing', [
      'shellbook signoff QF-007 floor --by J2',
      'shellbook signoff QF-007 finished --by A1 --role administrator',
    ])
    .requiredOption('--by <person>', 'who signs: the ID in library/people.yaml')
    .option('--role <role>', 'in which role (default: the person’s own)')
    .option('--date <day>', 'the day of signing (default: today)')
    .option('--all', 'list everything that is missing, even where many are alike')
    .action(
      registry.run(
        ([shell, stage], { by, role, date, all }) => ({
          shell: shell as string,
          stage: stage as string,
          by: by as string,
          ...(role === undefined ? {} : { role: role as string }),
          ...(date === undefined ? {} : { date: date as string }),
          all: all === true,
        }),
        signoff,
      ),
    );
}

async function signoff(options: Options, context: Context): Promise<Status> {
  const [{ findStore }, { entering }] = await Promise.all([import('../../store/find.js'), import('../entering.js')]);
  if (context.settings.book !== undefined)
    throw new UserError('A printed book takes no signature: leave out --book, and sign in a store');
  const root = findStore(context.io.cwd, context.settings.store);
  const what = `signoff ${options.shell} ${options.stage} by ${options.by}`;
  return entering(
    root,
    () => what,
    async (writer) => {
      const opened = await openShell(await openStoreFor(context), options.shell, context);
      const { model } = opened.assessment;
      const signing: Signing = { stage: stageOf(options.stage, model.library), by: options.by, date: signingDay(options.date) };
      const role = roleOf(options, model.library);
      const [{ missingFor, digestFor, unsignedBefore }, { checkedShell }, { envelope }, { openItemJson, openItemsText }] =
        await Promise.all([
          import('../../closeout/sign.js'),
          import('../report/checked.js'),
          import('../report/json.js'),
          import('../report/open-items.js'),
        ]);
      const missing = missingFor({ model, findings: checkedShell(opened).findings }, signing);
      const digest = digestFor(model, signing);
      const stands = model.shell.signoffs.some(
        (one) =>
          one.stage === signing.stage &&
          one.by === signing.by &&
          one.role === role &&
          one.date === signing.date &&
          one.digest === digest,
      );
      if (missing.length === 0 && !stands) {
        const { withSignoff } = await import('../../closeout/signoff-text.js');
        await writer.update(`shells/${options.shell}/signoffs.yaml`, (old) => withSignoff(old, { ...signing, role, digest }));
      }
      const signed = missing.length === 0;
      if (context.settings.json) {
        const answer = { signed, ...signing, role, digest: signed ? digest : null, missing: missing.map(openItemJson) };
        context.print(envelope('signoff', options.shell, revisionOf(opened), answer));
      } else if (signed) {
        const done = stands ? 'Signed already' : 'Signed';
        context.print(`${done}: stage ${signing.stage} of ${options.shell}, by ${signing.by} (${role}), ${signing.date}.`);
        const today = localDay(new Date());
        if (signing.date > today)
          context.tell(
            `${signing.date} is after today, ${today}. If it was mistyped, correct it in shells/${options.shell}/signoffs.yaml.`,
          );
        const before = unsignedBefore(model, signing.stage);
        if (before.length > 0) context.tell(`Not signed yet, but they come first: ${before.join(', ')}.`);
        context.tell(
          `Commit it: git add shells/${options.shell} && git commit -m "${options.shell}: ${signing.stage} signed off"`,
        );
      } else {
        context.print(openItemsText(missing, context.paint, options.all));
        context.tell(`Stage ${signing.stage} of ${options.shell} is not signed off: the above is missing.`);
      }
      return signed ? 0 : 1;
    },
  );
}

function stageOf(stage: string, { stages }: Library): string {
  if (stages.some(({ id }) => id === stage)) return stage;
  const known = stages.map(({ id }) => id);
  const close = nearest(stage, known);
  const listed = close.length > 0 ? close.join(' or ') : known.join(', ') || 'one from library/stages.yaml, which has none yet';
  throw new UserError(`No stage \`${stage}\` in library/stages.yaml, expected ${listed}`);
}

function roleOf({ by, role }: Options, { people }: Library): string {
  const person = people.get(by);
  if (!person) {
    const known = [...people.keys()];
    const close = nearest(by, known);
    throw new UserError(
      `No person \`${by}\` in library/people.yaml, expected ${(close.length > 0 ? close : known).join(', ') || 'one: add who signs'}`,
    );
  }
  if (role === undefined) return person.role;
  if (!person.role.toLowerCase().includes(role.trim().toLowerCase()) || role.trim() === '')
    throw new UserError(
      `${by} is ${person.role} in library/people.yaml, expected somebody who is ${role}: sign in your own role, or correct it there`,
    );
  return role.trim();
}

function signingDay(date: string | undefined): string {
  const day = date ?? localDay(new Date());
  const [, year, month, date_] = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(day) ?? [];
  const real = new Date(Date.UTC(Number(year), Number(month) - 1, Number(date_)));
  if (year === undefined || Number.isNaN(real.getTime()) || dayOf(real.toISOString()) !== day)
    throw new UserError(`Found the day \`${day}\`, expected a day such as 2026-02-12`);
  return day;
}
