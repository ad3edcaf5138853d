import { createHash, createPublicKey, type KeyObject, sign, X509Certificate } from 'node:crypto';
import { AsnConvert, OctetString } from '@peculiar/asn1-schema';
import {
  AlgorithmIdentifier,
  AttributeTypeAndValue,
  AttributeValue,
  BasicConstraints,
  Certificate,
  Extension,
  Extensions,
  id_ce_basicConstraints,
  id_ce_keyUsage,
  id_ce_subjectKeyIdentifier,
  KeyUsage,
  KeyUsageFlags,
  Name,
  RelativeDistinguishedName,
  SubjectPublicKeyInfo,
  TBSCertificate,
  Validity,
  Version,
} from '@peculiar/asn1-x509';

/** A certificate as whoever checks a signature needs it. */
export interface ShopCertificate {
  readonly der: Uint8Array;
  /** The shop's name in it. Anybody can put any name there: the fingerprint is what counts. */
  readonly name: string;
  /** SHA-256 over its DER, 64 lower-case hex digits: what `openssl x509 -fingerprint -sha256` and most readers of PDF show. */
  readonly fingerprint: string;
  readonly key: KeyObject;
}

/** RSA below this is within reach of attackers (NIST SP 800-57 Part 1, 5.6.1). */
export const LEAST_BITS = 2048;

/** sha256WithRSAEncryption and rsaEncryption (RFC 8017, appendix C): RSASSA-PKCS1-v1_5, the same bytes from the same key each time. */
const SHA256_WITH_RSA = '1.2.840.113549.1.1.11';
export const RSA_ENCRYPTION = '1.2.840.113549.1.1.1';
/** NULL, as RFC 3279 asks for with both. */
export const NO_PARAMETERS = new Uint8Array([5, 0]).buffer;
const COMMON_NAME = '2.5.4.3';
/** No well-defined end (RFC 5280, 4.1.2.5): how long a key is good for is said in the store, where it can be taken back. */
const NO_END = new Date(Date.UTC(9999, 11, 31, 23, 59, 59));

/** Reads a certificate that anybody may have made. Undefined where it is none, or its key is of no kind that is signed with here. */
export function readCertificate(der: Uint8Array): ShopCertificate | undefined {
  try {
    const key = new X509Certificate(der).publicKey;
    if (!isStrongRsa(key)) return undefined;
    return { der, key, name: nameIn(der), fingerprint: createHash('sha256').update(der).digest('hex') };
  } catch {
    return undefined;
  }
}

/** RSA of enough bits, public or private. */
export const isStrongRsa = (key: KeyObject): boolean =>
  key.asymmetricKeyType === 'rsa' && (key.asymmetricKeyDetails?.modulusLength ?? 0) >= LEAST_BITS;

function nameIn(der: Uint8Array): string {
  const { subject } = AsnConvert.parse(der, Certificate).tbsCertificate;
  const entry = [...subject].flatMap((set) => [...set]).find(({ type }) => type === COMMON_NAME);
  return entry?.value.toString().slice(0, 200) ?? '';
}

/**
 * A certificate of a shop for its own key, signed by itself (RFC 5280): no authority vouches for a shop's name, its customers compare the
 * fingerprint. `serial` is up to 20 bytes; `from` the first moment that it is of.
 */
export function makeCertificate(privateKey: KeyObject, name: string, from: Date, serial: Uint8Array): Uint8Array {
  const spki = createPublicKey(privateKey).export({ type: 'spki', format: 'der' });
  const algorithm = new AlgorithmIdentifier({ algorithm: SHA256_WITH_RSA, parameters: NO_PARAMETERS });
  const who = new Name([
    new RelativeDistinguishedName([
      new AttributeTypeAndValue({ type: COMMON_NAME, value: new AttributeValue({ utf8String: name }) }),
    ]),
  ]);
  const keyId = createHash('sha256').update(spki).digest().subarray(0, 20);
  const extensions = new Extensions([
    extension(id_ce_basicConstraints, true, AsnConvert.serialize(new BasicConstraints({ cA: false }))),
    extension(
      id_ce_keyUsage,
      true,
      AsnConvert.serialize(new KeyUsage(KeyUsageFlags.digitalSignature | KeyUsageFlags.nonRepudiation)),
    ),
    extension(id_ce_subjectKeyIdentifier, false, AsnConvert.serialize(new OctetString(keyId))),
  ]);
  const content = new TBSCertificate({
    version: Version.v3,
    serialNumber: positive(serial),
    signature: algorithm,
    issuer: who,
    validity: new Validity({ notBefore: from, notAfter: NO_END }),
    subject: who,
    subjectPublicKeyInfo: AsnConvert.parse(spki, SubjectPublicKeyInfo),
    extensions,
  });
  const signatureValue = arrayBuffer(sign('sha256', Buffer.from(AsnConvert.serialize(content)), privateKey));
  return Buffer.from(
    AsnConvert.serialize(new Certificate({ tbsCertificate: content, signatureAlgorithm: algorithm, signatureValue })),
  );
}

const extension = (extnID: string, critical: boolean, value: ArrayBuffer): Extension =>
  new Extension({ extnID, critical, extnValue: new OctetString(value) });

/** The first bit of an INTEGER is its sign (X.690, 8.3). */
function positive(serial: Uint8Array): ArrayBuffer {
  const bytes = Buffer.from(serial);
  bytes[0] = ((bytes[0] ?? 0) & 0x7f) | 0x40;
  return arrayBuffer(bytes);
}

export const arrayBuffer = (bytes: Uint8Array): ArrayBuffer => Uint8Array.from(bytes).buffer;
