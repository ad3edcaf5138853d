import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';
import type { VerifiedAnswer, VerifyOptions } from '../verified.js';

interface Options extends VerifyOptions {
  readonly proved: boolean;
}

export function declareVerify(registry: Registry): void {
  registry
    .add('verify <book.pdf>', 'tells whether a book is unchanged, who signed it, and whether it matches the store', [
      'shellbook verify QF-007-service.pdf                 unchanged, and signed by whom?',
      'shellbook verify QF-007-shop.pdf --store records    against that store, every page printed again',
    ])
    .option('--quick', 'do not print the pages again')
    .option('--signed-by <fingerprint>', 'the key that it must be signed with, as on the shop’s own paper')
    .option('--proved', 'exit 1 unless it is signed with a known key')
    .action(
      registry.run(
        ([file], { quick, proved, signedBy }) => ({
          file: file as string,
          quick: quick === true,
          proved: proved === true,
          ...(typeof signedBy === 'string' ? { signedBy } : {}),
        }),
        verify,
      ),
    );
}

async function verify(options: Options, context: Context): Promise<Status> {
  const { verifiedAnswer } = await import('../verified.js');
  const found = await verifiedAnswer(options, context);
  const { own, fromStore, signed } = found;
  if (context.settings.json) await printJson(found, context);
  else {
    const { verifyText } = await import('../report/verify-text.js');
    context.print(verifyText(found, context.paint));
  }
  return own.length > 0 || fromStore.length > 0 || (options.proved && !signed.proved) ? 1 : 0;
}

async function printJson(
  { manifest, seal, own, signed, compared, again, tag, fromStore }: VerifiedAnswer,
  context: Context,
): Promise<void> {
  const { envelope } = await import('../report/json.js');
  const differences = [...own.map((one) => ({ with: 'itself', ...one })), ...fromStore.map((one) => ({ with: 'store', ...one }))];
  const pagesDiffer = again !== undefined && 'differences' in again && again.differences.length > 0;
  context.print(
    envelope('verify', manifest?.shell ?? null, manifest?.revision ?? null, {
      edition: manifest?.edition,
      sealed: seal.sealed,
      matches_itself: own.length === 0,
      signed_by: signedByJson(signed),
      proved: signed.proved,
      tag: tag && { name: tag.tag, signature: tag.is },
      matches_store: compared?.matches === true && pagesDiffer ? false : (compared?.matches ?? null),
      matches_revision: compared?.matchesRevision === true && pagesDiffer ? false : compared?.matchesRevision,
      pages_compared: again !== undefined && 'differences' in again,
      pages_not_compared_because: again !== undefined && 'why' in again ? again.why : undefined,
      not_covered: seal.notCovered,
      fingerprint: manifest?.fingerprint,
      withheld: manifest?.withheld ?? [],
      differences,
    }),
  );
}

function signedByJson({ signature, known, words }: VerifiedAnswer['signed']) {
  if (!signature) return null;
  return {
    name: signature.signer.name,
    fingerprint: signature.signer.fingerprint,
    day: signature.day ?? null,
    known,
    said: words,
  };
}
