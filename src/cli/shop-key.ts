import { createPrivateKey, type KeyObject } from 'node:crypto';
import { readFile, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import { isStrongRsa, LEAST_BITS, readCertificate, type ShopCertificate } from '../signing/certificate.js';
import { readDetached, type Signer, signDetached } from '../signing/cms.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import type { Io } from './io.js';
import { settingsFolder } from './settings-folder.js';

type Env = Io['env'];

/** The shop's own key, and where it lies. */
export interface ShopKey {
  readonly file: string;
  readonly signer: Signer;
}

/** Names the file, in the place of the one in the user's settings. */
const KEY_VARIABLE = 'SHELLBOOK_KEY';
const PASSPHRASE_VARIABLE = 'SHELLBOOK_KEY_PASSPHRASE';
const KEY_FILE = 'shop-key.pem';
const LARGEST_BYTES = 64 * 1024;

/** The file that the key is looked for in, and whether somebody named it. */
export function keyFileOf({ io: { env, cwd } }: Context): { readonly file: string; readonly named: boolean } | undefined {
  const named = env[KEY_VARIABLE];
  if (named !== undefined && named !== '') return { file: path.resolve(cwd, named), named: true };
  const folder = settingsFolder(env);
  return folder === undefined ? undefined : { file: path.join(folder, KEY_FILE), named: false };
}

/**
 * The key that this user signs with; undefined where there is none. `root`: the store that is signed for, where there is one.
 * @throws UserError where there is a key that cannot be used: a book is not left unsigned without a word
 */
export async function shopKey(context: Context, root?: string): Promise<ShopKey | undefined> {
  const place = keyFileOf(context);
  if (!place) return undefined;
  const found = await stat(place.file).catch(() => undefined);
  if (!found && !place.named) return undefined;
  const { file } = place;
  if (!found)
    throw new UserError(`${KEY_VARIABLE} names ${file}, which does not exist. Make one: shellbook key --new "Name of the shop"`);
  if (found.size > LARGEST_BYTES || !found.isFile()) throw new UserError(`${file} is not a key file: expected PEM of a few kB`);
  if (root !== undefined) await refuseInStore(file, root);
  if (process.platform !== 'win32' && (found.mode & 0o077) !== 0)
    throw new UserError(`${file} can be read by others on this machine, who could sign as the shop. Close it: chmod 600 ${file}`);
  const text = await readFile(file, 'utf8').catch((error: NodeJS.ErrnoException) => {
    throw new UserError(`${file} cannot be read: ${error.code ?? 'unknown reason'}`);
  });
  return { file, signer: signerOf(file, text, context.io.env) };
}

/** Whoever gets a copy of the store must not get the key with it. */
async function refuseInStore(file: string, root: string): Promise<void> {
  const [key, store] = await Promise.all([realpath(file), realpath(root)]);
  const { repositoryOf } = await import('../store/git/repository.js');
  const top = repositoryOf(store)?.top ?? store;
  const inside = path.relative(top, key);
  if (inside === '' || (!inside.startsWith('..') && !path.isAbsolute(inside)))
    throw new UserError(
      `The key ${file} lies in the store, and whoever has a copy of the store could sign with it. Move it out, and make a new one if the store was ever copied`,
    );
}

function signerOf(file: string, text: string, env: Env): Signer {
  const certificate = certificateIn(text);
  if (!certificate)
    throw new UserError(
      `${file} has no certificate with a key of RSA, ${LEAST_BITS} bits or more. Make both: shellbook key --new "Name of the shop"`,
    );
  const privateKey = privateKeyIn(file, text, env);
  if (!isStrongRsa(privateKey)) throw new UserError(`${file} has a key that is not RSA of ${LEAST_BITS} bits or more`);
  const signer = { certificate, privateKey };
  const digest = Buffer.alloc(32);
  if ('fault' in readDetached(signDetached(digest, signer), digest))
    throw new UserError(`${file} has a key and a certificate that do not belong together`);
  return signer;
}

function certificateIn(text: string): ShopCertificate | undefined {
  const found = /-----BEGIN CERTIFICATE-----([A-Za-z0-9+/=\s]+)-----END CERTIFICATE-----/u.exec(text)?.[1];
  return found === undefined ? undefined : readCertificate(Buffer.from(found, 'base64'));
}

function privateKeyIn(file: string, text: string, env: Env): KeyObject {
  const passphrase = env[PASSPHRASE_VARIABLE];
  try {
    return createPrivateKey({ key: text, format: 'pem', ...(passphrase === undefined ? {} : { passphrase }) });
  } catch {
    const locked = text.includes('ENCRYPTED');
    throw new UserError(
      locked
        ? `${file} is locked: give its passphrase in ${PASSPHRASE_VARIABLE}${passphrase === undefined ? '' : ', the one there does not open it'}`
        : `${file} has no private key that can be read: expected PEM (BEGIN PRIVATE KEY) before the certificate`,
    );
  }
}
