import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  /** Name of the shop that a new key is made for. */
  readonly fresh?: string;
  /** Put the key among those of the store. */
  readonly add: boolean;
  /** Fingerprint of a key to know from now on, and whose it is. */
  readonly know?: string;
  readonly of?: string;
}

export function declareKey(registry: Registry): void {
  registry
    .add('key', 'the key that the shop signs its books with: show it, make one, list it in the store', [
      'shellbook key                                   which key signs, and its fingerprint',
      'shellbook key --new "Quillfeather Fabrication"  makes one, outside every store',
      'shellbook key --add                             lists it in keys.yaml of the store',
      'shellbook key --know FINGERPRINT --of "Quillfeather Fabrication"   for whoever has a book and no store',
    ])
    .option('--new <shop>', 'make a key and a certificate in the name of the shop')
    .option('--add', 'list the key in the store, where everybody looks it up')
    .option('--know <fingerprint>', 'trust a key from now on; first compare it with the shop’s own paper')
    .option('--of <shop>', 'whose key it is')
    .action(
      registry.run(
        (_args, { new: fresh, add, know, of }) => ({
          add: add === true,
          ...(typeof fresh === 'string' ? { fresh } : {}),
          ...(typeof know === 'string' ? { know } : {}),
          ...(typeof of === 'string' ? { of } : {}),
        }),
        key,
      ),
    );
}

async function key(options: Options, context: Context): Promise<Status> {
  if (options.know !== undefined) return know(options.know, options.of, context);
  if (options.fresh !== undefined) {
    const { newKey } = await import('../new-key.js');
    const { file, fingerprint } = await newKey(options.fresh, context);
    context.tell(
      `Made a key in ${file}. Keep a copy where nobody else can get at it, such as on paper or a stick in a safe: it is not in any store or backup.`,
    );
    context.tell('Next: shellbook key --add, in the store');
    return show(file, options.fresh, fingerprint, context);
  }
  const { shopKey, keyFileOf } = await import('../shop-key.js');
  const { findStore } = await import('../../store/find.js');
  const root =
    options.add || context.settings.store !== undefined ? findStore(context.io.cwd, context.settings.store) : undefined;
  const found = await shopKey(context, root);
  if (!found) {
    const place = keyFileOf(context)?.file ?? 'any folder of this user';
    context.tell(`No key: books are printed unsigned. Looked in ${place}. Make one: shellbook key --new "Name of the shop"`);
    if (context.settings.json) await printJson({ file: null, name: null, fingerprint: null }, context);
    return 1;
  }
  const { name, fingerprint } = found.signer.certificate;
  if (options.add && root !== undefined) {
    const { addKey } = await import('../new-key.js');
    const file = await addKey(root, found, context);
    context.tell(
      file === undefined
        ? 'The store lists it already.'
        : `Listed in ${shownPath(file, context)}. Commit it: git add and git commit`,
    );
  }
  return show(found.file, name, fingerprint, context);
}

async function show(file: string, name: string, fingerprint: string, context: Context): Promise<Status> {
  if (context.settings.json) {
    await printJson({ file, name, fingerprint }, context);
    return 0;
  }
  const { groupedDigits } = await import('../../signing/words.js');
  context.print([name, `  ${groupedDigits(fingerprint)}`, `  ${file}`].join('\n'));
  context.tell('Print the fingerprint on the shop’s own paper, and read it out to whoever asks by telephone.');
  return 0;
}

async function printJson(answer: Readonly<Record<string, string | null>>, context: Context): Promise<void> {
  const { envelope } = await import('../report/json.js');
  context.print(envelope('key', null, null, answer));
}

async function know(typed: string, of: string | undefined, context: Context): Promise<Status> {
  if (of === undefined || of.trim() === '') throw new UserError('Whose key is it? Add --of "Name of the shop"');
  const [{ typedKey }, { rememberKey }] = await Promise.all([import('../known-keys.js'), import('../new-key.js')]);
  const { fingerprint } = typedKey(typed);
  const file = await rememberKey(fingerprint, of, context);
  return show(file, of, fingerprint, context);
}
