import { generateKeyPair, randomBytes } from 'node:crypto';
import { chmod, mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { dayOf } from '../quantity/day.js';
import { makeCertificate, readCertificate } from '../signing/certificate.js';
import { sshPublicKey } from '../signing/ssh.js';
import { KEYS_FILE } from '../store/layout.js';
import { replaceFile } from '../store/replace.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import { keysOfStore, ownKeys } from './known-keys.js';
import { OWN_KEYS, settingsFolder } from './settings-folder.js';
import { keyFileOf, type ShopKey } from './shop-key.js';

/** Good beyond 2030 (NIST SP 800-57 Part 1, table 2: 3072 bits are 128 bits of strength), and read by every PDF reader that checks. */
const BITS = 3072;
const LONGEST_NAME = 64;

/**
 * Makes a key and its certificate, in a file that only this user can read, outside every store; beside it `….pub`, the public half as Git
 * takes it for signing tags (`gpg.format ssh`, `user.signingKey`).
 * @throws UserError where there is one already: books that it signed would lose their signer
 */
export async function newKey(shop: string, context: Context): Promise<{ readonly file: string; readonly fingerprint: string }> {
  const name = shop.trim();
  if (name === '' || name.length > LONGEST_NAME)
    throw new UserError(`The name of the shop must have 1 to ${LONGEST_NAME} characters`);
  const place = keyFileOf(context);
  if (!place) throw new UserError('This user has no home folder to keep a key in: name a file in SHELLBOOK_KEY');
  const { file } = place;
  const { privateKey } = await promisify(generateKeyPair)('rsa', { modulusLength: BITS });
  const der = makeCertificate(privateKey, name, new Date(), randomBytes(16));
  const certificate = readCertificate(der);
  if (!certificate) throw new Error('The certificate that was made cannot be read');
  const pem = `${privateKey.export({ type: 'pkcs8', format: 'pem' })}${pemOf(der)}`;
  try {
    await mkdir(path.dirname(file), { recursive: true, mode: 0o700 });
    await writeFile(file, pem, { flag: 'wx', mode: 0o600 });
    await chmod(file, 0o600);
    await writeFile(`${file}.pub`, `${sshPublicKey(certificate.key)} ${name.replace(/[^\w.-]+/gu, '-')}\n`);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST')
      throw new UserError(
        `There is a key in ${file} already. A new one beside it: name another file in SHELLBOOK_KEY, and say in ${KEYS_FILE} until when the old one signed`,
      );
    throw new UserError(`${file} cannot be written: ${code ?? 'unknown reason'}`);
  }
  return { file, fingerprint: certificate.fingerprint };
}

const pemOf = (der: Uint8Array): string =>
  `-----BEGIN CERTIFICATE-----\n${(
    Buffer.from(der)
      .toString('base64')
      .match(/.{1,64}/gu) ?? []
  ).join('\n')}\n-----END CERTIFICATE-----\n`;

const HEAD = `# Keys that this shop signs its books with. A book is looked up by the fingerprint of its key.
# Replaced: write \`until\`, the last day that it signed. Lost or stolen: write \`lost\`, the day; then no signature of it proves anything.
`;

/** Lists the key in the store, from today on. Undefined where it is there already. */
export async function addKey(root: string, { signer }: ShopKey, context: Context): Promise<string | undefined> {
  const file = path.join(root, KEYS_FILE);
  const before = await readFile(file, 'utf8').catch(() => '');
  const { fingerprint, name, der } = signer.certificate;
  const listed = keysOfStore({ root, files: new Map([[KEYS_FILE, before]]) }, context);
  if (listed.some((one) => one.fingerprint === fingerprint)) return undefined;
  const today = dayOf(new Date().toISOString());
  const entry = `- {fingerprint: ${fingerprint}, name: ${JSON.stringify(name)}, from: ${today},\n   certificate: ${Buffer.from(der).toString('base64')}}\n`;
  await replaceFile(file, Buffer.from(`${before === '' ? HEAD : before.replace(/\n?$/u, '\n')}${entry}`));
  return file;
}

/** Adds a key to this user's own list. Gives the file. */
export async function rememberKey(fingerprint: string, name: string, context: Context): Promise<string> {
  const folder = settingsFolder(context.io.env);
  if (folder === undefined) throw new UserError('This user has no home folder to keep a list of keys in');
  const file = path.join(folder, OWN_KEYS);
  if ((await ownKeys(context)).some((one) => one.fingerprint === fingerprint)) return file;
  const before = await readFile(file, 'utf8').catch(() => '');
  try {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    await replaceFile(file, Buffer.from(`${before}- {fingerprint: ${fingerprint}, name: ${JSON.stringify(name)}}\n`));
  } catch (error) {
    throw new UserError(`${file} cannot be written: ${(error as NodeJS.ErrnoException).code ?? 'unknown reason'}`);
  }
  return file;
}
